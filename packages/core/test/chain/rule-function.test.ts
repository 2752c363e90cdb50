import assert from 'node:assert/strict';
import { test } from 'node:test';
import { evaluateExpression, type RuleVariables, rulebook, ruleFunction } from '../../src/chain/index.ts';

/** The helpers of the file's expressions, written from its series alone and apart from the project's own. */
const decades = [-3, -2, -1, 0, 1, 2, 3, 4, 5];
const seriesMembers = (name: 'R10' | 'R20' | 'R40') =>
  decades.flatMap((power) => rulebook.general.preferredNumbers[name].map((member) => Number(`${member}e${power}`)));
const helpers = {
  roundDownR40: (x: number) => Math.max(...seriesMembers('R40').filter((member) => member <= x)),
  roundUpR20: (x: number) => Math.min(...seriesMembers('R20').filter((member) => member >= x)),
  nearestR10: (x: number) =>
    seriesMembers('R10').reduce((best, member) => (Math.abs(member - x) < Math.abs(best - x) ? member : best)),
  toPrecision3: (x: number) => Number(x.toPrecision(3)),
};

/** Runs the text of a rule, which only this test does. */
function runText(js: string, variables: RuleVariables): number {
  const names = ['d', 'p', 'k', 'breakingForce', 'mbf', 'stud'] as const;
  const run = new Function(...names, ...Object.keys(helpers), `return (${js});`);
  return Number(run(...names.map((name) => variables[name]), ...Object.values(helpers)));
}

const sizes = [4, 5, 6, 7, 8, 9, 10, 11, 12, 12.5, 13, 14, 16, 17.5, 18, 19, 20, 22, 23, 26, 32, 36, 42, 45, 60, 78];

for (const standard of rulebook.standards) {
  for (const rule of standard.rules.filter(({ js }) => js !== undefined)) {
    test(`${standard.id}, rule ${rule.id}: the function and the reading of the text agree with the text (${rule.js})`, () => {
      const compute = ruleFunction(standard.id, rule.id);
      assert.ok(compute, 'there is a function for the rule');
      const coefficients = Object.values(rule.coefficients ?? { none: { k: 1 } }).flatMap((k) => Object.values(k));
      for (const d of sizes) {
        for (const k of coefficients) {
          for (const stud of [true, false]) {
            const variables = { d, k, stud, p: 2.8 * d, breakingForce: d * d * 0.5, mbf: d * d * 0.6 };
            const expected = runText(rule.js ?? '', variables);
            assert.ok(Number.isFinite(expected));
            close(compute(variables), expected, `function, d = ${d}`);
            close(evaluateExpression(rule.js ?? '', variables), expected, `text read without running it, d = ${d}`);
          }
        }
      }
    });
  }
}

test('no function stands without a rule in the file', () => {
  for (const standard of rulebook.standards) {
    for (const rule of standard.rules.filter(({ js }) => js === undefined)) {
      assert.equal(ruleFunction(standard.id, rule.id), null, `${standard.id} ${rule.id}`);
    }
  }
});

test('the general formulas of the file agree with the text they are stated in', async () => {
  const chain = await import('../../src/chain/index.ts');
  const formulas = rulebook.general.formulas;
  const run = (name: string, variables: Record<string, number>) => {
    const js = formulas[name]?.js ?? 'NaN';
    const names = Object.keys(variables);
    return Number(
      new Function(...names, ...Object.keys(helpers), `return (${js});`)(
        ...Object.values(variables),
        ...Object.values(helpers),
      ),
    );
  };
  close(chain.nominalArea_mm2(8), run('crossSections', { d: 8 }), 'crossSections');
  close(chain.breakingForce_kN(400, 13), run('breakingForce', { d: 13, stress: 400 }), 'breakingForce');
  close(chain.gradeOf(40, 8), run('gradeMetric', { mbf: 40, d: 8 }), 'gradeMetric');
  close(chain.meanStress_N_per_mm2(40, { size_mm: 8 }), run('meanStress', { force: 40, d: 8 }), 'meanStress');
  close(chain.workingLoadLimitLifting_t(80.42), run('workingLoadLimitLifting', { breakingForce: 80.42 }), 'WLL');
  close(
    chain.totalUltimateElongation_pct(25.2, 120),
    run('totalUltimateElongation', { extensionAtFracture: 25.2, sumOfInsideLengths: 120 }),
    'elongation',
  );
  close(
    chain.lengthOverLinks_mm({ links: 11, pitch_mm: 24, size_mm: 8 }),
    run('lengthOverLinks', { n: 11, p: 24, d: 8 }),
    'length',
  );
  close(chain.stressRate_N_per_mm2_per_s(1.2, 8), run('stressRate', { forceRate: 1.2, d: 8 }), 'stressRate');
  close(
    chain.apparentStrainRate_per_s({ tableSpeed_mm_per_s: 0.3, links: 5, pitch_mm: 24 }),
    run('apparentStrainRate', { crossheadSpeed: 0.3, n: 5, p: 24 }),
    'strain rate',
  );
});

/** Two ways of writing a product differ by a few rounding errors, no more. */
function close(computed: number, expected: number, what: string): void {
  assert.ok(Math.abs(computed - expected) <= 1e-12 * Math.abs(expected), `${what}: ${computed}, text ${expected}`);
}
