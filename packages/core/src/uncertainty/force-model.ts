import type { Budget } from './budget.ts';
import type { CoverageWish } from './coverage.ts';
import { estimated, evenlyWithin } from './input-distribution.ts';
import { type ForceClass, forceClassOf, forceClassSource, leastForceOfClass } from './instrument-class.ts';
import {
  type Certificate,
  certificateInput,
  type KnownScatter,
  requireAbove0,
  resolutionInput,
  scatterInput,
} from './instrument-input.ts';
import { type MeasurementModel, type ModelInput, propagate } from './propagation.ts';

/** What is known of the rig that read a force. Null: not known. */
export interface RigKnowledge {
  readonly instrument: string;
  /** Class of ISO 7500-1 on the certificate: 0.5, 1, 2, 3. */
  readonly class: number | null;
  readonly resolution_kN: number;
  /** Uncertainty of the calibration, kN at this force. */
  readonly certificate: Certificate | null;
  /** Scatter of single readings at this force found by the laboratory, kN; else the class's limit serves. */
  readonly repeatability_kN?: KnownScatter | null;
  /** Largest change a year, in per cent of the force, from successive certificates. */
  readonly drift_pct_per_year?: number | null;
  readonly yearsSinceCalibration?: number | null;
}

export interface ForceFacts {
  readonly force_kN: number;
  readonly rig: RigKnowledge;
  /**
   * From the trace: standard uncertainties by noise and by sampling at the maximum, and the smallest step recorded. Where the reading
   * tells both as one figure, it is the noise and the sampling is left out.
   */
  readonly trace?: {
    readonly noise_kN: number;
    readonly sampling_kN?: number | null;
    readonly recordedStep_kN?: number | null;
  } | null;
  /** Standard uncertainty of a maximum read off a panel by eye. */
  readonly readByEye_kN?: number | null;
}

/** A year is the longest that ISO 7500-1 leaves between calibrations in ordinary use (memory). */
const longestYears = 1;

/**
 * Measurement model of a force: the reading and everything that may lie between it and the true force, all in kN.
 *
 * Error of indication within the class (rectangular), certificate U/k, repeatability (measured, or half the class's limit on the range
 * of three runs either way), resolution at the reading and at zero, drift since calibration, noise and sampling of the trace, or
 * reading by eye. Without class and certificate the uncertainty is not stated.
 */
export function forceModel(facts: ForceFacts): MeasurementModel {
  const { force_kN, rig } = facts;
  requireAbove0({ force_kN, 'resolution_kN of the rig': rig.resolution_kN });
  const known = rig.class === null ? null : forceClassOf(rig.class);
  if (rig.class !== null && known === null) throw new RangeError(`ISO 7500-1 has no class ${rig.class}`);
  const inputs = [
    ...classInputs(known, force_kN),
    ...(rig.certificate ? [certificateInput(rig.certificate, 'kN')] : []),
    ...repeatabilityInputs(known, facts),
    ...resolutionInputs(facts),
    ...driftInputs(facts),
    ...readingInputs(facts),
  ];
  return {
    quantity: 'force',
    unit: 'kN',
    inputs,
    evaluate: (values) => force_kN + values.reduce((sum, value) => sum + value, 0),
    unknown:
      known || rig.certificate ? [] : [`${rig.instrument} has neither a class nor a certificate with an uncertainty`],
    doubts: forceDoubts(known, facts),
  };
}

/** Uncertainty budget of a force, kN. See {@link forceModel}. */
export function forceBudget(facts: ForceFacts, options: { readonly coverage?: CoverageWish } = {}): Budget {
  return propagate(forceModel(facts), options).budget;
}

function classInputs(known: ForceClass | null, force_kN: number): ModelInput[] {
  if (!known) return [];
  return [
    {
      name: 'rig, error of indication',
      unit: 'kN',
      distribution: evenlyWithin((known.indication_pct / 100) * force_kN),
      source: `class ${known.class}: within ${known.indication_pct} % of the force, ${forceClassSource}`,
    },
  ];
}

function repeatabilityInputs(known: ForceClass | null, { rig, force_kN }: ForceFacts): ModelInput[] {
  if (rig.repeatability_kN) return [scatterInput(rig.repeatability_kN, 1, { unit: 'kN', name: 'rig, repeatability' })];
  if (!known) return [];
  return [
    {
      name: 'rig, repeatability',
      unit: 'kN',
      distribution: evenlyWithin((known.repeatability_pct / 200) * force_kN),
      source: `class ${known.class}: errors of three runs within a range of ${known.repeatability_pct} %, ${forceClassSource}`,
    },
  ];
}

function resolutionInputs({ rig, trace, readByEye_kN }: ForceFacts): ModelInput[] {
  const step = Math.max(rig.resolution_kN, trace?.recordedStep_kN ?? 0);
  const atZero = resolutionInput(step, 'kN', 'resolution at zero');
  // Reading by eye holds the step of the panel already.
  return readByEye_kN == null ? [resolutionInput(step, 'kN', 'resolution at the reading'), atZero] : [atZero];
}

function driftInputs({ rig, force_kN }: ForceFacts): ModelInput[] {
  const { drift_pct_per_year: perYear, yearsSinceCalibration: years } = rig;
  if (perYear == null || years == null) return [];
  return [
    {
      name: 'drift since calibration',
      unit: 'kN',
      distribution: evenlyWithin((perYear / 100) * years * force_kN),
      source: `up to ${perYear} % a year over ${years.toFixed(2)} years, as the certificates show`,
    },
  ];
}

function readingInputs({ trace, readByEye_kN }: ForceFacts): ModelInput[] {
  const one = (name: string, u: number, source: string) => ({
    name,
    unit: 'kN',
    distribution: estimated(0, u),
    source,
  });
  return [
    ...(trace
      ? [
          one(
            trace.sampling_kN == null ? 'noise and sampling at the maximum' : 'noise at the maximum',
            trace.noise_kN,
            'the trace itself',
          ),
          ...(trace.sampling_kN == null
            ? []
            : [one('sampling at the maximum', trace.sampling_kN, 'the trace itself: rise missed between samples')]),
        ]
      : []),
    ...(readByEye_kN == null ? [] : [one('read by eye', readByEye_kN, 'stated by the operator')]),
  ];
}

function forceDoubts(known: ForceClass | null, { rig, force_kN }: ForceFacts): string[] {
  const doubts: string[] = [];
  const years = rig.yearsSinceCalibration ?? null;
  if (known && force_kN < leastForceOfClass(known, rig.resolution_kN))
    doubts.push(
      `The resolution of ${rig.resolution_kN} kN is too coarse for class ${known.class} below ${leastForceOfClass(known, rig.resolution_kN).toPrecision(3)} kN (${forceClassSource}).`,
    );
  if (rig.drift_pct_per_year == null)
    doubts.push('Nothing is known of the drift since calibration: it is not in the budget.');
  else if (years === null) doubts.push('The day of calibration is not known: drift is not in the budget.');
  if (years !== null && years > longestYears)
    doubts.push(`${rig.instrument} was calibrated ${years.toFixed(1)} years ago, more than one (ISO 7500-1, memory).`);
  return doubts;
}
