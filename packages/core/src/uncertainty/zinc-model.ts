import { summarise } from '../statistics/summary.ts';
import type { Budget } from './budget.ts';
import type { CoverageWish } from './coverage.ts';
import { estimated, evenlyWithin } from './input-distribution.ts';
import {
  type Certificate,
  certificateInput,
  type KnownScatter,
  type KnownValue,
  knownInput,
  requireAbove0,
  resolutionInput,
  scatterInput,
} from './instrument-input.ts';
import { type MeasurementModel, type ModelInput, propagate } from './propagation.ts';

/** What is known of a coating gauge, um. Null: not known. */
export interface CoatingGaugeKnowledge {
  readonly instrument: string;
  readonly resolution_um: number;
  readonly certificate: Certificate | null;
  /** Limits of its error, +/- in per cent of the reading, from its certificate or data sheet. */
  readonly limitOfError_pct?: number | null;
  /** Standard uncertainty of the zero taken on bare steel of the same curve. */
  readonly zeroUncertainty_um?: number | null;
}

export interface ZincThicknessFacts {
  readonly readings_um: readonly number[];
  readonly gauge: CoatingGaugeKnowledge;
  /** Scatter of single readings known from elsewhere, where there is only one. */
  readonly scatter_um?: KnownScatter | null;
}

/**
 * Measurement model of the mean zinc thickness of a surface, um: scatter of the readings over it, error of the gauge, its zero on the
 * curve, its resolution. Without certificate or limits of error, or with one reading and no known scatter, it is not stated.
 * @throws RangeError without readings, for one below 0, or NaN
 */
export function zincThicknessModel(facts: ZincThicknessFacts): MeasurementModel {
  const { readings_um, gauge } = facts;
  const { n, mean, sd, least } = summarise(readings_um);
  if (mean === null || least === null || least < 0) throw new RangeError('zinc thickness has readings, none below 0');
  requireAbove0({ 'resolution of the gauge': gauge.resolution_um });
  const scatter: KnownScatter | null =
    sd === null
      ? (facts.scatter_um ?? null)
      : { sd, degreesOfFreedom: n - 1, source: `standard deviation of ${n} readings` };
  return {
    quantity: 'zinc thickness',
    unit: 'um',
    inputs: [
      ...(scatter ? [scatterInput(scatter, n, { unit: 'um', name: 'scatter over the surface' })] : []),
      ...gaugeInputs(gauge, mean),
      resolutionInput(gauge.resolution_um, 'um'),
    ],
    evaluate: (values) => mean + values.reduce((sum, value) => sum + value, 0),
    unknown: [
      ...(gauge.certificate || gauge.limitOfError_pct != null
        ? []
        : [`${gauge.instrument} has neither a certificate nor limits of error`]),
      ...(scatter ? [] : ['one reading shows no scatter over the surface']),
    ],
    doubts: gauge.zeroUncertainty_um == null ? ['The zero on bare steel of the same curve is not in the budget.'] : [],
  };
}

/** Uncertainty budget of the mean zinc thickness, um. See {@link zincThicknessModel}. */
export function zincThicknessBudget(
  facts: ZincThicknessFacts,
  options: { readonly coverage?: CoverageWish } = {},
): Budget {
  return propagate(zincThicknessModel(facts), options).budget;
}

function gaugeInputs(gauge: CoatingGaugeKnowledge, mean_um: number): ModelInput[] {
  const inputs: ModelInput[] = gauge.certificate ? [certificateInput(gauge.certificate, 'um')] : [];
  if (gauge.limitOfError_pct != null)
    inputs.push({
      name: 'limits of error of the gauge',
      unit: 'um',
      distribution: evenlyWithin((gauge.limitOfError_pct / 100) * mean_um),
      source: `within ${gauge.limitOfError_pct} % of the reading, stated for ${gauge.instrument} (JCGM 100:2008 4.3.7)`,
    });
  if (gauge.zeroUncertainty_um != null)
    inputs.push({
      name: 'zero on bare steel',
      unit: 'um',
      distribution: estimated(0, gauge.zeroUncertainty_um),
      source: 'readings on bare steel of the same curve',
    });
  return inputs;
}

/** Density of the coating with the half-width it may lie within. */
export interface CoatingDensity {
  readonly density_g_per_cm3: number;
  readonly halfWidth_g_per_cm3: number;
  readonly source: string;
}

/** Nominal density of ISO 1461; other standards and pure zinc lie up to 0.15 below it. */
export const hotDipDensity: CoatingDensity = {
  density_g_per_cm3: 7.2,
  halfWidth_g_per_cm3: 0.15,
  source: 'ISO 1461:2009 6.2.2 nominal 7.2 g/cm3; the half-width reaches the 7.06 that ASTM tables imply (inference)',
};

/** Measurement model of the zinc mass per area from the thickness, g/m2: um times g/cm3. */
export function zincMassModel(thickness_um: KnownValue, density: CoatingDensity = hotDipDensity): MeasurementModel {
  requireAbove0({ 'density in g/cm3': density.density_g_per_cm3 });
  return {
    quantity: 'zinc mass per area',
    unit: 'g/m2',
    inputs: [
      knownInput(thickness_um, { name: 'zinc thickness', unit: 'um' }),
      {
        name: 'density of the coating',
        unit: 'g/cm3',
        distribution: evenlyWithin(density.halfWidth_g_per_cm3, density.density_g_per_cm3),
        source: density.source,
      },
    ],
    evaluate: ([thickness = 0, grams = 0]) => thickness * grams,
  };
}

/** Uncertainty budget of the zinc mass per area from the thickness, g/m2. */
export function zincMassBudget(
  thickness_um: KnownValue,
  options: { readonly density?: CoatingDensity; readonly coverage?: CoverageWish } = {},
): Budget {
  return propagate(zincMassModel(thickness_um, options.density), options).budget;
}

export interface StrippedZincFacts {
  readonly before_g: number;
  readonly after_g: number;
  readonly surface_mm2: KnownValue;
  readonly balance: {
    readonly instrument: string;
    readonly resolution_g: number;
    readonly certificate: Certificate | null;
  };
}

/**
 * Measurement model of the zinc mass per area by weighing before and after stripping, g/m2. The error of the balance is mostly common
 * to both weighings and is taken as independent, which is cautious. Without a certificate it is not stated.
 */
export function strippedZincModel({ before_g, after_g, surface_mm2, balance }: StrippedZincFacts): MeasurementModel {
  requireAbove0({
    before_g,
    after_g,
    'surface in mm2': surface_mm2.value,
    'resolution of the balance': balance.resolution_g,
  });
  const weighing = (when: string): ModelInput[] => [
    ...(balance.certificate ? [certificateInput(balance.certificate, 'g', `balance, ${when}`)] : []),
    resolutionInput(balance.resolution_g, 'g', `resolution, ${when}`),
  ];
  const [before, after] = [weighing('before'), weighing('after')];
  return {
    quantity: 'zinc mass per area',
    unit: 'g/m2',
    inputs: [knownInput(surface_mm2, { name: 'surface', unit: 'mm2' }), ...before, ...after],
    evaluate: (values) => {
      let mass_g = before_g - after_g;
      for (let i = 1; i <= before.length; i++) mass_g += (values[i] ?? 0) - (values[i + before.length] ?? 0);
      return (1e6 * mass_g) / (values[0] ?? 0);
    },
    unknown: balance.certificate ? [] : [`${balance.instrument} has no certificate`],
  };
}

/** Uncertainty budget of the zinc mass per area by weighing, g/m2. See {@link strippedZincModel}. */
export function strippedZincBudget(
  facts: StrippedZincFacts,
  options: { readonly coverage?: CoverageWish } = {},
): Budget {
  return propagate(strippedZincModel(facts), options).budget;
}
