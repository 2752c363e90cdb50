/**
 * Running estimate of the noise of the force: mean size of second differences between neighbouring readings and between readings at
 * least 5 ms apart (mains hum shows only there); the larger counts. Same idea as the noise of a whole record (Gasser, Sroka,
 * Jennen-Steinmetz, Biometrika 73 (1986) 625), with a clipped running mean where a whole record has a median.
 */
export interface NoiseTrack {
  readonly near: DifferenceTrack;
  readonly apart: DifferenceTrack;
  apartAt_s: number;
  resolution_kN: number;
}

interface DifferenceTrack {
  before: number;
  last: number;
  count: number;
  spread: number;
}

/** Mean of |y(i-1) - 2 y(i) + y(i+1)| of white noise to its standard deviation: 1 / (sqrt(6) sqrt(2 / pi)). */
const TO_SIGMA = 1 / (Math.sqrt(6) * Math.sqrt(2 / Math.PI));
const APART_S = 0.005;
/** Differences after which the mean starts to forget, and before which nothing is clipped. */
const MEMORY = 400;
const UNCLIPPED = 20;
const CLIP = 5;

function differenceTrack(): DifferenceTrack {
  return { before: 0, last: 0, count: 0, spread: 0 };
}

export function startNoise(): NoiseTrack {
  return {
    near: differenceTrack(),
    apart: differenceTrack(),
    apartAt_s: Number.NEGATIVE_INFINITY,
    resolution_kN: 0,
  };
}

function observe(track: DifferenceTrack, force_kN: number, resolution_kN: number): void {
  track.count++;
  if (track.count > 2) {
    const seen = track.count - 2;
    const size = Math.abs(track.before - 2 * track.last + force_kN) * TO_SIGMA;
    const most = CLIP * Math.max(track.spread, resolution_kN);
    const kept = seen > UNCLIPPED && size > most ? most : size;
    track.spread += (kept - track.spread) / Math.min(seen, MEMORY);
  }
  track.before = track.last;
  track.last = force_kN;
}

/** Takes one reading in. */
export function observeNoise(noise: NoiseTrack, time_s: number, force_kN: number): void {
  const step = Math.abs(force_kN - noise.near.last);
  if (noise.near.count > 0 && step > 0 && (noise.resolution_kN === 0 || step < noise.resolution_kN)) {
    // Rounding of binary numbers is no step of the instrument.
    if (step > 1e-11 * Math.abs(force_kN)) noise.resolution_kN = step;
  }
  observe(noise.near, force_kN, noise.resolution_kN);
  if (time_s - noise.apartAt_s < APART_S) return;
  noise.apartAt_s = time_s;
  observe(noise.apart, force_kN, noise.resolution_kN);
}

/** Standard deviation of the noise of one reading, kN; 0 before three readings. */
export function noiseOf(noise: NoiseTrack): number {
  return Math.max(noise.near.spread, noise.apart.spread);
}
