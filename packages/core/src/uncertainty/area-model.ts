import type { Budget } from './budget.ts';
import type { CoverageWish } from './coverage.ts';
import { type CalliperKnowledge, calliperInputs, calliperUnknown } from './dimension-model.ts';
import {
  type KnownScatter,
  type KnownValue,
  knownInput,
  requireAbove0,
  resolutionInput,
  scatterInput,
} from './instrument-input.ts';
import { type MeasurementModel, type ModelInput, propagate } from './propagation.ts';

/** Diameters of the plain leg of one link, mm, at right angles; the second null where it was not read. */
export interface LegDiameters {
  readonly first_mm: number;
  readonly second_mm: number | null;
}

export interface AreaFacts {
  readonly links: readonly LegDiameters[];
  readonly calliper: CalliperKnowledge;
  /** Of a single reading, from repeats; null where nothing was repeated. */
  readonly repeatability_mm: KnownScatter | null;
  /** Thickness of the zinc to be taken off both sides, um, where the diameters were gauged over zinc. */
  readonly zinc_um?: KnownValue | null;
}

/**
 * Measurement model of the steel area of both legs, mean over the links gauged, mm2: 2 pi/4 d1 d2, a leg read once taken as round.
 *
 * The error of the calliper and the zinc are common to all diameters; resolution and repeatability are of each reading anew (as in
 * `steelArea`, with which it agrees). It does not speak for links that were not gauged.
 * @throws RangeError without links or for a diameter not above 0
 */
export function areaModel(facts: AreaFacts): MeasurementModel {
  const { links, calliper, repeatability_mm, zinc_um } = facts;
  if (links.length === 0) throw new RangeError('an area has gauged links');
  const readings = links.flatMap(({ first_mm, second_mm }) => [first_mm, ...(second_mm === null ? [] : [second_mm])]);
  for (const diameter_mm of readings)
    requireAbove0({ diameter_mm, 'resolution of the calliper': calliper.resolution_mm });
  const zinc = zinc_um ? [knownInput(zinc_um, { name: 'zinc thickness, both sides', unit: 'um' })] : [];
  const common = calliperInputs(calliper);
  const own = ownInputs(facts);
  return {
    quantity: 'steel area of both legs',
    unit: 'mm2',
    inputs: [...zinc, ...common, ...readings.flatMap(() => own)],
    evaluate: (values) => {
      const zinc_mm = zinc.length === 0 ? 0 : (2 * (values[0] ?? 0)) / 1000;
      const shift = sum(values, zinc.length, common.length) - zinc_mm;
      const from = zinc.length + common.length;
      return meanArea(links, (reading) => shift + sum(values, from + reading * own.length, own.length));
    },
    unknown: calliperUnknown(calliper),
    doubts: [
      ...(repeatability_mm ? [] : ['No reading was repeated: the budget holds no repeatability.']),
      ...(links.some(({ second_mm }) => second_mm === null)
        ? ['A bar read in one direction only was taken as round: an oval bar would not show.']
        : []),
    ],
  };
}

/** Uncertainty budget of the steel area of both legs, mm2. See {@link areaModel}. */
export function areaBudget(facts: AreaFacts, options: { readonly coverage?: CoverageWish } = {}): Budget {
  return propagate(areaModel(facts), options).budget;
}

function ownInputs({ calliper, repeatability_mm }: AreaFacts): ModelInput[] {
  return [
    resolutionInput(calliper.resolution_mm, 'mm', 'resolution, each reading'),
    ...(repeatability_mm
      ? [scatterInput(repeatability_mm, 1, { unit: 'mm', name: 'repeatability, each reading' })]
      : []),
  ];
}

function sum(values: readonly number[], from: number, count: number): number {
  let total = 0;
  for (let i = from; i < from + count; i++) total += values[i] ?? 0;
  return total;
}

function meanArea(links: readonly LegDiameters[], errorOf: (reading: number) => number): number {
  let total = 0;
  let reading = 0;
  for (const { first_mm, second_mm } of links) {
    const first = first_mm + errorOf(reading++);
    const second = second_mm === null ? first : second_mm + errorOf(reading++);
    total += (Math.PI / 2) * first * second;
  }
  return total / links.length;
}
