import assert from 'node:assert/strict';
import { test } from 'node:test';
import { chiSquaredQuantile } from '../../../src/statistics/distribution/index.ts';
import * as few from '../../../src/statistics/few-pieces/index.ts';
import { type RandomSource, seededRandom } from '../../../src/statistics/random.ts';
import { summarise } from '../../../src/statistics/summary.ts';
import { expectedOf } from './expected.ts';

const isotope = expectedOf('nist-grubbs-isotope');
test(`Grubbs' test finds the outlier: ${isotope.title}`, () => {
  const significance = isotope.number('alpha');
  const values = isotope.numbers('x');
  const found = few.grubbsTest(values, { significance, end: 'greatest' });
  isotope.scalar('G', found.statistic);
  isotope.scalar('critical_one_sided', found.critical);
  isotope.scalar('critical_two_sided', few.grubbsCritical(values.length, { significance, end: 'either' }));
  isotope.scalar('mean', found.mean);
  isotope.scalar('sd', found.sd);
  assert.equal(found.value, Math.max(...values));
  assert.equal(found.standsOut, true);
});

const grubbs = expectedOf('grubbs-critical-values');
test(`Grubbs' critical values are those of the table: ${grubbs.title}`, () => {
  const critical = (significance: number) => (n: number) => few.grubbsCritical(n, { significance, end: 'either' });
  grubbs.list('alpha05', grubbs.numbers('n_alpha05').map(critical(0.05)));
  grubbs.list('alpha01', grubbs.numbers('n_alpha01').map(critical(0.01)));
});

const rosner = expectedOf('nist-generalized-esd-54');
test(`outliers that hide each other from one test are found together: ${rosner.title}`, () => {
  const significance = rosner.number('alpha');
  const values = rosner.numbers('x');
  const found = few.generalizedEsd(values, { significance, mostOutliers: rosner.number('max_outliers') });
  rosner.list(
    'R',
    found.steps.map((step) => step.statistic),
  );
  rosner.list(
    'lambda',
    found.steps.map((step) => step.critical),
  );
  rosner.scalar('n_outliers', found.outliers);
  rosner.scalar('mean', found.steps[0]?.mean ?? null);
  rosner.scalar('sd', found.steps[0]?.sd ?? null);
  assert.equal(few.grubbsTest(values, { significance, end: 'either' }).standsOut, false);
});

const naphthalene = expectedOf('esd-naphthalene-25');
test(`every step of the outlier test has the printed digits: ${naphthalene.title}`, () => {
  const found = few.generalizedEsd(naphthalene.numbers('x'), {
    significance: 0.05,
    mostOutliers: naphthalene.number('max_outliers'),
  });
  naphthalene.list(
    'R',
    found.steps.map((step) => step.statistic),
  );
  naphthalene.list(
    'lambda',
    found.steps.map((step) => step.critical),
  );
  naphthalene.list(
    'mean_i',
    found.steps.map((step) => step.mean),
  );
  naphthalene.list(
    'sd_i',
    found.steps.map((step) => step.sd),
  );
  naphthalene.scalar('n_outliers', found.outliers);
});

const wafers = expectedOf('nist-tolerance-7263');
test(`closed forms of the tolerance factors have the printed digits: ${wafers.title}`, () => {
  const demand = {
    n: wafers.number('n'),
    coverage: wafers.number('coverage'),
    confidence: wafers.number('confidence'),
  };
  const { n, coverage, confidence } = demand;
  const mean = wafers.number('mean');
  const sd = wafers.number('sd');
  const howe = few.howeToleranceFactor(demand);
  const natrella = few.natrellaToleranceFactor(demand) ?? Number.NaN;
  wafers.scalar('k2_howe', howe);
  wafers.scalar('k1_normal_approx', natrella);
  wafers.scalar('a', few.natrellaTerms(demand).a);
  wafers.scalar('b', few.natrellaTerms(demand).b);
  wafers.scalar('chi2_0.01_42', chiSquaredQuantile(1 - confidence, n - 1));
  wafers.scalar('two_sided_low', mean - howe * sd);
  wafers.scalar('two_sided_high', mean + howe * sd);
  wafers.scalar('upper_one_sided', mean + natrella * sd);
  wafers.scalar('lower_one_sided', mean - natrella * sd);
  const exact = few.toleranceBound({ n, mean, sd, coverage, confidence, side: 'lower' });
  wafers.scalar('k1_noncentral_t', exact.factor);
});

const anchors = expectedOf('tolerance-k-anchors');
test(`exact tolerance factors have the printed digits: ${anchors.title}`, () => {
  anchors.scalar('k2_n20_p95_c95', few.twoSidedToleranceFactor({ n: 20, coverage: 0.95, confidence: 0.95 }));
  anchors.scalar('k1_n20_p99_c90', few.oneSidedToleranceFactor({ n: 20, coverage: 0.99, confidence: 0.9 }));
  anchors.scalar('k1_n8_p95_c95', few.oneSidedToleranceFactor({ n: 8, coverage: 0.95, confidence: 0.95 }));
});

const kB = expectedOf('milhdbk17-kB');
test(`B-basis factors are those remembered of the table: ${kB.title}`, () => {
  const factors = kB.numbers('n').map((n) => few.normalBasis({ n, mean: 100, sd: 1 }, { basis: 'B' }).factor);
  kB.list('k_B', factors);
});

for (const [id, factor] of [
  ['tolerance-k1-table', few.oneSidedToleranceFactor],
  ['tolerance-k2-table', few.twoSidedToleranceFactor],
] as const) {
  const table = expectedOf(id);
  test(`tolerance factors agree with an independent computation: ${table.title}`, () => {
    for (const coverage of [0.9, 0.95, 0.99]) {
      for (const confidence of [0.9, 0.95]) {
        const found = table.numbers('n').map((n) => factor({ n, coverage, confidence }));
        table.list(`coverage${coverage}_confidence${confidence}`, found);
      }
    }
  });
}

const kn = expectedOf('en1990-kn');
test(`characteristic values take the printed factor, which the formula confirms coarsely: ${kn.title}`, () => {
  const known = kn.numbers('n_known');
  const unknown = kn.numbers('n_unknown');
  const formula = (isKnown: boolean) => (n: number) => few.characteristicFormulaFactor(n, isKnown);
  kn.list('kn_VX_known', known.map(formula(true)));
  kn.list('kn_VX_unknown', unknown.map(formula(false)));
  kn.scalar('infinity', few.characteristicFormulaFactor(1e9, false));
  const used = unknown.map((n) => few.characteristicValue({ n, mean: 100, sd: 4 }).factor);
  kn.list('kn_VX_unknown', used);
  assert.ok(used.every((factor, index) => factor === few.characteristicTableFactor(unknown[index] ?? 0, false)));
  const usedKnown = known.map(
    (n) => few.characteristicValue({ n, mean: 100, sd: null }, { knownVariation: 0.04 }).factor,
  );
  kn.list('kn_VX_known', usedKnown);
});

const weibullV = expectedOf('milhdbk17-weibull-VB');
const weibullN = weibullV.numbers('n');
test(`Weibull basis factors below 16 values are the printed ones: ${weibullV.title}`, () => {
  for (const basis of ['A', 'B'] as const) {
    weibullV.list(
      `V_${basis}`,
      weibullN.map((n) => few.weibullBasisFactor(n, basis)),
    );
    const printed = few.weibullBasisFactor(15, basis) ?? Number.NaN;
    const joined = few.weibullBasisFormulaFactor(15, basis);
    // The closed form is meant for 16 and more: at 15 it meets the table, at 10 it is 2 % off.
    assert.ok(Math.abs(joined - printed) < 0.003 * printed, `${basis}: ${joined} against ${printed}`);
  }
});

test(`the printed Weibull basis factors are what simulated samples demand: ${weibullV.title}`, () => {
  const random = seededRandom(3);
  for (const n of [weibullN.at(0) ?? 0, weibullN.at(-1) ?? 0]) {
    const found = simulatedFactors(n, random, 60_000);
    for (const basis of ['A', 'B'] as const) {
      const printed = few.weibullBasisFactor(n, basis) ?? Number.NaN;
      assert.ok(
        Math.abs(found[basis] - printed) < 0.015 * printed,
        `n = ${n}, ${basis}: ${found[basis]} against ${printed}`,
      );
    }
  }
});

/** The 95 % point of shape root n ln(fitted fractile / true one), which V has to make up for. */
function simulatedFactors(
  n: number,
  random: RandomSource,
  samples: number,
): { readonly A: number; readonly B: number } {
  const excess = { A: [] as number[], B: [] as number[] };
  for (let sample = 0; sample < samples; sample += 1) {
    const { shape, scale } = weibullFitOf(Array.from({ length: n }, () => -Math.log(1 - random.uniform())));
    for (const basis of ['A', 'B'] as const) {
      const hazard = -Math.log(few.basisCoverage(basis));
      const logRatio = Math.log(scale) + Math.log(hazard) / shape - Math.log(hazard);
      excess[basis].push(shape * Math.sqrt(n) * logRatio);
    }
  }
  const point = (list: number[]) => list.sort((a, b) => a - b)[Math.floor(0.95 * samples)] ?? Number.NaN;
  return { A: point(excess.A), B: point(excess.B) };
}

const tapes = expectedOf('tape-tensile-38-basis');
test(`basis values of a real set of strengths by three forms: ${tapes.title}`, () => {
  const values = tapes.numbers('x');
  const { n, mean, sd } = summarise(values);
  tapes.scalar('mean', mean);
  tapes.scalar('sd', sd);
  tapes.scalar('k_B', few.normalBasis({ values }, { basis: 'B' }).factor);
  tapes.scalar('normal_B', few.normalBasis({ values }, { basis: 'B' }).value);
  tapes.scalar('normal_A', few.normalBasis({ values }, { basis: 'A' }).value);
  const fit = { n, ...weibullFitOf(values) };
  tapes.scalar('weibull_shape', fit.shape);
  tapes.scalar('weibull_scale', fit.scale);
  tapes.scalar('V_B', few.weibullBasis(fit, { basis: 'B' }).factor);
  tapes.scalar('V_A', few.weibullBasis(fit, { basis: 'A' }).factor);
  tapes.scalar('weibull_B', few.weibullBasis(fit, { basis: 'B' }).value);
  tapes.scalar('weibull_A', few.weibullBasis(fit, { basis: 'A' }).value);
  const nonparametric = few.nonparametricBound(values, { coverage: 0.9, confidence: 0.95, side: 'lower' });
  tapes.scalar('nonparametric_B_rank', nonparametric.rank);
  tapes.scalar('nonparametric_B', nonparametric.bound);
  tapes.scalar('ad_normal', few.andersonDarlingNormal(values).statistic);
  tapes.scalar('ad_weibull', weibullDeparture(values, fit));
  const rate = 1 / (mean ?? Number.NaN);
  const exponential = few.andersonDarlingStatistic(
    values.toSorted((a, b) => a - b),
    { logCdf: (x) => Math.log(-Math.expm1(-x * rate)), logUpper: (x) => -x * rate },
  );
  tapes.scalar('ad_exponential_modified', exponential * (1 + 0.3 / n));
});

/** Maximum likelihood of a complete sample by Newton's method on the profile equation of the shape, independent of the fits elsewhere. */
function weibullFitOf(values: readonly number[]): { readonly shape: number; readonly scale: number } {
  const logs = values.map(Math.log);
  const meanLog = logs.reduce((sum, x) => sum + x, 0) / logs.length;
  let shape = 1.2 / Math.sqrt(logs.reduce((sum, x) => sum + (x - meanLog) ** 2, 0) / (logs.length - 1));
  let total = 0;
  for (let round = 0; round < 100; round += 1) {
    total = 0;
    let first = 0;
    let second = 0;
    for (const x of logs) {
      const weight = Math.exp(shape * (x - meanLog));
      total += weight;
      first += weight * (x - meanLog);
      second += weight * (x - meanLog) ** 2;
    }
    const slope = first / total;
    const move = (1 / shape - slope) / (1 / shape ** 2 + second / total - slope ** 2);
    shape = Math.max(shape / 2, shape + move);
    if (Math.abs(move) < 1e-12 * shape) break;
  }
  return { shape, scale: Math.exp(meanLog + Math.log(total / logs.length) / shape) };
}

function weibullDeparture(values: readonly number[], fit: { readonly shape: number; readonly scale: number }): number {
  const hazard = (x: number) => (x / fit.scale) ** fit.shape;
  return few.andersonDarlingStatistic(
    values.toSorted((a, b) => a - b),
    { logCdf: (x) => Math.log(-Math.expm1(-hazard(x))), logUpper: (x) => -hazard(x) },
  );
}

for (const id of ['chain-link-strength-20', 'polished-window-strength-31']) {
  const strengths = expectedOf(id);
  test(`a real set of strengths: basis value and tests of a normal form: ${strengths.title}`, () => {
    const values = strengths.numbers('x');
    const basis = few.normalBasis({ values }, { basis: 'B' });
    strengths.scalar('k_B', basis.factor);
    strengths.scalar('normal_B_basis', basis.value);
    strengths.scalar('shapiro_W', few.shapiroWilk(values).statistic);
    strengths.scalar('shapiro_p', few.shapiroWilk(values).p);
    strengths.scalar('ad_normal', few.andersonDarlingNormal(values).statistic);
    strengths.scalar('ad_weibull', weibullDeparture(values, weibullFitOf(values)));
  });
}

const ranks = expectedOf('milhdbk17-nonparametric-ranks');
test(`as many pieces as the tables say make the r-th least value a bound: ${ranks.title}`, () => {
  for (const basis of ['A', 'B'] as const) {
    const demand = { coverage: few.basisCoverage(basis), confidence: few.basisConfidence };
    const sizes = ranks.numbers(`r_${basis}`).map((rank) => few.nonparametricSampleSize(rank, demand));
    ranks.list(`n_${basis}`, sizes);
    for (const [index, n] of sizes.entries()) {
      assert.equal(few.nonparametricRank(n, demand), index + 1);
      assert.equal(few.nonparametricRank(n - 1, demand), index);
    }
  }
});

const koopmansB = expectedOf('milhdbk17-hanson-koopmans-B');
test(`factors computed from the definition are those of the table: ${koopmansB.title}`, () => {
  const r = koopmansB.numbers('r');
  const factors = koopmansB
    .numbers('n')
    .map((n, index) => few.hansonKoopmansFactor({ n, rank: r[index] ?? 0, coverage: 0.9, confidence: 0.95 }));
  koopmansB.list('k', factors);
});

const koopmansA = expectedOf('milhdbk17-hanson-koopmans-A');
test(`factors computed from the definition are those of the table: ${koopmansA.title}`, () => {
  const factors = koopmansA
    .numbers('n')
    .map((n) => few.hansonKoopmansFactor({ n, rank: n, coverage: 0.99, confidence: 0.95 }));
  koopmansA.list('k', factors);
});

const clopper = expectedOf('nist-clopper-pearson-4-20');
test(`an exact binomial interval has the printed digits: ${clopper.title}`, () => {
  const found = few.proportionInterval(
    { count: clopper.number('x'), n: clopper.number('n') },
    { confidence: clopper.number('confidence') },
  );
  clopper.scalar('lower', found.lower);
  clopper.scalar('upper', found.upper);
});

const binomial = expectedOf('r-binom-682-925');
test(`an exact binomial test and interval have the printed digits: ${binomial.title}`, () => {
  const counted = { count: binomial.number('x'), n: binomial.number('n') };
  const interval = few.proportionInterval(counted, { confidence: binomial.number('confidence') });
  binomial.scalar('lower', interval.lower);
  binomial.scalar('upper', interval.upper);
  binomial.scalar('estimate', interval.proportion);
  binomial.scalar('p', few.binomialTest(counted, { supposed: binomial.number('p0') }).p);
});

const run = expectedOf('success-run-sample-sizes');
test(`pieces needed without a failure: ${run.title}`, () => {
  const confidences = run.numbers('C');
  const sizes = run
    .numbers('R')
    .map((reliability, index) => few.proofRunSize({ reliability, confidence: confidences[index] ?? 0 }));
  run.list('n', sizes);
});
