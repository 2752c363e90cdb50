import assert from 'node:assert/strict';
import { test } from 'node:test';
import { steelArea } from '../../src/gauging/index.ts';
import {
  areaBudget,
  areaModel,
  budget,
  dimensionBudget,
  elongationBudget,
  elongationModel,
  extensionClasses,
  extensionClassOf,
  extensionErrorOf,
  type ForceFacts,
  forceBudget,
  forceClasses,
  forceClassOf,
  forceModel,
  knownFrom,
  leastForceOfClass,
  propagate,
  rectangular,
  stressBudget,
  stressModel,
  strippedZincBudget,
  validateModel,
  zincMassBudget,
  zincThicknessBudget,
} from '../../src/uncertainty/index.ts';
import { check, coatingChecks, statisticsChecks } from '../reference-checks.ts';
import { agrees, inputsOf, origin } from './published-check.ts';

const tableOf = (id: string) =>
  (check(statisticsChecks, id).expected.rows as { values_table: readonly (readonly number[])[] }).values_table;

test(`iso7500-1-classes: the classes of force are those remembered [${origin('iso7500-1-classes')}]`, () => {
  assert.deepEqual(
    forceClasses.map((one) => [
      one.class,
      one.indication_pct,
      one.repeatability_pct,
      one.reversibility_pct,
      one.zero_pct,
      one.resolution_pct,
    ]),
    tableOf('iso7500-1-classes'),
  );
  // The note beside the table: 400 r, 200 r, 100 r, 67 r.
  assert.deepEqual(
    forceClasses.map((one) => Math.round(leastForceOfClass(one, 1))),
    [400, 200, 100, 67],
  );
});

test(`iso9513-classes: the classes of extension are those remembered [${origin('iso9513-classes')}]`, () => {
  assert.deepEqual(
    extensionClasses.map((one) => [
      one.class,
      one.gaugeLength_pct,
      one.resolution_pct,
      one.resolution_um,
      one.bias_pct,
      one.bias_um,
    ]),
    tableOf('iso9513-classes'),
  );
});

test('of a class of extension the per cent or the length counts, whichever is greater', () => {
  const known = extensionClassOf(1);
  assert.ok(known);
  assert.equal(extensionErrorOf(known, 0.1), 0.003);
  assert.equal(extensionErrorOf(known, 10), 0.1);
  assert.equal(forceClassOf(4), null);
});

const certificate = { certificate: 'C-1', expandedUncertainty: 0.24, coverageFactor: 2 };
const facts: ForceFacts = {
  force_kN: 100,
  rig: { instrument: 'RIG-1', class: 1, resolution_kN: 0.5, certificate },
};

test(`force-budget-class1: a force on a rig of which the class alone is known [${origin('force-budget-class1')}]`, () => {
  const { force_kN } = inputsOf<{ force_kN: number }>('force-budget-class1');
  const found = forceBudget({ ...facts, force_kN }, { coverage: { factor: 2 } });
  const percent = 100 / force_kN;
  agrees('force-budget-class1', {
    uc_percent: (found.combinedStandardUncertainty ?? 0) * percent,
    U_percent_k2: (found.expandedUncertainty ?? 0) * percent,
    U_kN: found.expandedUncertainty,
  });
  assert.deepEqual(
    found.lines.map(({ name }) => name),
    [
      'rig, error of indication',
      'calibration certificate',
      'rig, repeatability',
      'resolution at the reading',
      'resolution at zero',
    ],
  );
});

test('a force on a rig without class or certificate has no stated uncertainty, and one that is too coarse a doubt', () => {
  const blind = forceBudget({ ...facts, rig: { ...facts.rig, class: null, certificate: null } });
  assert.equal(blind.expandedUncertainty, null);
  assert.match(blind.sentence, /RIG-1 has neither a class nor a certificate/);
  assert.match(forceBudget({ ...facts, force_kN: 50 }).doubts.join(), /too coarse for class 1 below 100 kN/);
});

test('drift since calibration enters when it is known, and is doubted when it is not', () => {
  const drifting = forceBudget({
    ...facts,
    rig: { ...facts.rig, drift_pct_per_year: 0.3, yearsSinceCalibration: 1.5 },
  });
  const line = drifting.lines.find(({ name }) => name === 'drift since calibration');
  assert.ok(Math.abs((line?.contribution ?? 0) - rectangular(0.45)) < 1e-9);
  assert.match(drifting.doubts.join(), /1\.5 years ago/);
  assert.match(forceBudget(facts).doubts.join(), /Nothing is known of the drift/);
});

test('a trace adds noise and sampling, a reading by eye takes the place of the step', () => {
  const names = (one: ForceFacts) => forceBudget(one).lines.map(({ name }) => name);
  assert.ok(names({ ...facts, trace: { noise_kN: 0.02, sampling_kN: 0.01 } }).includes('noise at the maximum'));
  const byEye = names({ ...facts, readByEye_kN: 0.2 });
  assert.ok(byEye.includes('read by eye') && !byEye.includes('resolution at the reading'));
});

test('measured repeatability of the rig stands in for that of its class, with its degrees of freedom', () => {
  const found = forceBudget({
    ...facts,
    rig: { ...facts.rig, repeatability_kN: { sd: 0.1, degreesOfFreedom: 4, source: 'five pulls of a proving bar' } },
  });
  const line = found.lines.find(({ name }) => name === 'rig, repeatability');
  assert.equal(line?.degreesOfFreedom, 4);
  assert.notEqual(found.effectiveDegreesOfFreedom, null);
});

const relative = (U: number, k: number) => ({
  value: 100,
  standardUncertainty: U / k,
  degreesOfFreedom: null,
  source: 'annex',
});

test(`iso6892-1-uncertainty-annex: strength, elongation and reduction of area in per cent [${origin('iso6892-1-uncertainty-annex')}]`, () => {
  const given =
    inputsOf<Record<'force_U' | 'S0_a' | 'extension_U' | 'gauge_length_a' | 'Su_a', number>>(
      'iso6892-1-uncertainty-annex',
    );
  const root = Math.sqrt(3);
  const strength = stressBudget(
    { force_kN: relative(given.force_U, 2), area_mm2: relative(given.S0_a, root) },
    { coverage: { factor: 2 } },
  );
  const percent = (u: number | null) => (u ?? 0) / ((strength.value ?? 0) / 100);
  const of = (parts: readonly number[]) =>
    budget({
      coverage: { factor: 2 },
      terms: parts.map((u, index) => ({
        name: `part ${index}`,
        standardUncertainty: u,
        sensitivity: 1,
        degreesOfFreedom: Infinity,
        distribution: 'rectangular' as const,
        source: 'annex',
      })),
    });
  const elongation = of([given.extension_U / 2, given.gauge_length_a / root]);
  const reduction = of([given.S0_a / root, given.Su_a / root]);
  agrees('iso6892-1-uncertainty-annex', {
    u_ReH_ReL_Rm: percent(strength.combinedStandardUncertainty),
    u_A: elongation.combinedStandardUncertainty,
    u_Z: reduction.combinedStandardUncertainty,
    U_ReH_ReL_Rm: percent(strength.expandedUncertainty),
    U_A: elongation.expandedUncertainty,
    U_Z: reduction.expandedUncertainty,
  });
});

const calliper = {
  instrument: 'CAL-1',
  resolution_mm: 0.01,
  certificate: { certificate: 'C-2', expandedUncertainty: 0.02, coverageFactor: 2 },
};

test('a dimension holds calliper, resolution, repeats and twice the zinc', () => {
  const scatter = { sd: 0.02, degreesOfFreedom: 7, source: 'repeats' };
  const zinc_um = { value: 80, standardUncertainty: 5, degreesOfFreedom: 9, source: 'survey' };
  const found = dimensionBudget({ value_mm: 8.2, readings: 4, calliper, repeatability_mm: scatter, zinc_um });
  assert.ok(Math.abs((found.value ?? 0) - 8.04) < 1e-12);
  const expected = Math.hypot(0.01, 0.01 / Math.sqrt(12), 0.02 / 2, 2 * 0.005);
  assert.ok(Math.abs((found.combinedStandardUncertainty ?? 0) - expected) < 1e-9);
  const limits = dimensionBudget({
    value_mm: 8.2,
    readings: 1,
    calliper: { instrument: 'CAL-2', resolution_mm: 0.01, certificate: null, limitOfError_mm: 0.03 },
    repeatability_mm: null,
  });
  assert.ok(Math.abs((limits.lines[0]?.contribution ?? 0) - rectangular(0.03)) < 1e-9);
  assert.match(limits.doubts.join(), /No reading was repeated/);
  const blind = dimensionBudget({
    value_mm: 8.2,
    readings: 1,
    calliper: { ...calliper, certificate: null },
    repeatability_mm: null,
  });
  assert.equal(blind.expandedUncertainty, null);
});

test('the area and its uncertainty are those of the gauging room', () => {
  const links = [
    { first_mm: 8.1, second_mm: 8.05 },
    { first_mm: 8.02, second_mm: 7.96 },
    { first_mm: 8.07, second_mm: null },
  ];
  const readings = links.flatMap(({ first_mm, second_mm }, index) =>
    [first_mm, second_mm].flatMap((value_mm, direction) =>
      value_mm === null
        ? []
        : [
            {
              link: index + 1,
              position: 'leg',
              quantity: 'diameter',
              direction: direction + 1,
              overLinks: null,
              instrument: 'CAL-1',
              by: 'gauger',
              value_mm,
            } as const,
          ],
    ),
  );
  const gauged = steelArea(
    readings,
    [{ instrument: 'CAL-1', resolution_mm: 0.01, calibrationUncertainty_mm: 0.02, coverageFactor: 2 }],
    0.004,
  );
  const zinc_um = { value: 0, standardUncertainty: 4, degreesOfFreedom: null, source: 'survey' };
  const found = areaBudget({ links, calliper, repeatability_mm: null, zinc_um });
  assert.ok(gauged?.uncertainty_mm2);
  assert.ok(Math.abs((found.value ?? 0) - gauged.mean_mm2) < 1e-9);
  assert.ok(
    Math.abs((found.combinedStandardUncertainty ?? 0) - gauged.uncertainty_mm2) < 1e-6 * gauged.uncertainty_mm2,
  );
  assert.equal(found.lines.length, 3);
  assert.match(found.doubts.join(), /taken as round/);
});

test('stress takes force and area from their budgets, and none where one is not stated', () => {
  const force = knownFrom(forceBudget(facts));
  const area = knownFrom(areaBudget({ links: [{ first_mm: 8, second_mm: 8 }], calliper, repeatability_mm: null }));
  assert.ok(force && area);
  const found = stressBudget({ force_kN: force, area_mm2: area });
  const relativeU = Math.hypot(force.standardUncertainty / force.value, area.standardUncertainty / area.value);
  assert.ok(Math.abs((found.combinedStandardUncertainty ?? 0) / (found.value ?? 1) - relativeU) < 1e-9);
  const blind = forceBudget({ ...facts, rig: { ...facts.rig, class: null, certificate: null } });
  assert.equal(knownFrom(blind), null);
});

test('elongation holds extension class, gauge length, sampling and frame', () => {
  const gaugeLength_mm = { value: 120, standardUncertainty: 0.5, degreesOfFreedom: null, source: 'measured' };
  const frameStretch_mm = { value: 0.8, standardUncertainty: 0.1, degreesOfFreedom: null, source: 'rigid bar' };
  const found = elongationBudget({
    extension_mm: 24,
    gaugeLength_mm,
    extensionClass: 1,
    resolution_mm: 0.01,
    sampleStep_mm: 0.02,
    frameStretch_mm,
  });
  assert.ok(Math.abs((found.value ?? 0) - 20) < 1e-12);
  const parts = [rectangular(0.24), 0.01 / Math.sqrt(12), rectangular(0.02), 0.1].map((mm) => (100 * mm) / 120);
  const expected = Math.hypot(...parts, (20 * 0.5) / 120);
  assert.ok(Math.abs((found.combinedStandardUncertainty ?? 0) - expected) < 1e-7);
  assert.equal(elongationBudget({ extension_mm: 24, gaugeLength_mm, extensionClass: null }).expandedUncertainty, null);
  assert.throws(() => elongationModel({ extension_mm: 24, gaugeLength_mm, extensionClass: 3 }), RangeError);
});

const gauge = {
  instrument: 'COAT-1',
  resolution_um: 1,
  certificate: null,
  limitOfError_pct: 3,
  zeroUncertainty_um: 1,
};

test('zinc thickness holds its scatter over the surface; one reading shows none and states nothing', () => {
  const found = zincThicknessBudget({ readings_um: [78, 84, 91, 80, 87], gauge });
  assert.equal(found.value, 84);
  assert.equal(found.lines[0]?.degreesOfFreedom, 4);
  const single = zincThicknessBudget({ readings_um: [84], gauge });
  assert.equal(single.expandedUncertainty, null);
  assert.match(single.sentence, /one reading shows no scatter/);
  const helped = zincThicknessBudget({
    readings_um: [84],
    gauge,
    scatter_um: { sd: 6, degreesOfFreedom: 20, source: 'other pieces of the product' },
  });
  assert.notEqual(helped.expandedUncertainty, null);
});

const masses = coatingChecks.filter(({ expected }) => 'mass_g_m2_exact' in expected);
assert.ok(masses.length >= 5);

for (const reference of masses) {
  test(`${reference.id}: zinc mass is thickness times density (${reference.source})`, () => {
    const { thickness_um = 0, density_g_cm3 = 0 } = reference.inputs as Record<string, number>;
    const found = zincMassBudget(
      { value: thickness_um, standardUncertainty: 4, degreesOfFreedom: 6, source: 'survey' },
      { density: { density_g_per_cm3: density_g_cm3, halfWidth_g_per_cm3: 0.15, source: 'check' } },
    );
    assert.ok(Math.abs((found.value ?? 0) - Number(reference.expected.mass_g_m2_exact)) < 1e-9);
  });
}

test('zinc mass by weighing takes both weighings and the surface', () => {
  const found = strippedZincBudget({
    before_g: 60,
    after_g: 58,
    surface_mm2: { value: 3500, standardUncertainty: 70, degreesOfFreedom: null, source: 'geometry' },
    balance: {
      instrument: 'BAL-1',
      resolution_g: 0.01,
      certificate: { certificate: 'C-3', expandedUncertainty: 0.02, coverageFactor: 2 },
    },
  });
  const mass = Math.SQRT2 * Math.hypot(0.01, 0.01 / Math.sqrt(12));
  const expected = (found.value ?? 0) * Math.hypot(mass / 2, 70 / 3500);
  assert.ok(Math.abs((found.value ?? 0) - 2e6 / 3500) < 1e-9);
  assert.ok(Math.abs((found.combinedStandardUncertainty ?? 0) - expected) < 1e-4 * expected);
});

test('the budgets of force, area, stress and elongation pass their comparison with simulation (JCGM 101:2008 8)', () => {
  // Measured repeatability in place of the class's, and a trace: many parts of like size add to something near normal.
  const force = forceModel({
    force_kN: 33.2,
    rig: {
      instrument: 'RIG-1',
      class: 0.5,
      resolution_kN: 0.02,
      certificate: { ...certificate, expandedUncertainty: 0.3 },
    },
    trace: { noise_kN: 0.1, sampling_kN: 0.02 },
  });
  const area = areaModel({
    links: [
      { first_mm: 8.1, second_mm: 8.05 },
      { first_mm: 8.02, second_mm: null },
    ],
    calliper,
    repeatability_mm: { sd: 0.02, degreesOfFreedom: 30, source: 'repeats' },
  });
  const known = (value: number, u: number) => ({
    value,
    standardUncertainty: u,
    degreesOfFreedom: null,
    source: 'budget',
  });
  const stress = stressModel({ force_kN: known(33.2, 0.2), area_mm2: known(102, 0.6) });
  const elongation = elongationModel({ extension_mm: 24, gaugeLength_mm: known(120, 0.5), extensionClass: 1 });
  for (const model of [force, area, stress, elongation]) {
    const { budget: found } = propagate(model);
    const validation = validateModel(model, found, { seed: 21 });
    assert.equal(validation?.isValid, true, `${model.quantity}: ${validation?.sentence}`);
    assert.deepEqual(validation?.doubts, []);
  }
});

test('facts that cannot be are refused', () => {
  assert.throws(() => forceModel({ ...facts, force_kN: 0 }), RangeError);
  assert.throws(() => forceModel({ ...facts, rig: { ...facts.rig, class: 4 } }), RangeError);
  assert.throws(() => areaModel({ links: [], calliper, repeatability_mm: null }), RangeError);
  assert.throws(() => zincThicknessBudget({ readings_um: [], gauge }), RangeError);
  assert.throws(() => zincThicknessBudget({ readings_um: [Number.NaN], gauge }), RangeError);
});
