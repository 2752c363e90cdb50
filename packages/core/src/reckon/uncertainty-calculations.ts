import { areaBudget } from '../uncertainty/area-model.ts';
import type { Budget } from '../uncertainty/budget.ts';
import { coverage } from '../uncertainty/coverage.ts';
import { dimensionBudget } from '../uncertainty/dimension-model.ts';
import { elongationBudget } from '../uncertainty/elongation-model.ts';
import { forceBudget } from '../uncertainty/force-model.ts';
import { extensionClasses, forceClasses } from '../uncertainty/instrument-class.ts';
import { reliabilityOfScatter } from '../uncertainty/scatter-reliability.ts';
import { stressBudget } from '../uncertainty/stress-model.ts';
import { hotDipDensity, zincMassBudget, zincThicknessBudget } from '../uncertainty/zinc-model.ts';
import {
  type Calculation,
  type CalculationOutput,
  type CalculationResult,
  given,
  optional,
  positive,
} from './calculation.ts';
import { chanceOf, chancePct, countOf, from0 } from './chance-input.ts';

type Inputs = Readonly<Record<string, number>>;

const method =
  'JCGM 100:2008 5 and G.4: root sum of squares, Welch-Satterthwaite, Student factor for 95 % unless coverageFactor is given';

/** Outputs of a budget; the unit is part of the keys. */
function budgetOutputs(unit: string): readonly CalculationOutput[] {
  const suffix = suffixOf(unit);
  return [
    { key: `value_${suffix}`, unit, meaning: 'the value itself' },
    {
      key: `standardUncertainty_${suffix}`,
      unit,
      meaning: 'combined standard uncertainty; none where a part is not known',
    },
    { key: `expandedUncertainty_${suffix}`, unit, meaning: 'expanded uncertainty, U = k u' },
    { key: 'coverageFactor', unit: '', meaning: 'coverage factor k' },
    { key: 'effectiveFreedom', unit: '', meaning: 'effective degrees of freedom; none where all parts are exact' },
    { key: 'largestPart', unit: '', meaning: 'the part with the largest share of the variance' },
    { key: 'sentence', unit: '', meaning: 'the result in words' },
  ];
}

function suffixOf(unit: string): string {
  return unit === '%' ? 'pct' : unit.replaceAll('/', '_per_');
}

function budgetResult(found: Budget): CalculationResult {
  const suffix = suffixOf(found.unit);
  const [largest] = found.lines.toSorted((a, b) => b.contribution - a.contribution);
  return {
    [`value_${suffix}`]: found.value,
    [`standardUncertainty_${suffix}`]: found.combinedStandardUncertainty,
    [`expandedUncertainty_${suffix}`]: found.expandedUncertainty,
    coverageFactor: found.coverageFactor,
    effectiveFreedom: found.effectiveDegreesOfFreedom,
    largestPart: largest?.name ?? null,
    sentence: found.sentence,
  };
}

/** A calculation that is a budget gives its figures and what to doubt of them. */
function budgeted(budgetOf: (inputs: Inputs) => Budget): Pick<Calculation, 'compute' | 'doubts'> {
  return {
    compute: (inputs) => budgetResult(budgetOf(inputs)),
    doubts: (inputs) => budgetOf(inputs).doubts,
  };
}

const factorInput = optional('coverageFactor', '', 'factor k agreed beforehand, in place of 95 %');
const coverageOf = ({ coverageFactor }: Inputs) =>
  coverageFactor === undefined ? {} : { coverage: { factor: coverageFactor } };

function certificateOf(inputs: Inputs, key: string) {
  const expandedUncertainty = inputs[key];
  return expandedUncertainty === undefined
    ? null
    : { certificate: 'as given', expandedUncertainty, coverageFactor: inputs.certificateFactor ?? 2 };
}

const certificateFactor = optional(
  'certificateFactor',
  '',
  'factor k of the certificate; 2 where left out (common practice)',
);
const known = (inputs: Inputs, key: string, uncertainty: string) => ({
  value: given(inputs, key),
  standardUncertainty: given(inputs, uncertainty),
  degreesOfFreedom: null,
  source: 'as given',
});

const gaugingInputs = [
  positive('resolution_mm', 'mm', 'smallest step of the calliper'),
  optional('certificateUncertainty_mm', 'mm', 'expanded uncertainty on its certificate'),
  certificateFactor,
  optional('limitOfError_mm', 'mm', 'limits of its error, either way'),
  optional('repeatability_mm', 'mm', 'standard deviation of repeat readings'),
  optional('repeatabilityFreedom', '', 'degrees of freedom of that standard deviation'),
];

const calliperOf = (inputs: Inputs) => ({
  instrument: 'the calliper',
  resolution_mm: given(inputs, 'resolution_mm'),
  certificate: certificateOf(inputs, 'certificateUncertainty_mm'),
  limitOfError_mm: inputs.limitOfError_mm ?? null,
});

const repeatabilityOf = ({ repeatability_mm: sd, repeatabilityFreedom = Infinity }: Inputs) =>
  sd === undefined ? null : { sd, degreesOfFreedom: repeatabilityFreedom, source: 'repeat readings' };

/** Uncertainty budgets of single results, and what coverage they have. */
export const uncertaintyCalculations: readonly Calculation[] = [
  {
    name: 'force-uncertainty',
    title: 'Uncertainty of a force from rig, certificate and trace',
    formula:
      'u² = sum of the squares of: error of indication and repeatability of the class (each half-width / √3), step / √12 at the reading and at zero, certificate U / k, noise, drift / √3; U = k u',
    inputs: [
      positive('force_kN', 'kN', 'force read'),
      {
        key: 'class',
        unit: '',
        meaning: 'class of ISO 7500-1 on the certificate',
        required: false,
        choices: forceClasses.map((one) => one.class),
      },
      positive('resolution_kN', 'kN', 'smallest step of the rig'),
      optional('certificateUncertainty_kN', 'kN', 'expanded uncertainty of the calibration'),
      certificateFactor,
      optional('noise_kN', 'kN', 'standard uncertainty by noise at the maximum'),
      optional('drift_pct', '%', 'largest drift since calibration, of the force'),
      factorInput,
    ],
    outputs: budgetOutputs('kN'),
    source: `${method}; classes of ISO 7500-1, memory`,
    example: { force_kN: 33.2, class: 1, resolution_kN: 0.02, certificateUncertainty_kN: 0.08, noise_kN: 0.02 },
    ...budgeted((inputs) =>
      forceBudget(
        {
          force_kN: given(inputs, 'force_kN'),
          rig: {
            instrument: 'the rig',
            class: inputs.class ?? null,
            resolution_kN: given(inputs, 'resolution_kN'),
            certificate: certificateOf(inputs, 'certificateUncertainty_kN'),
            ...(inputs.drift_pct === undefined
              ? {}
              : { drift_pct_per_year: inputs.drift_pct, yearsSinceCalibration: 1 }),
          },
          trace: inputs.noise_kN === undefined ? null : { noise_kN: inputs.noise_kN },
        },
        coverageOf(inputs),
      ),
    ),
  },
  {
    name: 'stress-uncertainty',
    title: 'Uncertainty of the mean stress from force and area',
    formula: 'σ = 1000 F / A; (u/σ)² = (u(F)/F)² + (u(A)/A)²; U = k u',
    inputs: [
      positive('force_kN', 'kN', 'force'),
      from0('forceUncertainty_kN', 'kN', 'its standard uncertainty'),
      positive('area_mm2', 'mm2', 'steel area of both legs'),
      from0('areaUncertainty_mm2', 'mm2', 'its standard uncertainty'),
      factorInput,
    ],
    outputs: budgetOutputs('N/mm2'),
    source: method,
    example: { force_kN: 33.2, forceUncertainty_kN: 0.2, area_mm2: 102, areaUncertainty_mm2: 0.6 },
    ...budgeted((inputs) =>
      stressBudget(
        {
          force_kN: known(inputs, 'force_kN', 'forceUncertainty_kN'),
          area_mm2: known(inputs, 'area_mm2', 'areaUncertainty_mm2'),
        },
        coverageOf(inputs),
      ),
    ),
  },
  {
    name: 'dimension-uncertainty',
    title: 'Uncertainty of a gauged dimension',
    formula: 'u² = (certificate U / k)² + (limit of error / √3)² + (step / √12)² + s² / n; U = k u',
    inputs: [
      positive('value_mm', 'mm', 'mean of the readings'),
      positive('readings', '', 'number of readings'),
      ...gaugingInputs,
      factorInput,
    ],
    outputs: budgetOutputs('mm'),
    source: method,
    example: {
      value_mm: 8.1,
      readings: 3,
      resolution_mm: 0.01,
      certificateUncertainty_mm: 0.02,
      repeatability_mm: 0.015,
    },
    ...budgeted((inputs) =>
      dimensionBudget(
        {
          value_mm: given(inputs, 'value_mm'),
          readings: countOf(inputs, 'readings', 1),
          calliper: calliperOf(inputs),
          repeatability_mm: repeatabilityOf(inputs),
        },
        coverageOf(inputs),
      ),
    ),
  },
  {
    name: 'area-uncertainty',
    title: 'Uncertainty of the steel area of both legs from two diameters of a leg',
    formula:
      'A = (π/2) d₁ d₂; errors of the calliper shift both diameters alike, step / √12 and repeatability each on its own; U = k u',
    inputs: [
      positive('first_mm', 'mm', 'diameter of the plain leg'),
      optional('second_mm', 'mm', 'diameter at right angles'),
      ...gaugingInputs,
      factorInput,
    ],
    outputs: budgetOutputs('mm2'),
    source: method,
    example: { first_mm: 8.1, second_mm: 8.04, resolution_mm: 0.01, certificateUncertainty_mm: 0.02 },
    ...budgeted((inputs) =>
      areaBudget(
        {
          links: [{ first_mm: given(inputs, 'first_mm'), second_mm: inputs.second_mm ?? null }],
          calliper: calliperOf(inputs),
          repeatability_mm: repeatabilityOf(inputs),
        },
        coverageOf(inputs),
      ),
    ),
  },
  {
    name: 'elongation-uncertainty',
    title: 'Uncertainty of the total ultimate elongation',
    formula:
      '100 ΔL / L; u from the error of the class / √3, step / √12 and the gauge length, each through its slope; U = k u',
    inputs: [
      positive('extension_mm', 'mm', 'extension at parting'),
      positive('gaugeLength_mm', 'mm', 'sum of the pitches'),
      from0('gaugeLengthUncertainty_mm', 'mm', 'its standard uncertainty'),
      {
        key: 'class',
        unit: '',
        meaning: 'class of ISO 9513 of the extension measurement',
        required: true,
        choices: extensionClasses.map((one) => one.class),
      },
      optional('resolution_mm', 'mm', 'smallest step of the extension'),
      factorInput,
    ],
    outputs: budgetOutputs('%'),
    source: `${method}; classes of ISO 9513, memory`,
    example: { extension_mm: 24, gaugeLength_mm: 120, gaugeLengthUncertainty_mm: 0.5, class: 1 },
    ...budgeted((inputs) =>
      elongationBudget(
        {
          extension_mm: given(inputs, 'extension_mm'),
          gaugeLength_mm: known(inputs, 'gaugeLength_mm', 'gaugeLengthUncertainty_mm'),
          extensionClass: given(inputs, 'class'),
          resolution_mm: inputs.resolution_mm ?? null,
        },
        coverageOf(inputs),
      ),
    ),
  },
  {
    name: 'zinc-thickness-uncertainty',
    title: 'Uncertainty of a mean zinc thickness',
    formula: 'u² = s² / n + (limit of error / √3)² + (step / √12)² + u(zero)²; U = k u',
    inputs: [
      positive('mean_um', 'um', 'mean of the readings'),
      from0('sd_um', 'um', 'their standard deviation'),
      positive('readings', '', 'number of readings, from 2 on'),
      positive('resolution_um', 'um', 'smallest step of the gauge'),
      from0('limitOfError_pct', '%', 'limits of error of the gauge, of the reading'),
      optional('zeroUncertainty_um', 'um', 'standard uncertainty of its zero on the same curve'),
      factorInput,
    ],
    outputs: budgetOutputs('um'),
    source: method,
    example: { mean_um: 84, sd_um: 6, readings: 12, resolution_um: 1, limitOfError_pct: 3 },
    ...budgeted((inputs) => {
      const readings = countOf(inputs, 'readings', 2);
      return zincThicknessBudget(
        {
          readings_um: [given(inputs, 'mean_um')],
          scatter_um: {
            sd: given(inputs, 'sd_um') / Math.sqrt(readings),
            degreesOfFreedom: readings - 1,
            source: `standard deviation of the mean of ${readings} readings`,
          },
          gauge: {
            instrument: 'the gauge',
            resolution_um: given(inputs, 'resolution_um'),
            certificate: null,
            limitOfError_pct: given(inputs, 'limitOfError_pct'),
            zeroUncertainty_um: inputs.zeroUncertainty_um ?? null,
          },
        },
        coverageOf(inputs),
      );
    }),
  },
  {
    name: 'zinc-mass-uncertainty',
    title: 'Zinc mass per area from the thickness, with its uncertainty',
    formula: 'm = t ρ (µm · g/cm³ = g/m²); (u/m)² = (u(t)/t)² + (u(ρ)/ρ)², with u(ρ) = 0.15 / √3 g/cm³; U = k u',
    inputs: [
      positive('thickness_um', 'um', 'mean thickness'),
      from0('thicknessUncertainty_um', 'um', 'its standard uncertainty'),
      optional('density_g_per_cm3', 'g/cm3', 'density of the coating; 7.2 of ISO 1461 where left out'),
      factorInput,
    ],
    outputs: budgetOutputs('g/m2'),
    source: `${method}; density 7.2 g/cm3 of ISO 1461:2009 6.2.2, its half-width 0.15 g/cm3 an inference`,
    example: { thickness_um: 84, thicknessUncertainty_um: 3 },
    ...budgeted((inputs) =>
      zincMassBudget(known(inputs, 'thickness_um', 'thicknessUncertainty_um'), {
        density: { ...hotDipDensity, density_g_per_cm3: inputs.density_g_per_cm3 ?? hotDipDensity.density_g_per_cm3 },
        ...coverageOf(inputs),
      }),
    ),
  },
  {
    name: 'coverage-factor',
    title: 'Coverage factor for a probability and degrees of freedom',
    formula:
      'k = t(P, ν): the Student factor with the degrees of freedom cut to a whole number, the normal one without',
    inputs: [
      chancePct('probability_pct', 'how often the interval is to hold the value'),
      optional('degreesOfFreedom', '', 'effective degrees of freedom; the normal where left out'),
    ],
    outputs: [{ key: 'coverageFactor', unit: '', meaning: 'coverage factor k' }],
    source: 'JCGM 100:2008 G.3, G.6.4, Table G.2',
    example: { probability_pct: 95, degreesOfFreedom: 9 },
    compute: (inputs) => ({
      coverageFactor: coverage(
        { probability: chanceOf(inputs, 'probability_pct') },
        inputs.degreesOfFreedom ?? Infinity,
      ).factor,
    }),
  },
  {
    name: 'scatter-reliability',
    title: 'How far a standard deviation from few readings can be trusted',
    formula: '√(1 − c₄²) / c₄, with c₄ = √(2 / (n − 1)) Γ(n/2) / Γ((n − 1)/2)',
    inputs: [positive('readings', '', 'number of readings, from 2 on')],
    outputs: [{ key: 'reliability_pct', unit: '%', meaning: 'relative standard deviation of the standard deviation' }],
    source: 'JCGM 100:2008 Table E.1, exact expression',
    example: { readings: 5 },
    compute: (inputs) => ({ reliability_pct: 100 * (reliabilityOfScatter(countOf(inputs, 'readings', 2)) ?? 0) }),
  },
];
