import assert from 'node:assert/strict';
import { test } from 'node:test';
import {
  bartlett,
  bonferroni,
  classicAnova,
  type Group,
  holm,
  kruskalWallis,
  levene,
  tukeyKramer,
  welchAnova,
  welchTwoSample,
} from '../../../src/statistics/comparison/index.ts';
import {
  chiSquaredQuantile,
  fisherFQuantile,
  studentizedRangeQuantile,
} from '../../../src/statistics/distribution/index.ts';
import { check, citation, type ReferenceCheck, statisticsChecks } from '../../reference-checks.ts';
import { kindWords, meets, meetsAll } from './expected.ts';

interface Rule {
  readonly group: number;
  readonly first: string;
  readonly then_repeat: readonly [string, string];
  readonly n: number;
}

/** Groups as the checks hold them: a list of lists, a list by name, or a rule that makes them. */
function groupsOf({ inputs }: ReferenceCheck): Group[] {
  const rules = inputs.groups_rule as readonly Rule[] | undefined;
  if (rules) return rules.map((rule) => ({ name: `${rule.group}`, values: valuesOf(rule) }));
  const groups = inputs.groups as Readonly<Record<string, readonly number[]>>; // a list is read by index
  return Object.entries(groups).map(([name, values]) => ({ name, values }));
}

function valuesOf({ first, then_repeat, n }: Rule): number[] {
  return Array.from({ length: n }, (_, index) =>
    Number(index === 0 ? first : then_repeat[(index - 1) % 2 === 0 ? 0 : 1]),
  );
}

function referenceTest(id: string, law: string, body: (reference: ReferenceCheck) => void): void {
  const reference = check(statisticsChecks, id);
  test(`${id}: ${law} (${citation(reference)}${kindWords(reference)})`, () => body(reference));
}

const certified = statisticsChecks.filter((reference) => reference.id.startsWith('strd-anova-'));
assert.equal(certified.length, 11);

for (const { id } of certified) {
  referenceTest(id, 'the table of variance keeps the certified digits', (reference) => {
    const table = classicAnova(groupsOf(reference));
    meets(reference, 'df_between', table.degreesOfFreedomBetween);
    meets(reference, 'df_within', table.degreesOfFreedomWithin);
    meets(reference, 'ss_between', table.sumOfSquaresBetween);
    meets(reference, 'ss_within', table.sumOfSquaresWithin);
    meets(reference, 'ms_between', table.meanSquareBetween);
    meets(reference, 'ms_within', table.meanSquareWithin);
    meets(reference, 'F', table.f);
    meets(reference, 'r_squared', table.rSquared);
    meets(reference, 'residual_sd', table.sdWithin);
  });
}

referenceTest('nist-anova-743', 'three temperatures differ', (reference) => {
  const table = classicAnova(groupsOf(reference));
  meets(reference, 'ss_treatment', table.sumOfSquaresBetween);
  meets(reference, 'ss_error', table.sumOfSquaresWithin);
  meets(reference, 'ss_total', table.sumOfSquaresBetween + table.sumOfSquaresWithin);
  meets(reference, 'ms_treatment', table.meanSquareBetween);
  meets(reference, 'ms_error', table.meanSquareWithin);
  meets(reference, 'F', table.f);
  meets(reference, 'p', table.p);
  meets(reference, 'F_crit_95', fisherFQuantile(0.95, table.degreesOfFreedomBetween, table.degreesOfFreedomWithin));
});

referenceTest('nist-tukey-7471', 'pairs have the printed joint limits', (reference) => {
  const groups = groupsOf(reference).map((group, index) => ({ ...group, name: `${index + 1}` }));
  const { pairs } = tukeyKramer(groups, { confidence: 0.95 });
  const turned = (reference.inputs.pairs as readonly string[]).map((name) => {
    const [first, second] = name.split('-');
    const pair = pairs.find((one) => [one.first, one.second].sort().join() === [first, second].sort().join());
    assert.ok(pair);
    return pair.first === first
      ? pair
      : { ...pair, lower: -(pair.upper ?? Number.NaN), upper: -(pair.lower ?? Number.NaN) };
  });
  meetsAll(
    reference,
    'lower',
    turned.map((pair) => pair.lower),
  );
  meetsAll(
    reference,
    'upper',
    turned.map((pair) => pair.upper),
  );
  meetsAll(
    reference,
    'p_tukey',
    turned.map((pair) => pair.p),
  );
  const table = classicAnova(groups);
  meets(reference, 'ms_error', table.meanSquareWithin);
  meets(reference, 'F', table.f);
  meets(reference, 'q_crit_95_4_16', studentizedRangeQuantile(0.95, 4, 16));
});

referenceTest('r-tukey-warpbreaks', 'pairs are held against the scatter of a richer model', (reference) => {
  const y = reference.inputs.y as readonly number[];
  const by = (factor: readonly string[]) =>
    [...new Set(factor)].map((name) => ({ name, values: y.filter((_, index) => factor[index] === name) }));
  const tensions = by(reference.inputs.tension as readonly string[]);
  const tension = classicAnova(tensions);
  const wool = classicAnova(by(reference.inputs.wool as readonly string[]));
  // Balanced: what either factor explains is taken off the same whole.
  const whole = tension.sumOfSquaresBetween + tension.sumOfSquaresWithin;
  const degreesOfFreedom = y.length - 1 - tension.degreesOfFreedomBetween - wool.degreesOfFreedomBetween;
  const meanSquare = (whole - tension.sumOfSquaresBetween - wool.sumOfSquaresBetween) / degreesOfFreedom;
  meets(reference, 'ms_residual', meanSquare);
  meets(reference, 'F_tension', (tension.meanSquareBetween ?? 0) / meanSquare);
  meets(reference, 'F_wool', (wool.meanSquareBetween ?? 0) / meanSquare);
  const order = ['M-H', 'L-H', 'L-M'];
  const pairs = tukeyKramer([...tensions].reverse(), { confidence: 0.95, residual: { meanSquare, degreesOfFreedom } })
    .pairs.map((pair) => ({
      name: `${pair.second}-${pair.first}`,
      difference: -pair.difference,
      lower: -(pair.upper ?? Number.NaN),
      upper: -(pair.lower ?? Number.NaN),
      p: pair.p,
    }))
    .sort((a, b) => order.indexOf(a.name) - order.indexOf(b.name));
  assert.deepEqual(
    pairs.map((pair) => pair.name),
    reference.inputs.pairs,
  );
  meetsAll(
    reference,
    'diff',
    pairs.map((pair) => pair.difference),
  );
  meetsAll(
    reference,
    'lower',
    pairs.map((pair) => pair.lower),
  );
  meetsAll(
    reference,
    'upper',
    pairs.map((pair) => pair.upper),
  );
  meetsAll(
    reference,
    'p_adj',
    pairs.map((pair) => pair.p),
  );
});

referenceTest('nist-bartlett-gear', 'ten batches do not scatter alike', (reference) => {
  const result = bartlett(groupsOf(reference));
  meets(reference, 'T', result.statistic);
  meets(reference, 'p', result.p);
  meets(reference, 'chi2_crit_95_9', chiSquaredQuantile(0.95, result.degreesOfFreedomBetween));
});

referenceTest('nist-levene-gear', 'distances from the median do not tell ten batches apart', (reference) => {
  const result = levene(groupsOf(reference), { centre: 'median' });
  meets(reference, 'W_median', result.statistic);
  meets(reference, 'p_median', result.p);
  meets(reference, 'W_mean', levene(groupsOf(reference), { centre: 'mean' }).statistic);
  meets(reference, 'F_crit_95_9_90', fisherFQuantile(0.95, 9, result.degreesOfFreedomWithin ?? Number.NaN));
});

referenceTest('r-bartlett-insectsprays', 'six sprays do not scatter alike', (reference) => {
  const result = bartlett(groupsOf(reference));
  meets(reference, 'K_squared', result.statistic);
  meets(reference, 'df', result.degreesOfFreedomBetween);
  meets(reference, 'p', result.p);
});

referenceTest('r-kruskal-mucociliary', 'ranks of three groups do not differ', (reference) => {
  const result = kruskalWallis(groupsOf(reference));
  meets(reference, 'H', result.h);
  meets(reference, 'df', result.degreesOfFreedom);
  meets(reference, 'p', result.p);
});

referenceTest('r-welch-sleep', 'two groups by Welch, pooled, and as a two-sample t', (reference) => {
  const groups = groupsOf(reference);
  const welch = welchAnova(groups);
  const pooled = classicAnova(groups);
  meets(reference, 'F_welch', welch.f);
  meets(reference, 'df_denominator', welch.degreesOfFreedomWithin);
  meets(reference, 'p_welch', welch.p);
  meets(reference, 'F_pooled', pooled.f);
  meets(reference, 'p_pooled', pooled.p);
  const [first, second] = groups;
  assert.ok(first && second);
  const t = welchTwoSample({ first, second });
  meets(reference, 'F_welch', (t.t ?? Number.NaN) ** 2);
  meets(reference, 'df_denominator', t.degreesOfFreedom);
  meets(reference, 'p_welch', t.p);
});

referenceTest('holm-adjust', 'adjusted p values keep the order of the input', (reference) => {
  const p = reference.inputs.p as readonly number[];
  meetsAll(reference, 'holm', holm(p));
  meetsAll(reference, 'bonferroni', bonferroni(p));
});

referenceTest('charpy-4-machines', 'four machines differ in the mean, not in scatter', (reference) => {
  const groups = groupsOf(reference);
  const table = classicAnova(groups);
  meets(reference, 'F', table.f);
  meets(reference, 'p', table.p);
  meets(reference, 'ss_between', table.sumOfSquaresBetween);
  meets(reference, 'ss_within', table.sumOfSquaresWithin);
  meets(reference, 'sd_within', table.sdWithin);
  meets(reference, 'sd_between', table.sdBetween);
  meets(reference, 'kruskal_H', kruskalWallis(groups).h);
  meets(reference, 'levene_median_W', levene(groups).statistic);
  meets(reference, 'bartlett', bartlett(groups).statistic);
});

referenceTest('tensile-42CrMoS4-67', 'five heat treatments of one steel, four properties', (reference) => {
  const columns = reference.inputs.columns as readonly string[];
  const rows = reference.inputs.rows as readonly (readonly number[])[];
  const batch = columns.indexOf('batch');
  for (const [key, column] of [
    ['Rp02', 'Rp02_MPa'],
    ['Rm', 'Rm_MPa'],
    ['A', 'A_percent'],
    ['Z', 'Z_percent'],
  ] as const) {
    const at = columns.indexOf(column);
    const groups = [1, 2, 3, 4, 5].map((name) => ({
      name: `${name}`,
      values: rows.filter((row) => row[batch] === name).map((row) => row[at] ?? Number.NaN),
    }));
    meets(reference, `${key}_F`, classicAnova(groups).f);
    meets(reference, `${key}_levene_median`, levene(groups).statistic);
    meets(reference, `${key}_kruskal_H`, kruskalWallis(groups).h);
  }
});
