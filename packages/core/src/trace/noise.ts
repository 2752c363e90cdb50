import { rearrangedQuantile } from './order-statistic.ts';

/** 1 / (0.67449 x sqrt(6)): the median of |second differences| of white noise to its standard deviation. */
const TO_SIGMA = 1 / (0.674489750196082 * Math.sqrt(6));
const MOST_DIFFERENCES = 10_000;
/** Enough for 6 % on the noise of one stretch. */
const MOST_IN_STRETCH = 400;

/** Half periods of mains hum and its kin: noise that neighbouring samples share shows only over such a time. */
const LAGS_S = [0.0025, 0.005, 0.01];

export interface NoiseOptions {
  /** Step between samples: with it, differences over up to 10 ms are looked at too. */
  readonly step_s?: number | null;
  /** How many differences are enough. */
  readonly most?: number;
}

function lagNoise(
  values: Float64Array,
  { from, to, lag, most }: { from: number; to: number; lag: number; most: number },
): number {
  const count = to - from - 2 * lag;
  if (count < 3 * lag) return 0;
  const stride = Math.max(1, Math.floor(count / most));
  const differences = new Float64Array(Math.floor((count - 1) / stride) + 1);
  let i = from + lag;
  for (let k = 0; k < differences.length; k++) {
    differences[k] = Math.abs((values[i - lag] as number) - 2 * (values[i] as number) + (values[i + lag] as number));
    i += stride;
  }
  return rearrangedQuantile(differences, 0.5) * TO_SIGMA;
}

/**
 * Standard deviation of the noise on samples [from, to): the median of |y(i-1) - 2 y(i) + y(i+1)|, scaled for white noise. A trend,
 * a dip or a spike does not move it. With the step between samples known, the same over 2.5, 5 and 10 ms, and the largest counts, so
 * that mains hum shows (with up to 2.4 times its effective value). Second-difference estimators: Gasser, Sroka, Jennen-Steinmetz,
 * Biometrika 73 (1986) 625; median absolute deviation: Hampel, JASA 69 (1974) 383. Zero for fewer than 5 samples.
 */
export function differenceNoise(values: Float64Array, from: number, to: number, options: NoiseOptions = {}): number {
  const { step_s = null, most = MOST_DIFFERENCES } = options;
  const lags =
    step_s !== null && step_s > 0 ? LAGS_S.map((time) => Math.floor(time / step_s)).filter((lag) => lag > 1) : [];
  return Math.max(...[1, ...lags].map((lag) => lagNoise(values, { from, to, lag, most })));
}

/** Noise by stretch: noise often grows with the force. */
export interface NoiseMap {
  readonly overall: number;
  readonly stretch: number;
  readonly byStretch: Float64Array;
}

/** Noise of the whole record and of stretches of at least 64 samples (at most 128 stretches). */
export function mapNoise(values: Float64Array, step_s: number | null): NoiseMap {
  const stretches = Math.max(1, Math.min(128, Math.floor(values.length / 64)));
  const stretch = Math.ceil(values.length / stretches);
  const each = Float64Array.from({ length: stretches }, (_, k) =>
    differenceNoise(values, k * stretch, Math.min(values.length, (k + 1) * stretch), { step_s, most: MOST_IN_STRETCH }),
  );
  const overall = differenceNoise(values, 0, values.length, { step_s });
  return { overall, stretch, byStretch: each.map((own, k) => Math.max(own, each[k - 1] ?? 0, each[k + 1] ?? 0)) };
}

/** Noise near sample i: that of its stretch or a neighbouring one, whichever is larger, and never under the half of the whole record's. */
export function noiseAt(map: NoiseMap, i: number): number {
  return Math.max(map.overall / 2, map.byStretch[Math.floor(i / map.stretch)] ?? 0);
}

/**
 * Resolution: the smallest step between neighbouring readings, rounding of binary numbers apart. Null when no reading differs from its neighbour.
 */
export function smallestStep(values: Float64Array): number | null {
  let smallest = Number.POSITIVE_INFINITY;
  let before = values[0] as number;
  for (let i = 1; i < values.length; i++) {
    const value = values[i] as number;
    const step = Math.abs(value - before);
    if (step < smallest && step > Math.abs(value) * 1e-11) smallest = step;
    before = value;
  }
  return smallest === Number.POSITIVE_INFINITY ? null : Number(smallest.toPrecision(6));
}
