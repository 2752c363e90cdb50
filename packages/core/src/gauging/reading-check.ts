import { InputError } from '../errors.ts';
import type { GaugingInput } from './reading.ts';

/**
 * Refuses readings that cannot be lengths, all faults named at once. Rows count from 1 in the order given.
 *
 * @throws InputError `gauging/readings` with the rows at fault, or `gauging/size`
 */
export function requireReadings(readings: readonly GaugingInput[], nominalSize_mm: number): void {
  if (!Number.isFinite(nominalSize_mm) || nominalSize_mm <= 0) {
    throw new InputError('gauging/size', `The nominal size must be a number of mm above 0, not ${nominalSize_mm}.`, {
      nominalSize_mm,
    });
  }
  const faults = readings.flatMap((reading, index) =>
    faultsOf(reading).map((fault) => `gauging reading ${index + 1} (${describeReading(reading)}): ${fault}`),
  );
  if (faults.length === 0) return;
  throw new InputError('gauging/readings', `${faults.join('\n')}`, { faults });
}

/** A reading in words: `link 3, leg, diameter 2`. */
export function describeReading(reading: GaugingInput): string {
  const link = reading.link === null ? 'no link' : `link ${reading.link}`;
  return `${link}, ${reading.position}, ${reading.quantity} ${reading.direction}`;
}

function faultsOf(reading: GaugingInput): readonly string[] {
  const faults: string[] = [];
  if (!Number.isFinite(reading.value_mm) || reading.value_mm <= 0) {
    faults.push(`the value must be a number of mm above 0, not ${reading.value_mm}`);
  }
  if (reading.quantity === 'lengthOverLinks' && !isCount(reading.overLinks)) {
    faults.push('say over how many links the length was read (a whole number from 1)');
  }
  return faults;
}

function isCount(value: number | null): boolean {
  return value !== null && Number.isInteger(value) && value >= 1;
}
