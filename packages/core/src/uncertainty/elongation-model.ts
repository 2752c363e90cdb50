import type { Budget } from './budget.ts';
import type { CoverageWish } from './coverage.ts';
import { estimated, evenlyWithin } from './input-distribution.ts';
import { extensionClassOf, extensionClassSource, extensionErrorOf } from './instrument-class.ts';
import { type KnownValue, knownInput, requireAbove0, resolutionInput } from './instrument-input.ts';
import { type MeasurementModel, type ModelInput, propagate } from './propagation.ts';

export interface ElongationFacts {
  /** Extension at parting from the corrected origin. */
  readonly extension_mm: number;
  readonly gaugeLength_mm: KnownValue;
  /** Class of ISO 9513 of the extension or table measurement: 0.2, 0.5, 1, 2; null: not known. */
  readonly extensionClass: number | null;
  readonly resolution_mm?: number | null;
  /** Table travel of one sample: the parting lies somewhere within. */
  readonly sampleStep_mm?: number | null;
  /** Stretch of frame and grips that was taken off, mm, with its uncertainty. */
  readonly frameStretch_mm?: KnownValue | null;
  /** Standard uncertainty of the origin of the extension (toe correction). */
  readonly originUncertainty_mm?: number | null;
}

/**
 * Measurement model of the total ultimate elongation, 100 extension / gauge length, in %. Without a class of the extension measurement
 * the uncertainty is not stated.
 */
export function elongationModel(facts: ElongationFacts): MeasurementModel {
  const { extension_mm, gaugeLength_mm } = facts;
  requireAbove0({ 'gauge length in mm': gaugeLength_mm.value });
  if (!Number.isFinite(extension_mm)) throw new RangeError('an extension is a finite number');
  const errors = [...classInputs(facts), ...readingInputs(facts)];
  const frame = facts.frameStretch_mm;
  return {
    quantity: 'elongation',
    unit: '%',
    inputs: [
      knownInput(gaugeLength_mm, { name: 'gauge length', unit: 'mm' }),
      ...errors,
      // The stretch is off the extension already; only its error counts.
      ...(frame ? [knownInput({ ...frame, value: 0 }, { name: 'stretch of frame and grips', unit: 'mm' })] : []),
    ],
    evaluate: (values) => {
      let extension = extension_mm;
      for (let i = 1; i < values.length; i++) extension += values[i] ?? 0;
      return (100 * extension) / (values[0] ?? 0);
    },
    unknown: facts.extensionClass === null ? ['the class of the extension measurement is not known'] : [],
    doubts: frame ? [] : ['Stretch of frame and grips is not in the budget: it was not measured or not taken off.'],
  };
}

/** Uncertainty budget of the total ultimate elongation, %. See {@link elongationModel}. */
export function elongationBudget(facts: ElongationFacts, options: { readonly coverage?: CoverageWish } = {}): Budget {
  return propagate(elongationModel(facts), options).budget;
}

function classInputs({ extensionClass, extension_mm }: ElongationFacts): ModelInput[] {
  if (extensionClass === null) return [];
  const known = extensionClassOf(extensionClass);
  if (known === null) throw new RangeError(`ISO 9513 has no class ${extensionClass}`);
  return [
    {
      name: 'extension, error of indication',
      unit: 'mm',
      distribution: evenlyWithin(extensionErrorOf(known, extension_mm)),
      source: `class ${known.class}: within ${known.bias_pct} % or ${known.bias_um} um, ${extensionClassSource}`,
    },
  ];
}

function readingInputs({ resolution_mm, sampleStep_mm, originUncertainty_mm }: ElongationFacts): ModelInput[] {
  return [
    ...(resolution_mm == null ? [] : [resolutionInput(resolution_mm, 'mm', 'extension, resolution')]),
    ...(sampleStep_mm == null
      ? []
      : [
          {
            name: 'sampling at parting',
            unit: 'mm',
            distribution: evenlyWithin(sampleStep_mm),
            source: 'one sample of table travel either way',
          },
        ]),
    ...(originUncertainty_mm == null
      ? []
      : [
          {
            name: 'origin of the extension',
            unit: 'mm',
            distribution: estimated(0, originUncertainty_mm),
            source: 'fit of the toe of the curve',
          },
        ]),
  ];
}
