import type { GaugingInput, GaugingInstrument } from './reading.ts';

/** The parts of the standard uncertainty of one reading of an instrument, mm. */
export interface ReadingUncertainty {
  readonly instrument: string;
  /** Common to all readings of the instrument: it does not average out. */
  readonly calibration_mm: number;
  /** Of each reading anew: resolution, and repeatability where readings were repeated. */
  readonly random_mm: number;
  readonly standard_mm: number;
}

/** Repeat readings pooled: their standard deviation and how many differences stand behind it. */
export interface Repeatability {
  readonly sd_mm: number;
  readonly degreesOfFreedom: number;
}

/**
 * Standard uncertainty of one reading: calibration U/k, resolution r/(2 sqrt 3) (a rectangular distribution one
 * resolution wide), and repeatability where repeat readings exist, summed in squares (JCGM 100:2008 4.3, 4.2, 5.1.2).
 * Null where the instrument or its calibration is not known: a figure without that part would flatter the reading.
 */
export function readingUncertainty(
  instrument: GaugingInstrument | null,
  repeatability: Repeatability | null,
): ReadingUncertainty | null {
  if (instrument === null || instrument.calibrationUncertainty_mm === null) return null;
  const calibration_mm = instrument.calibrationUncertainty_mm / instrument.coverageFactor;
  const resolution_mm = instrument.resolution_mm / (2 * Math.sqrt(3));
  const random_mm = Math.hypot(resolution_mm, repeatability?.sd_mm ?? 0);
  return {
    instrument: instrument.instrument,
    calibration_mm,
    random_mm,
    standard_mm: Math.hypot(calibration_mm, random_mm),
  };
}

/**
 * Repeatability of readings: the standard deviation within groups of repeat readings (same link, position, quantity,
 * direction and instrument), pooled by degrees of freedom (ISO 5725-2). Null where nothing was repeated.
 */
export function repeatabilityOf(readings: readonly GaugingInput[]): Repeatability | null {
  let squares = 0;
  let degreesOfFreedom = 0;
  for (const group of Map.groupBy(readings, repeatKey).values()) {
    const mean = group.reduce((sum, reading) => sum + reading.value_mm, 0) / group.length;
    squares += group.reduce((sum, reading) => sum + (reading.value_mm - mean) ** 2, 0);
    degreesOfFreedom += group.length - 1;
  }
  return degreesOfFreedom === 0 ? null : { sd_mm: Math.sqrt(squares / degreesOfFreedom), degreesOfFreedom };
}

function repeatKey(reading: GaugingInput): string {
  const { link, position, quantity, direction, overLinks, instrument } = reading;
  return JSON.stringify([link, position, quantity, direction, overLinks, instrument]);
}
