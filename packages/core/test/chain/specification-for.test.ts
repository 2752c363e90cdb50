import assert from 'node:assert/strict';
import { test } from 'node:test';
import {
  breakingForce_kN,
  gradeSpecification,
  kilonewtonsPerPoundForce,
  quantityUnits,
  rulebook,
  rulebookIndex,
  sizesFor,
  specificationFor,
  standardId,
  toPrecision3,
} from '../../src/chain/index.ts';
import { cellNumber } from '../../src/chain/rulebook.ts';
import { isInputError } from '../../src/errors.ts';
import { everyRow } from './every-row.ts';
import { limitOf } from './limit-of.ts';

const lookedUp = everyRow();

test('every row of every table yields limits that are numbers in bench units, without a gap', () => {
  assert.ok(lookedUp.length > 250);
  for (const { specification } of lookedUp) {
    assert.ok(specification.limits.length > 0, specification.title);
    for (const limit of specification.limits) {
      const numbers = [limit.lower, limit.upper, limit.nominal].filter((value) => value !== null);
      const what = `${specification.title}: ${limit.statement}`;
      assert.ok(numbers.length > 0, what);
      assert.ok(
        numbers.every((value) => Number.isFinite(value) && value > 0),
        what,
      );
      assert.equal(limit.unit, quantityUnits[limit.quantity]);
      assert.ok((limit.lower ?? 0) <= (limit.upper ?? Number.POSITIVE_INFINITY), what);
      assert.ok(!limit.statement.includes('NaN'));
      assert.ok(limit.provenance.citations.length > 0, `${what} names its sources`);
      assert.ok(!limit.provenance.citations.some(({ kind }) => kind === 'unknown'), `${what}: every source is listed`);
    }
    const quantities = specification.limits.map(({ quantity }) => quantity);
    assert.equal(new Set(quantities).size, quantities.length, `${specification.title}: one limit per quantity`);
  }
});

test('a table value comes out unchanged, but for its unit', () => {
  const factors: Record<string, number> = { lbf: kilonewtonsPerPoundForce, kN: 1 };
  let compared = 0;
  for (const { standard, table, row, grade, specification } of lookedUp) {
    for (const [name, column] of Object.entries(table.columns)) {
      const published = cellNumber(row, name);
      const isOtherGrade = column.grade !== undefined && grade?.split(' ')[0] !== column.grade;
      if (column.quantity !== 'breakingForceMin' || published === null || isOtherGrade) continue;
      const factor = factors[column.unit];
      assert.ok(factor, `${standard.id}: ${column.unit}`);
      const found = limitOf(specification, 'breakingForce').lower ?? Number.NaN;
      assert.ok(Math.abs(found / (published * factor) - 1) < 1e-11, specification.title);
      compared += 1;
    }
  }
  assert.ok(compared > 250, `${compared} breaking forces compared`);
});

test('the grade definition gives the EN 818-3 breaking forces of all 17 sizes to three figures (EN 818-3:1999 table 5)', () => {
  const sizes = sizesFor({ standard: 'EN 818-3' });
  assert.equal(sizes.length, 17);
  for (const { size_mm } of sizes) {
    const published = limitOf(specificationFor({ standard: 'EN 818-3', size_mm }), 'breakingForce').lower;
    const defined = limitOf(gradeSpecification({ grade: 40, size_mm }), 'breakingForce').lower;
    assert.equal(toPrecision3(defined ?? Number.NaN), published, `${size_mm} mm`);
  }
});

test('an 8 mm chain of grade 30 needs just over 30 kN (common practice)', () => {
  const specification = specificationFor({ standard: 'grade-definition', grade: '30', size_mm: 8 });
  const force = limitOf(specification, 'breakingForce').lower ?? Number.NaN;
  assert.ok(force > 30 && force < 30.5, `${force}`);
  assert.equal(force, Number(breakingForce_kN(300, 8).toPrecision(12)));
  assert.equal(specification.gradeStress_N_per_mm2, 300);
  assert.equal(specification.limits.length, 1);
});

test('where a standard gives a mean stress, its table forces lie within 8 % of it (what the file accepts for US grades)', () => {
  for (const { specification, table, row } of lookedUp) {
    const stress = specification.gradeStress_N_per_mm2;
    const isSuspect = table.suspect?.some(({ trade }) => trade === row.trade) ?? false;
    if (stress === null || isSuspect) continue;
    const force = limitOf(specification, 'breakingForce').lower ?? Number.NaN;
    const defined = breakingForce_kN(stress, specification.nominalSize_mm);
    assert.ok(Math.abs(defined / force - 1) < 0.08, specification.title);
  }
});

test('a standard is found by its id, its name and the names it is known by', () => {
  for (const { id } of rulebook.standards) assert.ok(rulebookIndex().some((entry) => entry.id === standardId(id)));
  const titles = ['en-818-3', 'EN 818-3', 'en 818-3'].map(
    (standard) => specificationFor({ standard, size_mm: 8 }).title,
  );
  assert.equal(new Set(titles).size, 1);
  assert.equal(specificationFor({ standard: 'EN 24565', grade: '30', size_mm: 8 }).standard, 'ISO 4565');
  assert.equal(specificationFor({ standard: 'W22', grade: 'R3', size_mm: 50 }).standard, 'IACS UR W22');
  assert.equal(specificationFor({ standard: 'astm a413', grade: '30', tradeSize: '3/8' }).standard, 'ASTM A413/A413M');
});

test('a grade goes by its letter, its number or ten times its number; the scales of anchor cable stand apart', () => {
  for (const grade of ['8', 'T', '80', 'G80', 'grade 8', 'T(8)']) {
    assert.equal(specificationFor({ standard: 'EN 818-2', grade, size_mm: 8 }).grade, '8', grade);
  }
  assert.equal(specificationFor({ standard: 'EN 818-7', grade: 'dat', size_mm: 5 }).grade, 'DAT');
  assert.equal(specificationFor({ standard: 'W18', grade: '3', size_mm: 26 }).grade, '3');
  assert.throws(() => specificationFor({ standard: 'W18', grade: '30', size_mm: 26 }), hasCode('chain/unknown-grade'));
});

test('the form of mooring chain decides its proof force and mass; left open, only what both share is given', () => {
  const quantities = (grade: string) =>
    specificationFor({ standard: 'W22', grade, size_mm: 50 }).limits.map(({ quantity }) => quantity);
  assert.ok(!quantities('R4').includes('proofForce'));
  assert.ok(!quantities('R4').includes('massPerMetre'));
  const stud = limitOf(specificationFor({ standard: 'W22', grade: 'R4 stud', size_mm: 50 }), 'proofForce').lower;
  const studless = limitOf(
    specificationFor({ standard: 'W22', grade: 'R4 studless', size_mm: 50 }),
    'proofForce',
  ).lower;
  assert.ok((stud ?? 0) > (studless ?? 0));
  assert.match(
    limitOf(specificationFor({ standard: 'W22', grade: 'R4', size_mm: 50 }), 'breakingForce').provenance.note ?? '',
    /R4 stud/,
  );
});

test('grades that no table lists are computed by the rule and say so', () => {
  const limit = limitOf(specificationFor({ standard: 'W22', grade: 'R5 stud', size_mm: 50 }), 'breakingForce');
  assert.equal(limit.place, 'rule load');
  assert.ok(limit.provenance.flags.includes('derived'));
});

test('a length over links takes the wider class unless the narrower is asked for, and says which', () => {
  const wide = limitOf(specificationFor({ standard: 'DIN 764', grade: '3', size_mm: 10 }), 'lengthOverLinks');
  const narrow = limitOf(
    specificationFor({ standard: 'DIN 764', grade: '3', size_mm: 10, lengthClass: 'A' }),
    'lengthOverLinks',
  );
  assert.equal(wide.links, 11);
  assert.ok((wide.upper ?? 0) > (narrow.upper ?? 0));
  assert.match(wide.provenance.note ?? '', /class B/);
  assert.match(narrow.provenance.note ?? '', /class A/);
});

test('the five links of anchor cable are limited as a sum of pitches, two diameters less than the outside length', () => {
  const limit = limitOf(specificationFor({ standard: 'W18', grade: '2', size_mm: 26 }), 'lengthOverLinks');
  assert.equal(limit.links, 5);
  assert.equal(
    limit.lower,
    5 * (limitOf(specificationFor({ standard: 'W18', grade: '2', size_mm: 26 }), 'pitch').nominal ?? 0),
  );
});

test('what is not there is refused with what there is', () => {
  const cases = [
    { request: { standard: 'EN 818-9', size_mm: 8 }, code: 'chain/unknown-standard', holds: 'en-818-3' },
    { request: { standard: 'EN 818-3', grade: '8', size_mm: 8 }, code: 'chain/unknown-grade', holds: '4' },
    { request: { standard: 'EN 818-3', size_mm: 9 }, code: 'chain/unknown-size', holds: '8' },
    { request: { standard: 'ISO 4565', size_mm: 8 }, code: 'chain/grade-missing', holds: '30' },
    { request: { standard: 'EN 818-3', size_mm: Number.NaN }, code: 'chain/size-invalid', holds: 'above 0' },
    { request: { standard: 'EN 818-3' }, code: 'chain/size-missing', holds: 'mm' },
    { request: { standard: 'DIN 763', grade: '3', size_mm: 8 }, code: 'chain/unknown-grade', holds: 'no grades' },
    { request: { standard: 'astm-a413', grade: '43', tradeSize: '1/8' }, code: 'chain/unknown-size', holds: '3/8 in' },
    { request: { standard: 'W22', grade: 'R3', size_mm: 300 }, code: 'chain/unknown-size', holds: 'any size from' },
    { request: { standard: 'grade-definition', grade: 'x', size_mm: 8 }, code: 'chain/grade-number', holds: '30' },
    { request: { standard: 'grade-definition', grade: '8', size_mm: 8 }, code: 'chain/grade-number', holds: '80' },
    { request: { standard: 'grade-definition', grade: '30' }, code: 'chain/size-invalid', holds: 'above 0' },
  ];
  for (const { request, code, holds } of cases) {
    assert.throws(
      () => specificationFor(request),
      (error) => isInputError(error) && error.code === code && error.message.includes(holds),
      JSON.stringify(request),
    );
  }
});

test('the list of the rulebook names what each entry holds, and each can be looked up', () => {
  for (const entry of rulebookIndex().filter(({ sizes }) => sizes.length > 0)) {
    assert.match(entry.id, /^[a-z0-9-]+$/);
    for (const grade of entry.grades.length === 0 ? [undefined] : entry.grades) {
      const [size] = sizesFor({ standard: entry.id, grade });
      assert.ok(size, `${entry.id} ${grade ?? ''} lists a size`);
      const wanted = size.tradeSize === null ? { size_mm: size.size_mm } : { tradeSize: size.tradeSize };
      assert.ok(specificationFor({ standard: entry.id, grade, ...wanted }).limits.length > 0);
    }
  }
});

function hasCode(code: string): (error: unknown) => boolean {
  return (error) => isInputError(error) && error.code === code;
}
