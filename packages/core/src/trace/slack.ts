import { meanBetween } from './mean.ts';
import { differenceNoise } from './noise.ts';
import { medianBetween } from './order-statistic.ts';

/** The unloaded start of a record. */
export interface SlackFinding {
  /** Last sample of the flat start; 0 when there is none. */
  readonly end: number;
  /** Level of the flat start in kN; null when there is no flat start. */
  readonly level_kN: number | null;
  /** Level to be taken off every force; 0 when no slack is shown. */
  readonly offset_kN: number;
  readonly note: string | null;
}

export interface SlackInput {
  readonly force_kN: Float64Array;
  readonly time_s: Float64Array | null;
  /** Table or extension, to see whether the machine moved while the force stood still. */
  readonly travel_mm: Float64Array | null;
  readonly resolution_kN: number | null;
  readonly step_s: number | null;
  readonly peak: number;
}

/** Slack as a share of the travel to the maximum; play of grips under a preload is less. */
const LEAST_SLACK = 0.05;

/** How the flat start shows that the piece hung slack, or null when it may as well be a preload. */
function proofOfSlack(input: SlackInput, end: number, level: number, band: number): string | null {
  const { travel_mm, time_s, force_kN, peak } = input;
  if (level < -band / 2) return 'the flat start lies below zero, which no hanging piece can';
  if (standsAtEnd(force_kN, peak, level, band))
    return 'the force stands at the same level after parting, where no preload is left';
  if (travel_mm) {
    const moved = Math.abs((travel_mm[end] as number) - (travel_mm[0] as number));
    const whole = Math.abs((travel_mm[peak] as number) - (travel_mm[0] as number));
    const shaking = differenceNoise(travel_mm, 0, end + 1);
    return moved > LEAST_SLACK * whole && moved > 5 * shaking
      ? `the machine moved ${moved.toPrecision(3)} mm while the force stood still`
      : null;
  }
  const flat_s = time_s ? (time_s[end] as number) - (time_s[0] as number) : 0;
  const small = Math.abs(level) < 0.02 * (force_kN[peak] as number);
  return flat_s >= 2 && end >= 9 && small ? `the force stood still for ${flat_s.toPrecision(3)} s at the start` : null;
}

/** True when the record ends far below its maximum, still, and within the noise of the level it began at. */
function standsAtEnd(force: Float64Array, peak: number, level: number, band: number): boolean {
  const from = Math.max(peak + 1, force.length - Math.max(5, Math.floor((force.length - peak) / 4)));
  if (force.length - from < 5) return false;
  const half = (from + force.length) >> 1;
  const [early, late] = [medianBetween(force, from, half), medianBetween(force, half, force.length)];
  const maximum = force[peak] as number;
  return late < 0.2 * maximum && Math.abs(late - early) <= band / 2 && Math.abs(late - level) <= band / 2;
}

/** First sample at a level that the nine from there on hold as well: one noisy reading is no rise. */
function firstRise(force: Float64Array, level: number, peak: number): number {
  for (let i = 0; i < peak; i++) {
    if ((force[i] as number) >= level && medianBetween(force, i, Math.min(i + 9, peak + 1)) >= level) return i;
  }
  return peak;
}

function flatEnd(force: Float64Array, rise: number, level: number, band: number): number {
  for (let i = rise; i > 0; i--) if ((force[i] as number) <= level + band) return i;
  return 0;
}

/**
 * Finds the flat start of a record (before the force first reaches 5 % of its maximum; five samples or more within the noise) and the zero offset. The
 * mean of the flat start is taken off only where slack is shown: the machine moved by 5 % of its travel to the maximum while the force stood still, or the level lies below
 * zero, or the force stands at the same level after parting, or, without a travel signal, the force stood still for two seconds. A flat start without any of these may be a preload and stays.
 * Zeroing on the unloaded piece: ISO 6892-1:2019, 10.2 (memory).
 */
export function findSlack(input: SlackInput): SlackFinding {
  const { force_kN: force, peak, resolution_kN } = input;
  const maximum = force[peak] as number;
  const start = medianBetween(force, 0, Math.min(5, peak + 1));
  const rise = firstRise(force, start + 0.05 * (maximum - start), peak);
  const none = { end: 0, level_kN: null, offset_kN: 0, note: null };
  if (rise < 5) return none;
  const noise = differenceNoise(force, 0, rise, { step_s: input.step_s });
  const first = medianBetween(force, 0, Math.max(5, Math.floor(rise / 100)));
  const band = Math.max(4 * noise, 3 * (resolution_kN ?? 0), 0.001 * (maximum - start));
  const end = flatEnd(force, rise, first, band);
  const half = (end + 1) >> 1;
  if (end < 4 || Math.abs(medianBetween(force, half, end + 1) - medianBetween(force, 0, half)) > band / 2) return none;
  const settled = Math.max(5, Math.floor((end + 1) * 0.9));
  const level = meanBetween(force, 0, settled);
  const proof = proofOfSlack(input, end, level, band);
  if (proof === null) {
    return {
      end,
      level_kN: null,
      offset_kN: 0,
      note: `The flat start at ${level.toPrecision(3)} kN may be a preload: no zero offset was taken off.`,
    };
  }
  const certain = Math.max((resolution_kN ?? 0) / 2, (3 * noise) / Math.sqrt(settled));
  if (Math.abs(level) <= certain) return { end, level_kN: level, offset_kN: 0, note: null };
  return {
    end,
    level_kN: level,
    offset_kN: level,
    note: `A zero offset of ${level.toPrecision(4)} kN was taken off: ${proof}.`,
  };
}
