import assert from 'node:assert/strict';
import { test } from 'node:test';
import { normalUpper } from '../../src/statistics/distribution/index.ts';
import {
  conformanceProbability,
  decideConformity,
  decisionBounds,
  globalRisk,
  guardForGlobalRisk,
  guardForRisk,
} from '../../src/verdict/index.ts';
import { agrees, expectedOf, inputsOf, origin, publishedTest } from '../uncertainty/published-check.ts';

const exact = (standardUncertainty: number) => ({ standardUncertainty, expandedUncertainty: null });

publishedTest('jcgm106-table1', 'the guard band of one limit is z times u', () => ({
  z: inputsOf<{ pc: number[] }>('jcgm106-table1').pc.map(
    (pc) => guardForRisk({ lower: 0, upper: null }, 1 - pc, exact(1)) ?? Number.NaN,
  ),
}));

const oneValue = (id: string) => {
  const { y = 0, u = 0, TL, TU } = inputsOf<Record<string, number>>(id);
  const found = conformanceProbability({ value: y, standardUncertainty: u }, { lower: TL ?? null, upper: TU ?? null });
  return { z: found?.distance ?? null, pc: found?.probability ?? null };
};

publishedTest('jcgm106-zener', 'a value below an upper limit', () => oneValue('jcgm106-zener'));
publishedTest('jcgm106-burst-strength', 'a strength above a lower limit', () => oneValue('jcgm106-burst-strength'));
publishedTest('jcgm106-motor-oil', 'a value between two limits', () => ({ pc: oneValue('jcgm106-motor-oil').pc }));

publishedTest('jcgm106-speed-limit', 'a speed is rejected only when it surely exceeds the limit', () => {
  const { v0 = 0, u_rel = 0, p = 0 } = inputsOf<Record<string, number>>('jcgm106-speed-limit');
  const z = guardForRisk({ lower: null, upper: v0 }, 1 - p, exact(1)) ?? Number.NaN;
  const vmax = v0 / (1 - u_rel * z);
  const verdictAt = (value: number) =>
    decideConformity(
      { value, unit: 'km/h', standardUncertainty: u_rel * value, expandedUncertainty: null },
      { lower: null, upper: v0 },
      { kind: 'stated risk', risk: 1 - p },
    ).verdict;
  assert.equal(verdictAt(vmax + 0.01), 'does not conform');
  assert.notEqual(verdictAt(vmax - 0.01), 'does not conform');
  return { vmax };
});

publishedTest('jcgm106-nandrolone', 'with few degrees of freedom the guard band is t times s', () => {
  const { T = 0, s = 0, nu = 0, p = 0 } = inputsOf<Record<string, number>>('jcgm106-nandrolone');
  const known = { standardUncertainty: s, degreesOfFreedom: nu, expandedUncertainty: null };
  const bounds = decisionBounds({ lower: null, upper: T }, { kind: 'stated risk', risk: 1 - p }, known);
  const g = bounds?.rejectionGuard ?? Number.NaN;
  return { t: g / s, g, A: bounds?.rejection.upper ?? null };
});

publishedTest('jcgm106-resistors', 'risks of an acceptance interval over a process', () => {
  const given = inputsOf<Record<'y0' | 'u0' | 'um' | 'TL' | 'TU' | 'AL' | 'AU', number>>('jcgm106-resistors');
  const found = globalRisk({
    prior: { kind: 'normal', mean: given.y0, standardDeviation: given.u0 },
    standardUncertainty: given.um,
    limits: { lower: given.TL, upper: given.TU },
    acceptance: { lower: given.AL, upper: given.AU },
  });
  assert.match(found.sentence, /0\.99 % would be accepted though they do not conform, and 6\.9 % rejected/);
  return {
    pc_process: found.conformingShare,
    w_over_U: (given.AL - given.TL) / (2 * given.um),
    R_C: found.consumersRisk,
    R_P: found.producersRisk,
    R_C_more: found.consumersRisk,
    R_P_more: found.producersRisk,
    accepted_fraction: found.acceptedShare,
  };
});

publishedTest('jcgm106-ball-bearings', 'a guard band for a stated global risk over a gamma prior', () => {
  const { T, um, target_RC, prior } = inputsOf<{ T: number; um: number; target_RC: number; prior: string }>(
    'jcgm106-ball-bearings',
  );
  const [shape = 0, rate = 0] = (prior.match(/\d+/g) ?? []).map(Number);
  const input = {
    prior: { kind: 'gamma', mean: shape / rate, standardDeviation: Math.sqrt(shape) / rate } as const,
    standardUncertainty: um,
    limits: { lower: null, upper: T },
  };
  const found = guardForGlobalRisk({ ...input, consumersRisk: target_RC });
  const { value: printed = 0 } = expectedOf('jcgm106-ball-bearings', 'r');
  const atPrinted = globalRisk({ ...input, acceptance: { lower: null, upper: T - printed * 2 * um } });
  return {
    pc_bar: 1 - (found.risk?.conformingShare ?? Number.NaN),
    r: found.multiplier,
    A_um: found.acceptance.upper,
    'R_P_at_0.65': atPrinted.producersRisk,
    r_exact: found.multiplier,
  };
});

publishedTest(
  'jcgm106-fig17-simple-acceptance',
  'risks of simple acceptance fall with the capability of the measurement',
  () => {
    const { u0_over_T, Cm } = inputsOf<{ u0_over_T: number; Cm: number[] }>('jcgm106-fig17-simple-acceptance');
    const limits = { lower: -0.5, upper: 0.5 };
    const [at2, at10] = Cm.map((capability) =>
      globalRisk({
        prior: { kind: 'normal', mean: 0, standardDeviation: u0_over_T },
        standardUncertainty: 1 / (4 * capability),
        limits,
        acceptance: limits,
      }),
    );
    assert.ok(at2 && at10);
    return {
      R_C_Cm2: at2.consumersRisk,
      R_P_Cm2: at2.producersRisk,
      R_C_Cm10: at10.consumersRisk,
      R_P_Cm10: at10.producersRisk,
      exact: [at2.consumersRisk, at2.producersRisk, at10.consumersRisk, at10.producersRisk],
    };
  },
);

test(`decision-rules-guard-bands: the risk at the acceptance limit of w = r U, below the bounds of the guide (bounds: memory) [${origin('decision-rules-guard-bands')}]`, () => {
  const id = 'decision-rules-guard-bands';
  const risks = inputsOf<{ r: number[] }>(id).r.map((r) => {
    const rule =
      r === 0 ? ({ kind: 'simple acceptance' } as const) : ({ kind: 'guarded acceptance', multiplier: r } as const);
    const known = { standardUncertainty: 1, expandedUncertainty: 2 };
    const edge = decisionBounds({ lower: 0, upper: null }, rule, known)?.acceptance.lower ?? Number.NaN;
    const decision = decideConformity({ value: edge, unit: 'kN', ...known }, { lower: 0, upper: null }, rule);
    assert.equal(decision.verdict, 'conforms');
    return decision.specificRisk ?? Number.NaN;
  });
  const atU = risks[inputsOf<{ r: number[] }>(id).r.indexOf(1)] ?? Number.NaN;
  agrees(id, { pfa: risks, iso14253_default_percent: 100 * atU }, { but: ['ilac_g8_bound'] });
  for (const [index, bound] of (expectedOf(id, 'ilac_g8_bound').values ?? []).entries()) {
    assert.ok((risks[index] ?? 1) <= bound, `${index}`);
  }
});

test('the integrated risks agree with the closed form of a one-sided limit on a prior that hides nothing', () => {
  // With a prior far wider than the measurement the accepted share is that of the prior widened by the measurement.
  const prior = { kind: 'normal', mean: 3, standardDeviation: 2 } as const;
  for (const u of [0, 0.01, 0.5, 3]) {
    const limit = { lower: 4, upper: null };
    const found = globalRisk({ prior, standardUncertainty: u, limits: limit, acceptance: limit });
    assert.ok(Math.abs(found.acceptedShare - normalUpper((4 - 3) / Math.hypot(2, u))) < 1e-12, `${u}`);
    if (u === 0) assert.equal(found.consumersRisk, 0);
  }
});

test('a risk no guard band can reach has none, and misuse is refused', () => {
  const input = {
    prior: { kind: 'normal', mean: 0, standardDeviation: 1 } as const,
    standardUncertainty: 1,
    limits: { lower: -0.5, upper: 0.5 },
  };
  const found = guardForGlobalRisk({ ...input, consumersRisk: 1e-12 });
  assert.ok(found.guard === null || found.risk !== null);
  assert.throws(() => guardForGlobalRisk({ ...input, consumersRisk: 0 }), RangeError);
  const both = { lower: null, upper: null };
  assert.throws(() => globalRisk({ ...input, limits: both, acceptance: both }), RangeError);
  const steep = { kind: 'gamma', mean: 1, standardDeviation: 2 } as const;
  assert.throws(() => globalRisk({ ...input, prior: steep, acceptance: input.limits }), RangeError);
});
