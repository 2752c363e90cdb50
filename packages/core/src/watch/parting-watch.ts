import { loadLevel_kN } from './load-level.ts';
import type { WatchMemory } from './memory.ts';

/** A parting loses over half of the force within this time (this project's definition, as for a whole record). */
const LOSS_S = 0.2;
const LOSS_SHARE = 0.5;
/** Time and readings that must stay lost before it is believed. */
const CONFIRM_S = 0.5;
const CONFIRM_READINGS = 3;
/** Below this share of what it was the piece carries nothing; a slip that keeps more is watched for three seconds. */
const NOTHING_SHARE = 0.15;
const UNDECIDED_S = 3;
/** Force that comes back above this share of the maximum, for a second, shows that nothing had parted. */
const BACK_SHARE = 0.2;
const BACK_S = 1;

/** Highest force of the last 0.2 to 0.4 s (longer for slow sources), in two buckets. */
function trackPeak(memory: WatchMemory, time_s: number, force_kN: number): void {
  if (time_s >= memory.peakUntil_s) {
    memory.peakBefore_kN = memory.peakNow_kN;
    memory.peakNow_kN = Number.NEGATIVE_INFINITY;
    memory.peakUntil_s = time_s + Math.max(LOSS_S, 1.5 * memory.step_s);
  }
  if (force_kN > memory.peakNow_kN) memory.peakNow_kN = force_kN;
}

/** Taking up slack, a link that snags and lets go is no parting. */
function couldPart(memory: WatchMemory): boolean {
  if (memory.maximum_kN === null || memory.stage === 'slack' || memory.stage === 'take-up') return false;
  return memory.maximum_kN - memory.zero_kN > 5 * loadLevel_kN(memory);
}

/** Whether a loss that has lasted is a parting: almost nothing left, or part of it left and not rising after three seconds. */
function isParted(memory: WatchMemory, time_s: number, force_kN: number): boolean {
  const { loss, zero_kN } = memory;
  if (!loss || loss.readings < CONFIRM_READINGS || time_s - loss.from_s < CONFIRM_S) return false;
  const before = loss.from_kN - zero_kN;
  if (force_kN - zero_kN < NOTHING_SHARE * before) return true;
  return time_s - loss.from_s > UNDECIDED_S && (memory.rate_kN_per_s ?? 0) < 0.02 * before;
}

/**
 * Follows one believed reading. True when a parting is known: over half of the force lost within 0.2 s, and for half a second (and three
 * readings) nearly nothing left, or for three seconds something left that does not rise.
 */
export function followParting(memory: WatchMemory, time_s: number, force_kN: number): boolean {
  const peak = Math.max(memory.peakNow_kN, memory.peakBefore_kN);
  trackPeak(memory, time_s, force_kN);
  const { loss, zero_kN } = memory;
  if (!loss) {
    const isLost = force_kN - zero_kN < LOSS_SHARE * (peak - zero_kN) && peak - zero_kN > 0;
    if (isLost && couldPart(memory)) memory.loss = { from_s: time_s, from_kN: peak, readings: 1 };
    return false;
  }
  loss.readings++;
  if (force_kN - zero_kN > LOSS_SHARE * (loss.from_kN - zero_kN)) {
    // What rings in the frame for a few tenths of a second is not the piece.
    if (time_s - loss.from_s > LOSS_S) memory.loss = null;
    return false;
  }
  return isParted(memory, time_s, force_kN);
}

/** After a parting was called: true when the force has come back and stayed, so that it was none. */
export function hasComeBack(memory: WatchMemory, time_s: number, force_kN: number): boolean {
  const level = memory.zero_kN + BACK_SHARE * ((memory.maximum_kN ?? 0) - memory.zero_kN);
  if (force_kN < level) memory.aliveFrom_s = null;
  else memory.aliveFrom_s ??= time_s;
  return memory.aliveFrom_s !== null && time_s - memory.aliveFrom_s > BACK_S;
}
