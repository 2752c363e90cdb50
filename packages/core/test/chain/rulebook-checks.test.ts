import assert from 'node:assert/strict';
import { test } from 'node:test';
import {
  breakingForce_kN,
  kilonewtonsPerPoundForce,
  nearestR10,
  roundUpR20,
  rulebook,
  studLinkLoad_kN,
  type TableCheck,
  toPrecision3,
  workingLoadLimitLifting_t,
} from '../../src/chain/index.ts';
import { cellNumber, type Row } from '../../src/chain/rulebook.ts';

/** What the project computes for a check, from the size and the other cells of the row. */
type Computed = (d: number, row: Row) => number;

const inPounds =
  (stress: number): Computed =>
  (d) =>
    breakingForce_kN(stress, d) / kilonewtonsPerPoundForce;

const elevenPitches: Computed = (_d, row) => 11 * (cellNumber(row, 'pitch') ?? Number.NaN);

const computations: Readonly<Record<string, Computed>> = {
  'en818-3-bf': (d) => toPrecision3(breakingForce_kN(400, d)),
  'en818-3-mpf': (d) => toPrecision3(breakingForce_kN(200, d)),
  'en818-3-wll': (d) => workingLoadLimitLifting_t(breakingForce_kN(400, d)),
  'en818-3-bend': (d) => 0.8 * d,
  'en818-2-wll': (d) => workingLoadLimitLifting_t(breakingForce_kN(800, d)),
  's6-bf': (d) => breakingForce_kN(630, d),
  'g10-bf': (d) => breakingForce_kN(1000, d),
  'g10-mpf': (d) => breakingForce_kN(625, d),
  'din766-bf': (d) => nearestR10(breakingForce_kN(315, d)),
  'din766-l11': elevenPitches,
  'din764-l11': elevenPitches,
  'iso4565-bf30': (d) => roundUpR20(breakingForce_kN(300, d)),
  'us-30': inPounds(300),
  'us-43': inPounds(430),
  'us-70': inPounds(700),
  'us-80': inPounds(800),
  'us-100': inPounds(1000),
  ...studLinkComputations(),
};

/** Checks named after a load column (`w18-proof1`, `w22-breakR3S`): the coefficient is looked up in the rule. */
function studLinkComputations(): Record<string, Computed> {
  const found: Record<string, Computed> = {};
  for (const check of rulebook.checks) {
    const parts = /^w(18|22)-(proof|break)(\d|R\dS|R\d)(Stud|Studless)?$/.exec(check.id);
    if (parts === null) continue;
    const [, rules, load, grade, form] = parts;
    const entry = rulebook.standards.find(({ id }) => id === `IACS UR W${rules}`);
    const coefficients = entry?.rules.find(({ id }) => id === 'load')?.coefficients?.[grade ?? ''] ?? {};
    const key = load === 'break' ? 'breaking' : rules === '18' ? 'proof' : `proof${form ?? 'Stud'}`;
    const k = coefficients[key] ?? Number.NaN;
    const unit = rules === '18' ? kilonewtonsPerPoundForce : 1;
    found[check.id] = (d) => studLinkLoad_kN(k, d) / unit;
  }
  return found;
}

function rowsOf(check: TableCheck): { readonly published: number; readonly row: Row; readonly key: unknown }[] {
  const entry = rulebook.standards.find(({ id }) => id === check.standard);
  const table = entry?.tables.find(({ id }) => id === check.table);
  assert.ok(table, `${check.standard} has a table ${check.table}`);
  return table.rows.flatMap((row) => {
    const key = row[table.key];
    const published = cellNumber(row, check.column ?? '');
    const isSkipped = check.skip?.some((skipped) => skipped === key) ?? false;
    const isMemory = table.columns[check.column ?? '']?.sources?.[0] === 'memory' || isFromMemory(row, check.column);
    return published === null || isSkipped || isMemory ? [] : [{ published, row, key }];
  });
}

/** A value recalled without a source proves nothing about a formula. */
function isFromMemory(row: Row, column: string | undefined): boolean {
  const src = row.src;
  return typeof src === 'object' && src !== null && src[column ?? ''] === 'memory';
}

for (const check of rulebook.checks.filter(({ table }) => table !== undefined)) {
  test(`${check.standard}, ${check.column} of table ${check.table}: our arithmetic reproduces the published values (${check.id})`, () => {
    const compute = computations[check.id];
    assert.ok(compute, `there is a computation for ${check.id}`);
    const rows = rowsOf(check);
    assert.equal(rows.length, check.observed?.rows, 'as many rows as when the file was made');
    for (const { published, row, key } of rows) {
      const computed = compute(cellNumber(row, 'd') ?? Number.NaN, row);
      const allowed = check.accept.abs ?? published * (check.accept.rel ?? 0);
      const deviation = Math.abs(computed - published);
      assert.ok(deviation <= allowed + 1e-9, `${String(key)}: computed ${computed}, published ${published}`);
    }
  });
}

test('the worked example of grade 80, 10 mm comes out in kN and in lbf (supplier page on grading)', () => {
  const check = rulebook.checks.find(({ id }) => id === 'worked-example');
  assert.ok(check?.expected !== undefined && check.also !== undefined);
  const force_kN = breakingForce_kN(800, 10);
  assert.ok(Math.abs(force_kN - check.expected) <= (check.accept.abs ?? 0));
  assert.ok(Math.abs(force_kN / kilonewtonsPerPoundForce - check.also.lbf) <= check.also.accept.abs);
});

test('every check of the rulebook is recomputed here', () => {
  const ids = rulebook.checks.filter(({ table }) => table !== undefined).map(({ id }) => id);
  assert.ok(ids.length > 30);
  assert.deepEqual(
    ids.filter((id) => computations[id] === undefined),
    [],
  );
});
