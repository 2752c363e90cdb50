import assert from 'node:assert/strict';
import { test } from 'node:test';
import fc from 'fast-check';
import { breakingForce_kN, nominalArea_mm2, rulebook } from '../../src/chain/index.ts';
import { isInputError } from '../../src/errors.ts';
import { standardGrades, strengthSplit } from '../../src/gauging/index.ts';

const chains = fc.record({
  breakingForce_kN: fc.double({ min: 1, max: 2000, noNaN: true }),
  steelArea_mm2: fc.double({ min: 10, max: 5000, noNaN: true }),
  nominalSize_mm: fc.double({ min: 3, max: 60, noNaN: true }),
  specifiedStress_N_per_mm2: fc.double({ min: 200, max: 1200, noNaN: true }),
});

test('size factor times steel factor is the force over the minimum', () => {
  fc.assert(
    fc.property(chains, (chain) => {
      const split = strengthSplit(chain);
      const minimum = breakingForce_kN(chain.specifiedStress_N_per_mm2, chain.nominalSize_mm);
      near(split.sizeFactor * Number(split.steelFactor), chain.breakingForce_kN / minimum);
      near(Number(split.totalFactor), chain.breakingForce_kN / minimum);
      near(split.stressOverMeasuredArea_N_per_mm2 * split.sizeFactor, split.stressOverNominalArea_N_per_mm2);
    }),
    { seed: 7, numRuns: 300 },
  );
});

test('a bar of nominal size puts the whole margin on the steel; steel at its grade puts it all on size', () => {
  fc.assert(
    fc.property(chains, (chain) => {
      const exact = strengthSplit({ ...chain, steelArea_mm2: nominalArea_mm2(chain.nominalSize_mm) });
      assert.equal(exact.sizeFactor, 1);
      near(Number(exact.steelFactor), Number(exact.totalFactor));
      const force = (chain.specifiedStress_N_per_mm2 * chain.steelArea_mm2) / 1000;
      const plain = strengthSplit({ ...chain, breakingForce_kN: force });
      near(Number(plain.steelFactor), 1);
      near(Number(plain.totalFactor), plain.sizeFactor);
    }),
    { seed: 7, numRuns: 300 },
  );
});

test('a thicker bar under the same force bears a lower grade, never a higher one', () => {
  fc.assert(
    fc.property(chains, fc.double({ min: 1.001, max: 2, noNaN: true }), (chain, fatter) => {
      const [thin, fat] = [
        strengthSplit(chain),
        strengthSplit({ ...chain, steelArea_mm2: chain.steelArea_mm2 * fatter }),
      ];
      assert.ok(fat.honestGrade < thin.honestGrade);
      assert.ok((fat.standardGrade ?? 0) <= (thin.standardGrade ?? 0));
    }),
    { seed: 7, numRuns: 200 },
  );
});

test('the standard grades hold every stress of the grade table (EN 818-1 definitions) and the US numbers', () => {
  for (const { value } of rulebook.general.gradeStress.rows) {
    if (value !== null) assert.ok(standardGrades.includes(value / 10));
  }
  const us = rulebook.standards.filter(({ id }) => id.startsWith('ASTM')).flatMap(({ tables }) => tables);
  for (const { grade } of us) assert.ok(standardGrades.includes(Number(grade)), grade);
  assert.deepEqual(
    [...standardGrades].sort((a, b) => a - b),
    standardGrades,
  );
});

test('each standard grade is reached by exactly its force, and missed by a thousandth less', () => {
  for (const grade of standardGrades) {
    const force = breakingForce_kN(grade * 10, 8);
    const at = (factor: number) =>
      strengthSplit({ breakingForce_kN: force * factor, steelArea_mm2: nominalArea_mm2(8), nominalSize_mm: 8 });
    assert.equal(at(1).standardGrade, grade);
    assert.notEqual(at(0.999).standardGrade, grade);
  }
});

test('the uncertainty of the stress joins force and area in relative squares; a grade within it is not guarded', () => {
  const chain = { breakingForce_kN: breakingForce_kN(401, 8), steelArea_mm2: nominalArea_mm2(8), nominalSize_mm: 8 };
  const split = strengthSplit({
    ...chain,
    uncertainties: { breakingForce_kN: chain.breakingForce_kN * 0.003, steelArea_mm2: chain.steelArea_mm2 * 0.004 },
  });
  near(Number(split.stressUncertainty_N_per_mm2), 401 * 0.005);
  assert.equal(split.standardGrade, 40);
  assert.equal(split.guardedStandardGrade, 30);
  assert.equal(strengthSplit(chain).guardedStandardGrade, null);
  assert.equal(strengthSplit({ ...chain, uncertainties: { breakingForce_kN: 0.1 } }).stressUncertainty_N_per_mm2, null);
});

test('a minimum breaking force serves where the standard gives no stress', () => {
  const chain = { breakingForce_kN: 34, steelArea_mm2: 104, nominalSize_mm: 8 };
  const split = strengthSplit({ ...chain, specifiedStress_N_per_mm2: null, minimumBreakingForce_kN: 32 });
  near(Number(split.totalFactor), 34 / 32);
  assert.equal(strengthSplit(chain).totalFactor, null);
});

const area = nominalArea_mm2(8);
const sentences = [
  {
    what: 'a fat bar with good steel',
    force: 1.1,
    size: 1.07,
    says: /^10\.0 % above the minimum: strong partly because its bar is fat, 7\.0 % over the nominal area; the steel itself is 2\.8 % above its grade/,
  },
  {
    what: 'a fat bar with weak steel',
    force: 1.04,
    size: 1.1,
    says: /strong only because its bar is fat.*the steel itself is 5\.5 % below its grade/,
  },
  {
    what: 'a thin bar with good steel',
    force: 0.97,
    size: 0.94,
    says: /^3\.0 % below the minimum: weak because its bar is thin/,
  },
  {
    what: 'weak steel of nominal size',
    force: 0.9,
    size: 1,
    says: /^10\.0 % below the minimum: the bar is of nominal area; the steel itself is 10\.0 % below/,
  },
  {
    what: 'good steel of nominal size',
    force: 1.2,
    size: 1,
    says: /^20\.0 % above the minimum: the bar is of nominal area; the steel itself is 20\.0 % above/,
  },
  {
    what: 'a chain just at its minimum',
    force: 1,
    size: 1,
    says: /^At the minimum: .*the steel itself is at its grade/,
  },
];
for (const { what, force, size, says } of sentences) {
  test(`the sentence on ${what} says where the strength comes from`, () => {
    const split = strengthSplit({
      breakingForce_kN: force * breakingForce_kN(300, 8),
      steelArea_mm2: size * area,
      nominalSize_mm: 8,
      specifiedStress_N_per_mm2: 300,
    });
    assert.match(split.sentence, says);
  });
}

test('a pull that ended early gives lower bounds and says "at least"', () => {
  const early = { breakingForce_kN: 33, steelArea_mm2: area, nominalSize_mm: 8, isAtLeast: true };
  const split = strengthSplit({ ...early, specifiedStress_N_per_mm2: 300 });
  assert.ok(split.isAtLeast);
  assert.match(split.sentence, /^At least/);
  assert.match(split.sentence, /at least grade/);
  const low = strengthSplit({ ...early, breakingForce_kN: 20, specifiedStress_N_per_mm2: 300 });
  assert.match(low.sentence, /when the record ended/);
  assert.match(low.sentence, /as far as the record goes/);
});

test('inputs that are not above zero are named together', () => {
  assert.throws(
    () => strengthSplit({ breakingForce_kN: 0, steelArea_mm2: Number.NaN, nominalSize_mm: 8 }),
    (error) =>
      isInputError(error) &&
      error.message.includes('breakingForce_kN = 0') &&
      error.message.includes('steelArea_mm2 = NaN'),
  );
});

/** Products of a few factors agree to the last digits. */
function near(found: number, expected: number): void {
  assert.ok(Math.abs(found - expected) <= 1e-12 * Math.abs(expected), `${found}, expected ${expected}`);
}
