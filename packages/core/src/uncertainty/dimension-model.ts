import type { Budget } from './budget.ts';
import type { CoverageWish } from './coverage.ts';
import { evenlyWithin } from './input-distribution.ts';
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

/** What is known of a calliper or micrometer, mm. Null: not known. */
export interface CalliperKnowledge {
  readonly instrument: string;
  readonly resolution_mm: number;
  readonly certificate: Certificate | null;
  /** Limits of its error, +/-, from its certificate or data sheet; beside a certificate only where the found errors are not corrected. */
  readonly limitOfError_mm?: number | null;
}

export interface DimensionFacts {
  /** Mean of the readings. */
  readonly value_mm: number;
  readonly readings: number;
  readonly calliper: CalliperKnowledge;
  /** Of a single reading, from repeats; null where nothing was repeated. */
  readonly repeatability_mm: KnownScatter | null;
  /** Thickness of the zinc to be taken off both sides, um. */
  readonly zinc_um?: KnownValue | null;
  readonly quantity?: string;
}

/**
 * Measurement model of a gauged dimension, mm: mean reading, error of the calliper, its resolution (not divided by the number of
 * readings, as in JCGM 100:2008 H.6), repeatability over the root of the readings, and twice the zinc where it was gauged over zinc.
 * Without certificate or limits of error the uncertainty is not stated.
 */
export function dimensionModel(facts: DimensionFacts): MeasurementModel {
  const { value_mm, readings, calliper, repeatability_mm, zinc_um } = facts;
  requireAbove0({ value_mm, readings, 'resolution of the calliper': calliper.resolution_mm });
  const errors = [
    ...calliperInputs(calliper),
    resolutionInput(calliper.resolution_mm, 'mm'),
    ...(repeatability_mm ? [scatterInput(repeatability_mm, readings, { unit: 'mm', name: 'repeatability' })] : []),
  ];
  const zinc = zinc_um ? [knownInput(zinc_um, { name: 'zinc thickness, both sides', unit: 'um' })] : [];
  return {
    quantity: facts.quantity ?? 'dimension',
    unit: 'mm',
    inputs: [...zinc, ...errors],
    evaluate: (values) => {
      const thickness_um = zinc.length === 0 ? 0 : (values[0] ?? 0);
      const error = values.slice(zinc.length).reduce((sum, value) => sum + value, 0);
      return value_mm + error - (2 * thickness_um) / 1000;
    },
    unknown: calliperUnknown(calliper),
    doubts: repeatability_mm ? [] : ['No reading was repeated: the budget holds no repeatability.'],
  };
}

/** Uncertainty budget of a gauged dimension, mm. See {@link dimensionModel}. */
export function dimensionBudget(facts: DimensionFacts, options: { readonly coverage?: CoverageWish } = {}): Budget {
  return propagate(dimensionModel(facts), options).budget;
}

/** Certificate and limits of error of a calliper, common to all its readings. */
export function calliperInputs({ certificate, limitOfError_mm, instrument }: CalliperKnowledge): ModelInput[] {
  return [
    ...(certificate ? [certificateInput(certificate, 'mm')] : []),
    ...(limitOfError_mm == null
      ? []
      : [
          {
            name: 'limits of error of the calliper',
            unit: 'mm',
            distribution: evenlyWithin(limitOfError_mm),
            source: `within ${limitOfError_mm} mm, stated for ${instrument} (JCGM 100:2008 4.3.7)`,
          },
        ]),
  ];
}

export function calliperUnknown({ certificate, limitOfError_mm, instrument }: CalliperKnowledge): string[] {
  return certificate || limitOfError_mm != null ? [] : [`${instrument} has neither a certificate nor limits of error`];
}
