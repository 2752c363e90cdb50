import { loadLevel_kN } from './load-level.ts';
import type { WatchMemory } from './memory.ts';
import { noiseOf } from './noise-track.ts';
import type { WatchSample } from './state.ts';

const STUCK_S = 3;
/** A jump that stays and multiplies or divides the force by more than this is no behaviour of steel, unless it parts. */
const UNIT_TIMES = 1.5;

export function noteGap(memory: WatchMemory, from_s: number, gap_s: number): void {
  const { gaps } = memory.doubts;
  gaps.count++;
  if (gap_s <= gaps.longest_s) return;
  gaps.longest_s = gap_s;
  gaps.longestFrom_s = from_s;
}

/** A loaded force that does not change by the last digit for three seconds, from a source that otherwise shows noise. */
export function noteStuck(memory: WatchMemory, sample: WatchSample): void {
  const { last, doubts } = memory;
  if (!last || last.force_kN !== sample.force_kN) {
    memory.sameForceFrom_s = sample.time_s;
    return;
  }
  const same_s = sample.time_s - memory.sameForceFrom_s;
  if (same_s < STUCK_S || memory.stage === 'slack' || memory.ended !== null || noiseOf(memory.noise) === 0) return;
  if (doubts.stuckFrom_s !== null && doubts.stuckFrom_s !== memory.sameForceFrom_s) return;
  doubts.stuckFrom_s = memory.sameForceFrom_s;
  doubts.stuckAt_kN = sample.force_kN;
  doubts.stuckFor_s = same_s;
}

/** After a gap longer than this, and than five readings, a rise is no jump: the load went on while nothing was read. */
const JUMP_WITHIN_S = 1;

/** A sudden rise that stays and is more than steel can do. */
export function noteJump(memory: WatchMemory, to: WatchSample | undefined): void {
  const from_kN = memory.hold.force_kN;
  if (!to || memory.doubts.jumpedAt_s !== null || memory.stage === 'slack' || memory.ended !== null) return;
  if (to.time_s - memory.hold.time_s > Math.max(JUMP_WITHIN_S, 5 * memory.step_s)) return;
  if (from_kN - memory.zero_kN < loadLevel_kN(memory) || to.force_kN < UNIT_TIMES * from_kN) return;
  memory.doubts.jumpedAt_s = to.time_s;
  memory.doubts.jumpedFrom_kN = from_kN;
  memory.doubts.jumpedTo_kN = to.force_kN;
}

export function noteLimits(memory: WatchMemory, sample: WatchSample): void {
  const { rangeMaximum_kN, fixtureLimit_kN } = memory.options;
  if (rangeMaximum_kN !== null && sample.force_kN >= rangeMaximum_kN) memory.doubts.rangePassed_s ??= sample.time_s;
  if (fixtureLimit_kN !== null && sample.force_kN >= fixtureLimit_kN) memory.doubts.fixturePassed_s ??= sample.time_s;
}
