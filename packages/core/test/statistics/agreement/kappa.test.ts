import assert from 'node:assert/strict';
import { readFileSync } from 'node:fs';
import { test } from 'node:test';
import {
  cohenKappa,
  cohenKappaOfTable,
  fleissKappa,
  fleissKappaOfCounts,
  type Kappa,
} from '../../../src/statistics/agreement/index.ts';
import { check, citation, type ReferenceCheck } from '../../reference-checks.ts';

const file = new URL('../../reference/agreement-checks.json', import.meta.url);
const checks = JSON.parse(readFileSync(file, 'utf8')) as readonly ReferenceCheck[]; // the shape of stats-checks.json

/** Each expected key of a check is a field of the result. */
function meetsEveryKey(reference: ReferenceCheck, kappa: Kappa): void {
  const found: Readonly<Record<string, unknown>> = { ...kappa };
  for (const [key, entry] of Object.entries(reference.expected)) {
    if (key === 'standardErrorNull') continue;
    const { value, tol } = entry as { readonly value: number; readonly tol: number }; // a scalar of the file
    const actual = found[key];
    assert.ok(typeof actual === 'number' && Math.abs(actual - value) <= tol, `${key}: ${actual} instead of ${value}`);
  }
}

for (const id of ['cohen-kappa-sas-3x3', 'cohen-kappa-anxiety', 'cohen-kappa-1932', 'cohen-kappa-abstractors']) {
  const reference = check(checks, id);
  test(`${id}: two readers agree as printed (${citation(reference)})`, () => {
    const kappa = cohenKappaOfTable(reference.inputs.table as readonly (readonly number[])[]);
    meetsEveryKey(reference, kappa);
    const nullError = reference.expected.standardErrorNull as
      | { readonly value: number; readonly tol: number }
      | undefined;
    if (nullError) assert.ok(Math.abs((kappa.kappa ?? 0) / (kappa.z ?? 1) - nullError.value) <= nullError.tol);
  });
}

for (const id of ['fleiss-kappa-diagnoses', 'fleiss-kappa-missing']) {
  const reference = check(checks, id);
  test(`${id}: several readers agree as printed (${citation(reference)})`, () => {
    const ratings = reference.inputs.ratings as readonly (readonly (number | null)[])[];
    meetsEveryKey(
      reference,
      fleissKappa(ratings.map((row) => row.map((entry) => (entry === null ? null : `${entry}`)))),
    );
  });
}

for (const id of ['fleiss-kappa-14-readers', 'fleiss-kappa-15-subjects']) {
  const reference = check(checks, id);
  test(`${id}: several readers agree as printed (${citation(reference)})`, () => {
    meetsEveryKey(reference, fleissKappaOfCounts(reference.inputs.counts as readonly (readonly number[])[]));
  });
}

test('readings and their table give the same kappa; a thing read once is left out and counted', () => {
  const cells = [
    ['bar', 'bar', 7],
    ['bar', 'weld', 2],
    ['weld', 'weld', 4],
    ['weld', 'beside weld', 1],
  ] as const;
  const pairs = cells.flatMap(([first, second, count]) => Array.from({ length: count }, () => ({ first, second })));
  const kappa = cohenKappa([...pairs, { first: 'bar', second: null }]);
  // Categories in alphabetical order: bar, beside weld, weld.
  const table = cohenKappaOfTable([
    [7, 0, 2],
    [0, 0, 0],
    [0, 1, 4],
  ]);
  assert.equal(kappa.kappa, table.kappa);
  assert.equal(kappa.standardError, table.standardError);
  assert.match(kappa.doubts[0] ?? '', /^1 read by one reader only/);
});

test('one category throughout: chance explains all, so kappa is not told', () => {
  for (const kappa of [
    cohenKappaOfTable([[9]]),
    fleissKappa([
      ['bar', 'bar'],
      ['bar', 'bar'],
    ]),
  ]) {
    assert.equal(kappa.kappa, null);
    assert.equal(kappa.observed, 1);
    assert.match(kappa.sentence, /one and the same category/);
  }
});

test('readers who never differ have kappa 1 and a lower limit below it that rises with the number read', () => {
  const lower = (n: number) =>
    cohenKappaOfTable([
      [n, 0],
      [0, n],
    ]).lower ?? Number.NaN;
  assert.equal(
    cohenKappaOfTable([
      [5, 0],
      [0, 5],
    ]).kappa,
    1,
  );
  assert.ok(lower(3) < lower(10) && lower(10) < lower(50) && lower(50) < 1);
  const fleiss = fleissKappa([
    ['bar', 'bar', 'bar'],
    ['weld', 'weld', 'weld'],
    ['bar', 'bar', 'bar'],
  ]);
  assert.equal(fleiss.kappa, 1);
  assert.ok((fleiss.lower ?? 2) < 1);
});

test('one reader, or nothing read, has no agreement to tell', () => {
  for (const kappa of [
    fleissKappa([['bar'], ['weld']]),
    fleissKappa([]),
    cohenKappa([{ first: 'bar', second: null }]),
  ]) {
    assert.equal(kappa.kappa, null);
    assert.ok(kappa.doubts.length > 0);
  }
});

test('a reader who uses one category only agrees by chance, and limits are not made up', () => {
  const kappa = cohenKappaOfTable([
    [5, 3],
    [0, 0],
  ]);
  assert.equal(kappa.kappa, 0);
  assert.equal(kappa.standardError, null);
  assert.equal(kappa.lower, null);
});

test('a sentence tells share, chance and kappa', () => {
  const { sentence } = cohenKappaOfTable([
    [20, 2],
    [1, 7],
  ]);
  assert.match(
    sentence,
    /^The two readers gave the same answer in 90 % of cases \(30 things read\); chance alone would give 59 %\. Of the agreement that chance does not give, 75 % was reached/,
  );
});

test('misuse is refused', () => {
  assert.throws(() => cohenKappaOfTable([[1, 2]]), RangeError);
  assert.throws(() => cohenKappaOfTable([[-1]]), RangeError);
  assert.throws(() => fleissKappaOfCounts([[0.5]]), RangeError);
});
