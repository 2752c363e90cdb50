import assert from 'node:assert/strict';
import { test } from 'node:test';
import { fisherFQuantile } from '../../src/statistics/distribution/index.ts';
import {
  type BudgetTerm,
  betweenGroups,
  budget,
  calibrationLine,
  correctionAt,
  correlationOfMeans,
  coverage,
  estimated,
  evenlyWithin,
  freedomOfEstimate,
  type ModelInput,
  propagate,
  propagateJointly,
  reliabilityOfScatter,
  repeatedReadings,
  statementOf,
} from '../../src/uncertainty/index.ts';
import { certificateInput, resolutionInput } from '../../src/uncertainty/instrument-input.ts';
import { type Computed, inputsOf, publishedTest } from './published-check.ts';

function term(name: string, standardUncertainty: number, degreesOfFreedom = Infinity, sensitivity = 1): BudgetTerm {
  return { name, standardUncertainty, sensitivity, degreesOfFreedom, distribution: 'normal', source: 'check' };
}

const standardOf = (input: Pick<ModelInput, 'distribution'>) => statementOf(input.distribution).standardUncertainty;

publishedTest('gum-4.4.3-typeA', 'repeated readings give mean, scatter and the uncertainty of the mean', () => {
  const { mean, sd, standardUncertainty } = repeatedReadings(inputsOf<{ x: number[] }>('gum-4.4.3-typeA').x);
  return { mean, sd, u_mean: standardUncertainty };
});

publishedTest('gum-4.3-typeB', 'certificates and bounds give standard uncertainties', () => {
  const inputs = inputsOf<{
    mass: { U: number; k: number };
    resistor: { U: number; confidence: number };
    length_50percent: { a: number };
    expansion_rectangular: { a: number };
    voltmeter: { reading: number; u_typeA: number };
  }>('gum-4.3-typeB');
  const { mass, resistor, voltmeter } = inputs;
  const certificate = { certificate: '1', expandedUncertainty: mass.U, coverageFactor: mass.k };
  const meter = standardOf({ distribution: evenlyWithin(14e-6 * voltmeter.reading + 2e-6) });
  return {
    u_mass_ug: 1e6 * standardOf(certificateInput(certificate, 'g')),
    u_resistor_uohm: (1e6 * resistor.U) / coverage({ probability: resistor.confidence }, Infinity).factor,
    u_length_mm: inputs.length_50percent.a / coverage({ probability: 0.5 }, Infinity).factor,
    'u_expansion_1e-6': 1e6 * standardOf({ distribution: evenlyWithin(inputs.expansion_rectangular.a) }),
    u_dmm_uV: 1e6 * meter,
    uc_voltage_uV:
      1e6 *
      (budget({ terms: [term('meter', meter), term('readings', voltmeter.u_typeA)] }).combinedStandardUncertainty ?? 0),
  };
});

publishedTest(
  'gum-5.2.2-correlated-resistors',
  'what all parts share adds up, what they do not adds in squares',
  () => {
    const { n, u_each_ohm, r } = inputsOf<{ n: number; u_each_ohm: number; r: number }>(
      'gum-5.2.2-correlated-resistors',
    );
    const names = Array.from({ length: n }, (_, index) => `R${index}`);
    const terms = names.map((name) => term(name, u_each_ohm));
    const correlation = names.flatMap((a, i) =>
      names.slice(i + 1).map((b) => ({ between: [a, b] as const, coefficient: r })),
    );
    return {
      uc_correlated_ohm: budget({ terms, correlation }).combinedStandardUncertainty,
      uc_if_uncorrelated_ohm: budget({ terms }).combinedStandardUncertainty,
    };
  },
);

publishedTest('gum-G.4.1-welch-satterthwaite', 'the effective degrees of freedom follow the parts', () => {
  const inputs = inputsOf<{ u_rel_percent: number[]; n: number[]; p: number }>('gum-G.4.1-welch-satterthwaite');
  const found = budget({
    terms: inputs.u_rel_percent.map((u, index) => term(`X${index}`, u, (inputs.n[index] ?? 0) - 1)),
    coverage: { probability: inputs.p },
  });
  return {
    uc_rel_percent: found.combinedStandardUncertainty,
    nu_eff: found.effectiveDegreesOfFreedom,
    t95_19: found.coverageFactor,
    U95_percent: found.expandedUncertainty,
  };
});

publishedTest('gum-G.4.2-dof-typeB', 'a judged uncertainty has the degrees of freedom of its own reliability', () => ({
  nu: inputsOf<{ relative: number[] }>('gum-G.4.2-dof-typeB').relative.map(freedomOfEstimate),
}));

publishedTest('gum-table-G2-t', 'coverage factors are those of Student', () => {
  const { nu, p_percent } = inputsOf<{ nu: number[]; p_percent: number[] }>('gum-table-G2-t');
  return { t: nu.flatMap((freedom) => p_percent.map((p) => coverage({ probability: p / 100 }, freedom).factor)) };
});

publishedTest('gum-table-E1', 'a scatter from few readings is itself badly known', () => ({
  percent: inputsOf<{ n: number[] }>('gum-table-E1').n.map((n) => 100 * (reliabilityOfScatter(n) ?? 0)),
}));

interface EndGauge {
  readonly lS_nm: number;
  readonly d_nm: number;
  readonly theta_mean_degC: number;
  readonly alphaS_per_degC: number;
  readonly budget: readonly {
    readonly name: string;
    readonly u_nm?: number;
    readonly u?: number;
    readonly nu?: number;
  }[];
}

publishedTest('gum-H.1-end-gauge', 'an end gauge against a standard, with the second order beside it', () => {
  const { lS_nm, d_nm, theta_mean_degC, alphaS_per_degC, budget: rows } = inputsOf<EndGauge>('gum-H.1-end-gauge');
  const input = (name: string, row: number, mean: number): ModelInput => {
    const { u_nm, u, nu } = rows[row] ?? {};
    return { name, unit: '', source: 'check', distribution: estimated(mean, u_nm ?? u ?? Number.NaN, nu ?? Infinity) };
  };
  // The parts as they are stated: their rounded values miss the printed figures by a hair.
  const stated = (row: number) => (rows[row]?.name.match(/\d+/g) ?? []).map(Number);
  const [readings = 0, pooled = 0, observations = 0] = stated(1);
  const [, random = 0, , repeats = 0] = stated(2);
  const [, systematic = 0, sigmas = 0, reliability = 0] = stated(3);
  const parts = [
    { u: pooled / Math.sqrt(readings), nu: observations - 1 },
    { u: random / coverage({ probability: 0.95 }, repeats - 1).factor, nu: repeats - 1 },
    { u: systematic / sigmas, nu: freedomOfEstimate(reliability / 100) },
  ];
  const comparison = parts.map(({ u, nu }, index) => ({
    name: index === 0 ? 'd' : `d${index}`,
    unit: '',
    source: 'check',
    distribution: estimated(index === 0 ? d_nm : 0, u, nu),
  }));
  const d = budget({ terms: parts.map(({ u, nu }, index) => term(`d${index}`, u, nu)) });
  const limits = (name: string, row: number): ModelInput => {
    const width = Number(rows[row]?.name.match(/\+-([\d.e-]+)/)?.[1]);
    const share = Number(rows[row]?.name.match(/(\d+) % reliable/)?.[1]) / 100;
    const distribution = {
      kind: 'rectangular, limits inexact',
      lower: -width,
      upper: width,
      inexactness: share * width,
    } as const;
    return { name, unit: '', source: 'check', distribution };
  };
  const others = [
    input('lS', 0, lS_nm),
    limits('d-alpha', 4),
    limits('d-theta', 5),
    input('theta', 6, theta_mean_degC),
    input('alphaS', 7, alphaS_per_degC),
  ];
  const model = (inputs: readonly ModelInput[]) => {
    const at = (values: readonly number[], name: string, otherwise: number) => {
      const index = inputs.findIndex((one) => one.name === name);
      return index < 0 ? otherwise : (values[index] ?? 0);
    };
    return propagate(
      {
        quantity: 'length',
        unit: 'nm',
        inputs,
        evaluate: (v) =>
          at(v, 'lS', lS_nm) +
          at(v, 'd', d_nm) +
          at(v, 'd1', 0) +
          at(v, 'd2', 0) -
          at(v, 'lS', lS_nm) *
            (at(v, 'd-alpha', 0) * at(v, 'theta', theta_mean_degC) +
              at(v, 'alphaS', alphaS_per_degC) * at(v, 'd-theta', 0)),
      },
      { coverage: { probability: 0.99 } },
    );
  };
  const whole = model([...comparison, ...others]);
  const line = (name: string) => whole.budget.lines.find((one) => one.name === name)?.contribution ?? Number.NaN;
  const bend = (names: readonly string[]) => {
    const part = model(others.filter(({ name }) => names.includes(name)));
    return Math.sqrt(
      (part.secondOrderStandardUncertainty ?? 0) ** 2 - (part.budget.combinedStandardUncertainty ?? 0) ** 2,
    );
  };
  const u = whole.budget.combinedStandardUncertainty ?? Number.NaN;
  return {
    u_d_nm: d.combinedStandardUncertainty,
    nu_eff_d: d.effectiveDegreesOfFreedom,
    component_dalpha_nm: line('d-alpha'),
    component_dtheta_nm: line('d-theta'),
    uc2_nm2: u * u,
    uc_nm: u,
    l_nm: whole.budget.value,
    nu_eff_l: whole.budget.effectiveDegreesOfFreedom,
    t99_16: whole.budget.coverageFactor,
    U99_nm: whole.budget.expandedUncertainty,
    second_order_1_nm: bend(['d-alpha', 'theta']),
    second_order_2_nm: bend(['d-theta', 'alphaS']),
    uc_second_order_nm: whole.secondOrderStandardUncertainty,
  };
});

publishedTest('gum-H.2-correlated', 'results of inputs read together hang together', () => {
  const inputs = inputsOf<{ V: number[]; I_mA: number[]; phi_rad: number[] }>('gum-H.2-correlated');
  const columns = [inputs.V, inputs.I_mA, inputs.phi_rad] as const;
  const means = columns.map(repeatedReadings);
  const names = ['V', 'I', 'phi'] as const;
  const between = (i: 0 | 1 | 2, j: 0 | 1 | 2) => correlationOfMeans(columns[i], columns[j]) ?? Number.NaN;
  const model = (quantity: string, turn: (phi: number) => number) => ({
    quantity,
    evaluate: ([V = 0, I = 0, phi = 0]: readonly number[]) => ((1000 * V) / I) * turn(phi),
  });
  const models = [model('R', Math.cos), model('X', Math.sin), model('Z', () => 1)];
  const modelInputs = names.map((name, index) => ({
    name,
    unit: '',
    source: 'check',
    distribution: estimated(means[index]?.mean ?? 0, means[index]?.standardUncertainty ?? 0),
  }));
  const together = propagateJointly(models, modelInputs, [
    { between: ['V', 'I'], coefficient: between(0, 1) },
    { between: ['V', 'phi'], coefficient: between(0, 2) },
    { between: ['I', 'phi'], coefficient: between(1, 2) },
  ]);
  const apart = propagateJointly(models, modelInputs);
  const figures: Record<string, number | null> = {
    r_V_I: between(0, 1),
    r_V_phi: between(0, 2),
    r_I_phi: between(1, 2),
  };
  for (const [index, key] of ['V', 'I_mA', 'phi'].entries()) {
    figures[`mean_${key}`] = means[index]?.mean ?? null;
    figures[`s_mean_${key}`] = means[index]?.standardUncertainty ?? null;
  }
  for (const [i, one] of together.results.entries()) {
    figures[one.quantity] = one.value;
    figures[`u_${one.quantity}`] = one.standardUncertainty;
    figures[`u_${one.quantity}_uncorrelated`] = apart.results[i]?.standardUncertainty ?? null;
    for (const [j, other] of together.results.entries()) {
      if (j <= i) continue;
      figures[`r_${one.quantity}_${other.quantity}`] = together.correlation[i]?.[j] ?? null;
      figures[`r_${one.quantity}_${other.quantity}_uncorrelated`] = apart.correlation[i]?.[j] ?? null;
    }
  }
  return figures;
});

publishedTest('gum-H.3-thermometer', 'a calibration line predicts with its own uncertainty', () => {
  const { t, b, t0, predict_at } = inputsOf<{ t: number[]; b: number[]; t0: number; predict_at: number }>(
    'gum-H.3-thermometer',
  );
  const line = calibrationLine({ at: t, correction: b, origin: t0 });
  const centred = calibrationLine({ at: t, correction: b });
  assert.ok(line && centred);
  const predicted = correctionAt(line, predict_at);
  assert.ok(Math.abs(correctionAt(centred, predict_at).standardUncertainty - predicted.standardUncertainty) < 1e-12);
  return {
    y1: line.intercept,
    s_y1: line.interceptUncertainty,
    y2: line.slope,
    s_y2: line.slopeUncertainty,
    r: line.correlation,
    s: line.sd,
    b_30: predicted.correction,
    uc_b_30: predicted.standardUncertainty,
    t_mean: centred.origin,
    y1_centred: centred.intercept,
    s_y1_centred: centred.interceptUncertainty,
    nu: line.degreesOfFreedom,
  };
});

publishedTest('gum-H.5-anova', 'days that differ show against the readings within them', (): Computed => {
  const inputs = inputsOf<{ daily_mean_minus_10V_uV: number[]; daily_sd_uV: number[]; K: number }>('gum-H.5-anova');
  const found = betweenGroups({
    means: inputs.daily_mean_minus_10V_uV,
    sds: inputs.daily_sd_uV,
    readingsPerGroup: inputs.K,
  });
  assert.ok(found);
  const { between, within } = found.degreesOfFreedom;
  return {
    grand_mean_uV: found.mean,
    s_daily_means_uV: found.sdOfMeans,
    s_a_uV: found.sdFromBetween,
    s_b_uV: found.sdFromWithin,
    F: found.ratio,
    F095_9_40: fisherFQuantile(0.95, between, within),
    F0975_9_40: fisherFQuantile(0.975, between, within),
    s_mean_pooled_uV: found.standardUncertaintyPooled,
  };
});

publishedTest('gum-H.6-hardness', 'a hardness test adds resolution, machine, block and standard', () => {
  const one = inputsOf<Record<string, number>>('gum-H.6-hardness');
  const of = (key: string) => one[key] ?? Number.NaN;
  const repeatability = of('s_pooled') / Math.sqrt(of('n_indent'));
  const block = standardOf({ distribution: { kind: 'triangular', lower: 0, upper: of('x_variation') * of('z') } });
  const { combinedStandardUncertainty: u, value } = budget({
    value: 100 - of('z'),
    terms: [
      term('repeatability', repeatability),
      term('resolution', standardOf(resolutionInput(of('resolution'), 'HRC'))),
      term('standard machine', of('s_av_standard') / Math.sqrt(of('m'))),
      term('machine', of('s_av_machine') / Math.sqrt(of('n'))),
      term('block', block),
      term('standard', of('u_standard')),
    ],
  });
  return { uc2: (u ?? 0) ** 2, uc: u, H: value, u_repeatability: repeatability, u_block: block };
});

test('below two points a line tells no scatter, and one place no slope', () => {
  assert.equal(calibrationLine({ at: [1, 2], correction: [0, 0] }), null);
  assert.equal(calibrationLine({ at: [1, 1, 1], correction: [0, 1, 2] }), null);
  assert.equal(calibrationLine({ at: [], correction: [] }), null);
});

test('one reading has a mean and no uncertainty, and a scatter of one reading no reliability', () => {
  assert.deepEqual(repeatedReadings([3]), { n: 1, mean: 3, sd: null, standardUncertainty: null, degreesOfFreedom: 0 });
  assert.equal(reliabilityOfScatter(1), null);
  assert.equal(betweenGroups({ means: [1], sds: [1], readingsPerGroup: 5 }), null);
  assert.equal(correlationOfMeans([1, 1], [1, 2]), null);
});
