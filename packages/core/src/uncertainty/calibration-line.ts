import { summarise } from '../statistics/summary.ts';

/** A straight line of corrections through the points of a calibration, with what it is worth (JCGM 100:2008 H.3). */
export interface CalibrationLine {
  /** Correction at `origin` and its change per unit. */
  readonly intercept: number;
  readonly slope: number;
  readonly origin: number;
  readonly interceptUncertainty: number;
  readonly slopeUncertainty: number;
  /** Of intercept and slope; 0 when `origin` is the mean of the points. */
  readonly correlation: number;
  /** Scatter of the points about the line. */
  readonly sd: number;
  readonly degreesOfFreedom: number;
}

export interface CalibrationPoints {
  /** Where the instrument was compared, and the correction found there. */
  readonly at: readonly number[];
  readonly correction: readonly number[];
  /** Where the intercept is taken; the mean of the points unless given. */
  readonly origin?: number;
}

/**
 * Fits the line by least squares. Null below three points (two always lie on a line and tell no scatter) or where all lie at one
 * place. Throws a RangeError for lists of unequal length or NaN.
 */
export function calibrationLine({ at, correction, origin }: CalibrationPoints): CalibrationLine | null {
  if (at.length !== correction.length) throw new RangeError('each point has a place and a correction');
  const places = summarise(at);
  const corrections = summarise(correction);
  if (places.mean === null || corrections.mean === null || !places.sd || at.length < 3) return null;
  const from = origin ?? places.mean;
  const squares = places.sd ** 2 * (at.length - 1);
  let products = 0;
  for (const [index, place] of at.entries())
    products += (place - places.mean) * ((correction[index] ?? 0) - corrections.mean);
  const slope = products / squares;
  let residuals = 0;
  for (const [index, place] of at.entries()) {
    residuals += ((correction[index] ?? 0) - corrections.mean - slope * (place - places.mean)) ** 2;
  }
  const degreesOfFreedom = at.length - 2;
  const sd = Math.sqrt(residuals / degreesOfFreedom);
  const lever = from - places.mean;
  const interceptFactor = Math.sqrt(1 / at.length + lever ** 2 / squares);
  return {
    intercept: corrections.mean + slope * lever,
    slope,
    origin: from,
    interceptUncertainty: sd * interceptFactor,
    slopeUncertainty: sd / Math.sqrt(squares),
    correlation: lever / Math.sqrt(squares) / interceptFactor,
    sd,
    degreesOfFreedom,
  };
}

/** The correction the line gives at one place, and its standard uncertainty with the correlation counted (JCGM 100:2008 H.3.3). */
export function correctionAt(
  line: CalibrationLine,
  at: number,
): { readonly correction: number; readonly standardUncertainty: number } {
  const lever = at - line.origin;
  const slopePart = lever * line.slopeUncertainty;
  const variance =
    line.interceptUncertainty ** 2 + slopePart ** 2 + 2 * line.correlation * line.interceptUncertainty * slopePart;
  return { correction: line.intercept + line.slope * lever, standardUncertainty: Math.sqrt(Math.max(0, variance)) };
}
