// How often the stated intervals and bounds hold, by simulated campaigns. `node bench/coverage.ts` prints the table; with `--write` it is put into
// docs/reference/coverage.md between its markers. `--campaigns N` sets the campaigns of a row.
import { readFileSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { parseArgs } from 'node:util';
import { Worker } from 'node:worker_threads';
import type { CellOutcome } from './coverage-cell.ts';
import { coverageTable } from './coverage-table.ts';
import type { CoverageCell } from './coverage-truth.ts';

const WORKERS = 2;
const SEED = 20;
const START = '<!-- table -->';
const END = '<!-- end of table -->';

const { values } = parseArgs({
  options: { campaigns: { type: 'string', default: '1000' }, write: { type: 'boolean' } },
});
const campaigns = Number(values.campaigns);
if (!(Number.isInteger(campaigns) && campaigns > 0)) throw new RangeError('--campaigns takes a whole number above 0');

const cells: CoverageCell[] = [3, 5, 10, 30].flatMap((pieces) =>
  [2, 5].flatMap((scatter_pct) => [0, 0.1, 0.3].map((weldShare) => ({ pieces, scatter_pct, weldShare }))),
);

function runCell(cell: CoverageCell, seed: number): Promise<CellOutcome> {
  return new Promise((resolve, reject) => {
    const worker = new Worker(join(import.meta.dirname, 'coverage-worker.ts'), {
      workerData: { cell, campaigns, seed },
    });
    worker.once('message', resolve);
    worker.once('error', reject);
  });
}

const started = performance.now();
const outcomes: CellOutcome[] = [];
// The largest first, so that both workers end together; each row has its own seed, so the order changes nothing.
const waiting = cells.map((_, index) => index).reverse();
async function work(): Promise<void> {
  for (let index = waiting.shift(); index !== undefined; index = waiting.shift()) {
    const cell = cells[index];
    if (cell) outcomes[index] = await runCell(cell, SEED + index);
  }
}
await Promise.all(Array.from({ length: WORKERS }, work));

const table = coverageTable(outcomes);
console.log(table);
console.log(
  `\n${cells.length} rows of ${campaigns} campaigns in ${((performance.now() - started) / 1000).toFixed(0)} s on ${WORKERS} workers`,
);
if (values.write) {
  const file = join(import.meta.dirname, '../docs/reference/coverage.md');
  const [before, rest] = readFileSync(file, 'utf8').split(START);
  const [, after] = rest?.split(END) ?? [];
  if (before === undefined || after === undefined) throw new Error(`${file} has lost the markers of its table`);
  writeFileSync(file, `${before}${START}\n${table}\n${END}${after}`);
}
