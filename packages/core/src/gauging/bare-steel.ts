import type { GaugingInput } from './reading.ts';

/**
 * Readings of the bar and the weld as they would be on bare steel: twice the zinc thickness comes off each diameter gauged over the
 * zinc (two sides). Pitch and widths stay as read: the limits of chain apply to the finished link (common practice).
 */
export function takeOffZinc(readings: readonly GaugingInput[], zincThickness_mm: number): GaugingInput[] {
  return readings.map((reading) =>
    reading.quantity === 'diameter' || reading.quantity === 'weldDiameter'
      ? { ...reading, value_mm: reading.value_mm - 2 * zincThickness_mm }
      : reading,
  );
}
