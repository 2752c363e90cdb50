import { type Block, blockBack } from './block.ts';
import { blockNoise_kN, isBeyondSnags, loadLevel_kN } from './load-level.ts';
import type { WatchMemory } from './memory.ts';

/** A parting loses over half of the force within this time (this project's definition, as for a whole record). */
const LOSS_S = 0.2;
const LOSS_SHARE = 0.5;
/** With less than this share left for this long, without a rise, and over these readings, the piece is shown as parted. */
const NOTHING_SHARE = 0.15;
const SHOWN_S = 0.7;
/** Before the knee a slip of the grip is likelier than a parting, and may let go of everything for a second. */
const SHOWN_EARLY_S = 1.5;
const SHOWN_READINGS = 3;
/** Rise of what is left, as a share of the force before: a grip that slipped takes load again, a piece that parted does not. */
const TAKES_LOAD_SHARE = 0.002;
/** Rise from the lowest since, as a share of the force before, that takes back a parting already shown. */
const HAS_LOAD_SHARE = 0.01;
/** A slip that let go of everything takes load again as the table moves on: a parting is final when the table has stopped ... */
const STOPPED = 0.2;
const STOPPED_S = 1;
/** ... or has moved on by this share of the loaded travel, or after this time (without a table, the shorter one). */
const MOVED_ON = 1.5;
const FINAL_S = 30;
const FINAL_BLIND_S = 3;
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

/**
 * Taking up slack, a link that snags and lets go is no parting; nor is the last of the force when the table is run back. What let go of a force
 * that no snag bears was the piece, even where its elastic part went by between two readings.
 */
function couldPart(memory: WatchMemory, from_kN: number): boolean {
  if (memory.maximum_kN === null || memory.stage === 'slack') return false;
  const above = memory.maximum_kN - memory.zero_kN;
  if (memory.stage === 'take-up' && !isBeyondSnags(memory, above)) return false;
  return above > 5 * loadLevel_kN(memory) && from_kN - memory.zero_kN > BACK_SHARE * above;
}

function startLoss(memory: WatchMemory, time_s: number, from_kN: number): void {
  const table_mm = blockBack(memory.blocks, 0)?.table_mm ?? Number.NaN;
  memory.loss = {
    from_s: time_s,
    from_kN,
    table_mm,
    readings: 1,
    stage: memory.stage,
    least_kN: from_kN,
    lowest_kN: from_kN,
    stillFrom_s: time_s,
  };
}

/** At a closed block after a loss: what is left may only be shown as nothing while it does not rise. */
export function followRest(memory: WatchMemory, block: Block): void {
  const { loss, zero_kN, noise } = memory;
  if (!loss) return;
  const before_kN = loss.from_kN - zero_kN;
  const least_kN = Math.max(
    4 * blockNoise_kN(memory, block.readings),
    block.readings < 4 ? 2 * noise.resolution_kN : 0,
  );
  const rise = Math.max(TAKES_LOAD_SHARE * before_kN, least_kN);
  // Under zero it is the frame that rings.
  const left_kN = Math.max(zero_kN, block.force_kN);
  loss.least_kN = Math.min(loss.least_kN, left_kN);
  loss.lowest_kN = Math.min(loss.lowest_kN, left_kN);
  if (
    memory.stage === 'parted' &&
    block.force_kN > loss.least_kN + Math.max(HAS_LOAD_SHARE * before_kN, 2 * least_kN)
  ) {
    memory.stage = loss.stage;
    loss.least_kN = block.force_kN;
  }
  if (block.force_kN <= loss.lowest_kN + rise) return;
  loss.lowest_kN = block.force_kN - rise / 2;
  loss.stillFrom_s = block.time_s;
}

/** The force is back: the loss was a slip, and the stage is again what it was. */
function forgetLoss(memory: WatchMemory): void {
  if (memory.stage === 'parted' && memory.loss) memory.stage = memory.loss.stage;
  memory.loss = null;
}

/**
 * Follows one believed reading: over half of the force lost within 0.2 s starts a loss; with less than 15 % left for 0.7 s (1.5 s before the knee), not rising (and
 * three readings), the stage is `parted`; a force that comes back above half takes both back.
 */
export function followLoss(memory: WatchMemory, time_s: number, force_kN: number): void {
  const peak = Math.max(memory.peakNow_kN, memory.peakBefore_kN);
  trackPeak(memory, time_s, force_kN);
  const { loss, zero_kN } = memory;
  if (!loss) {
    const isLost = force_kN - zero_kN < LOSS_SHARE * (peak - zero_kN) && peak - zero_kN > 0;
    if (isLost && couldPart(memory, peak)) startLoss(memory, time_s, peak);
    return;
  }
  loss.readings++;
  const left = (force_kN - zero_kN) / (loss.from_kN - zero_kN);
  const isStill = time_s - loss.stillFrom_s >= (memory.kneeForce_kN === null ? SHOWN_EARLY_S : SHOWN_S);
  // What rings in the frame for a few tenths of a second is not the piece.
  if (left > LOSS_SHARE && time_s - loss.from_s > LOSS_S) forgetLoss(memory);
  else if (left < NOTHING_SHARE && isStill && loss.readings >= SHOWN_READINGS) memory.stage = 'parted';
}

/** Whether a piece shown as parted can be no slip any more, at a closed block. */
export function isPartingFinal(memory: WatchMemory, block: Block): boolean {
  const { loss, axis } = memory;
  if (memory.stage !== 'parted' || !loss) return false;
  const left = (block.force_kN - memory.zero_kN) / (loss.from_kN - memory.zero_kN);
  if (left > NOTHING_SHARE || block.time_s - loss.stillFrom_s < SHOWN_S) return false;
  const since_s = block.time_s - loss.from_s;
  if (axis === 'time' || Number.isNaN(block.table_mm)) return since_s > FINAL_BLIND_S;
  const speed = memory.speed_mm_per_s;
  const hasStopped = speed !== null && Math.abs(speed) < STOPPED * memory.usualSpeed_mm_per_s;
  const movedOn_mm = Math.abs(block.table_mm - loss.table_mm);
  const loaded_mm = Math.abs(loss.table_mm - memory.travelFrom);
  return (hasStopped && since_s > STOPPED_S) || movedOn_mm > MOVED_ON * loaded_mm || since_s > FINAL_S;
}

/** After a parting was called final: true when the force has come back and stayed, so that it was none. */
export function hasComeBack(memory: WatchMemory, time_s: number, force_kN: number): boolean {
  const level = memory.zero_kN + BACK_SHARE * ((memory.maximum_kN ?? 0) - memory.zero_kN);
  if (force_kN < level) memory.aliveFrom_s = null;
  else memory.aliveFrom_s ??= time_s;
  return memory.aliveFrom_s !== null && time_s - memory.aliveFrom_s > BACK_S;
}
