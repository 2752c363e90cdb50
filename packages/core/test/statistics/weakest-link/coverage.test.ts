import assert from 'node:assert/strict';
import { readFileSync } from 'node:fs';
import { test } from 'node:test';

/** The rows of the table kept in the docs, by its headings. */
const rows = (() => {
  const text = readFileSync(new URL('../../../../../docs/reference/coverage.md', import.meta.url), 'utf8');
  const [, table = ''] = text.split(/<!-- table -->|<!-- end of table -->/);
  const lines = table
    .trim()
    .split('\n')
    .map((line) =>
      line
        .split('|')
        .slice(1, -1)
        .map((cell) => cell.trim()),
    );
  const heads = lines[0] ?? [];
  return lines.slice(2).map((cells) => new Map(heads.map((head, k) => [head, cells[k] ?? ''])));
})();

/** A rate of a row in per cent; null where too few campaigns allowed the statement. */
function rate(row: ReadonlyMap<string, string>, head: string): number | null {
  const cell = row.get(head);
  assert.ok(cell !== undefined, `a column ${head}`);
  return cell === '' ? null : Number.parseFloat(cell);
}

function rates(head: string, which: (row: ReadonlyMap<string, string>) => boolean = () => true): number[] {
  return rows
    .filter(which)
    .map((row) => rate(row, head))
    .filter((value) => value !== null);
}

const pieces = (row: ReadonlyMap<string, string>) => rate(row, 'pieces') ?? 0;

test('the table of simulated coverage has all its rows', () => {
  assert.equal(rows.length, 24);
});

test('the long-chain bound, all modes looked for, held as stated in every row of the table (two points of simulation error)', () => {
  assert.ok(Math.min(...rates('chain (90)')) >= 88);
});

test('the doubts that the findings raise are those of the table', () => {
  assert.ok(Math.min(...rates('chain, seen modes (90)')) < 65, 'a mode not seen can halve the confidence');
  const profile = rates('shape, profile (95)', (row) => pieces(row) <= 10);
  assert.ok(Math.min(...profile) > 80 && Math.max(...profile) < 95, 'profile intervals are true 8 to 9 times in ten');
  assert.ok(Math.max(...rates('chain, profile (90)', (row) => pieces(row) <= 10)) < 85);
  assert.ok(Math.min(...rates('chain, bootstrap (90)')) >= 88 && Math.min(...rates('shape, Bayes (90)')) >= 88);
});
