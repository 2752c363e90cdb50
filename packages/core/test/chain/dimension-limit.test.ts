import assert from 'node:assert/strict';
import { test } from 'node:test';
import { type Quantity, rulebook, specificationFor } from '../../src/chain/index.ts';
import { cellNumber } from '../../src/chain/rulebook.ts';
import { everyRow } from './every-row.ts';
import { limitOf } from './limit-of.ts';

/** Rows of EN 818-3 that its page shows, as the notes of the rules quote them. */
function quoted(rule: string, pattern: RegExp): readonly number[] {
  const note = rulebook.standards.find(({ id }) => id === 'EN 818-3')?.rules.find(({ id }) => id === rule)?.note ?? '';
  const parts = pattern.exec(note)?.slice(1).map(Number) ?? [];
  assert.ok(parts.length > 0 && parts.every(Number.isFinite), `${rule}: ${note}`);
  return parts;
}

// The page prints to 0.1 mm at 19 mm and to whole mm (widths 0.1 to 1 mm) at 36 mm: half a last place is allowed.
const printed = [
  { size_mm: 19, quantity: 'pitch', values: quoted('pitchTolerance', /19: \d+ \(([\d.]+)-([\d.]+)\)/), within: 0.05 },
  { size_mm: 36, quantity: 'pitch', values: quoted('pitchTolerance', /36: \d+ \(([\d.]+)-([\d.]+)\)/), within: 0.5 },
  { size_mm: 19, quantity: 'innerWidth', values: quoted('innerWidth', /19: ([\d.]+)\//), within: 0.05 },
  { size_mm: 36, quantity: 'innerWidth', values: quoted('innerWidth', /36: ([\d.]+)\//), within: 0.05 },
  { size_mm: 19, quantity: 'outerWidth', values: quoted('outerWidth', /19: [\d.]+\/([\d.]+)/), within: 0.05 },
  { size_mm: 36, quantity: 'outerWidth', values: quoted('outerWidth', /36: [\d.]+\/([\d.]+)/), within: 0.5 },
  { size_mm: 19, quantity: 'weldDiameter', values: quoted('weld', /19: ([\d.]+)/), within: 0.05 },
  { size_mm: 36, quantity: 'weldDiameter', values: quoted('weld', /36: ([\d.]+)/), within: 0.05 },
] as const satisfies readonly { quantity: Quantity; size_mm: number; values: readonly number[]; within: number }[];

for (const { size_mm, quantity, values, within } of printed) {
  test(`EN 818-3, ${size_mm} mm: the limits of ${quantity} are those its page prints, to its rounding`, () => {
    const limit = limitOf(specificationFor({ standard: 'EN 818-3', size_mm }), quantity);
    const sides = [limit.lower, limit.upper].filter((side) => side !== null);
    assert.equal(sides.length, values.length);
    sides.forEach((side, index) => {
      assert.ok(Math.abs(side - (values[index] ?? Number.NaN)) <= within + 1e-9, `${side}, printed ${values[index]}`);
    });
  });
}

for (const size_mm of [19, 36]) {
  test(`EN 818-3, ${size_mm} mm: the diameter tolerance is the one its page prints, to 0.1 mm`, () => {
    const [tolerance] = quoted('diameterTolerance', new RegExp(`${size_mm}: \\+/-([\\d.]+)`));
    const { lower, upper } = limitOf(specificationFor({ standard: 'EN 818-3', size_mm }), 'diameter');
    assert.ok(Math.abs((Number(upper) - Number(lower)) / 2 - Number(tolerance)) <= 0.05 + 1e-9);
    assert.ok(Math.abs((Number(upper) + Number(lower)) / 2 - size_mm) < 1e-9);
  });
}

test('every deviation of a table stands off its nominal value as printed', () => {
  const deviations = {
    pitchUpper: 'upper',
    pitchLower: 'lower',
    gaugeLength11Upper: 'upper',
    gaugeLength11Lower: 'lower',
  } as const;
  let compared = 0;
  for (const { standard, table, row, specification } of everyRow()) {
    for (const [name, column] of Object.entries(table.columns)) {
      const side = deviations[column.quantity as keyof typeof deviations]; // undefined for all other quantities
      const deviation = cellNumber(row, name);
      // DIN 764 class A is the one that has to be asked for.
      if (side === undefined || deviation === null || name.startsWith('classA')) continue;
      const limit = limitOf(specification, column.quantity.startsWith('pitch') ? 'pitch' : 'lengthOverLinks');
      assert.ok(
        Math.abs(Number(limit[side]) - Number(limit.nominal) - deviation) < 1e-9,
        `${standard.id} ${limit.statement}`,
      );
      compared += 1;
    }
  }
  assert.ok(compared > 100, `${compared} deviations compared`);
});

test('a deviation the file does not have leaves its side open and says so, the other side still holds', () => {
  const limit = limitOf(specificationFor({ standard: 'DIN 764', grade: '3', size_mm: 42 }), 'lengthOverLinks');
  assert.equal(limit.lower, null);
  assert.ok(Number(limit.upper) > Number(limit.nominal));
  assert.match(limit.provenance.note ?? '', /lower deviation was not found/);
});

test('a symmetric tolerance stands off both ways', () => {
  for (const { standard, size_mm } of [
    { standard: 'PAS 1061', size_mm: 16 },
    { standard: 'DIN 763', size_mm: 10 },
    { standard: 'EN 818-2', size_mm: 6 },
  ]) {
    const { lower, upper, nominal } = limitOf(specificationFor({ standard, size_mm }), 'pitch');
    assert.ok(Math.abs(Number(lower) + Number(upper) - 2 * Number(nominal)) < 1e-9);
    assert.ok(Number(upper) > Number(nominal));
  }
});

test('working load limits come to tonnes from kilograms and pounds', () => {
  const pound = 0.001 * Number(rulebook.general.constants.lbToKg?.value);
  const tonnes: Readonly<Record<string, number>> = { t: 1, kg: 0.001, lb: pound };
  let compared = 0;
  for (const { table, row, specification } of everyRow()) {
    for (const [name, column] of Object.entries(table.columns)) {
      const printedValue = cellNumber(row, name);
      if (column.quantity !== 'workingLoadLimit' || printedValue === null) continue;
      const expected = printedValue * Number(tonnes[column.unit]);
      const found = Number(limitOf(specification, 'workingLoadLimit').nominal);
      assert.ok(Math.abs(found / expected - 1) < 1e-11, specification.title);
      compared += 1;
    }
  }
  assert.ok(compared > 100, `${compared} working load limits compared`);
});

test('the minus deviation of stud-link cable steps just above the sizes its rule names (UR W18, memory)', () => {
  const rule = rulebook.standards
    .find(({ id }) => id === 'IACS UR W18')
    ?.rules.find(({ id }) => id === 'diameterTolerance');
  assert.ok(rule);
  const { minusByUpperSize } = rule.value as { minusByUpperSize: Record<string, number> }; // the shape of this one rule
  const minus = (size_mm: number) =>
    size_mm - Number(limitOf(specificationFor({ standard: 'W18', grade: '2', size_mm }), 'diameter').lower);
  const [first, second] = Object.keys(minusByUpperSize).filter((key) => key !== 'over');
  assert.equal(minus(Number(first)), minusByUpperSize[Number(first)]);
  assert.equal(minus(Number(first) + 1), minusByUpperSize[Number(second)]);
});
