import type { GaugingInput, GaugingInstrument, QuantityGauging } from './reading.ts';
import { type ReadingUncertainty, readingUncertainty, repeatabilityOf } from './reading-uncertainty.ts';

/**
 * Summary of the readings of each quantity: mean, least and greatest with their links, scatter, and the standard
 * uncertainty of one reading (the largest where several instruments were used). Lengths over different numbers of links
 * are kept apart. No reading is dropped.
 */
export function gaugeQuantities(
  readings: readonly GaugingInput[],
  instruments: readonly GaugingInstrument[],
): readonly QuantityGauging[] {
  const groups = Map.groupBy(readings, ({ quantity, overLinks }) => `${quantity} ${spanOf(quantity, overLinks) ?? ''}`);
  return [...groups.values()].flatMap((group) => summary(group, instruments) ?? []);
}

/** Uncertainty of one reading by instrument name; an instrument that is not known or not calibrated is absent. */
export function uncertaintiesByInstrument(
  readings: readonly GaugingInput[],
  instruments: readonly GaugingInstrument[],
): ReadonlyMap<string, ReadingUncertainty> {
  const found = new Map<string, ReadingUncertainty>();
  for (const [name, group] of Map.groupBy(readings, ({ instrument }) => instrument)) {
    const known = instruments.find(({ instrument }) => instrument === name) ?? null;
    const uncertainty = readingUncertainty(known, repeatabilityOf(group));
    if (uncertainty !== null) found.set(name, uncertainty);
  }
  return found;
}

function summary(readings: readonly GaugingInput[], instruments: readonly GaugingInstrument[]): QuantityGauging | null {
  const [first] = readings;
  if (first === undefined) return null;
  const least = readings.reduce((a, b) => (b.value_mm < a.value_mm ? b : a));
  const greatest = readings.reduce((a, b) => (b.value_mm > a.value_mm ? b : a));
  const mean_mm = readings.reduce((sum, reading) => sum + reading.value_mm, 0) / readings.length;
  return {
    quantity: first.quantity,
    overLinks: spanOf(first.quantity, first.overLinks),
    readings: readings.length,
    mean_mm,
    least_mm: least.value_mm,
    greatest_mm: greatest.value_mm,
    sd_mm: standardDeviation(readings, mean_mm),
    leastLink: least.link,
    greatestLink: greatest.link,
    standardUncertainty_mm: largestUncertainty(readings, instruments),
  };
}

function largestUncertainty(
  readings: readonly GaugingInput[],
  instruments: readonly GaugingInstrument[],
): number | null {
  const found = uncertaintiesByInstrument(readings, instruments);
  const isComplete = readings.every(({ instrument }) => found.has(instrument));
  return isComplete ? Math.max(...[...found.values()].map(({ standard_mm }) => standard_mm)) : null;
}

function standardDeviation(readings: readonly GaugingInput[], mean_mm: number): number | null {
  if (readings.length < 2) return null;
  const squares = readings.reduce((sum, { value_mm }) => sum + (value_mm - mean_mm) ** 2, 0);
  return Math.sqrt(squares / (readings.length - 1));
}

function spanOf(quantity: GaugingInput['quantity'], overLinks: number | null): number | null {
  return quantity === 'lengthOverLinks' ? overLinks : null;
}
