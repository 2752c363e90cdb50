import { type Block, blockBack } from './block.ts';
import { blockNoise_kN, isBeyondSnags, loadLevel_kN } from './load-level.ts';
import type { WatchMemory } from './memory.ts';
import { noiseOf } from './noise-track.ts';
import type { Stage } from './state.ts';

/** Rates over the elastic rate at which a stage is entered, and left again. */
const ELASTIC_ENDS = 0.55;
const ELASTIC_AGAIN = 0.85;
/** Growth of the force for a growth of the travel, both as shares (d ln F / d ln x): near the maximum, and no longer near it. */
const NEAR_GROWTH = 0.14;
const NEAR_ENDS_GROWTH = 0.28;
/** Rise that the forecast still expects, over the force so far, and the greatest that it allows for. */
const NEAR_RISE = 0.06;
const NEAR_ENDS_RISE = 0.09;
const NEAR_MOST_RISE = 0.16;
const NEAR_ENDS_MOST_RISE = 0.22;
/** Blocks in a row that must agree on a change of stage. */
const VOTES = 5;
/** Growth of the force without growth of its slope after which the rise counts as straight. */
const STRAIGHT = 1.25;
/** A fall of this share counts as past the maximum, held for this long while the table moves; without a table a hesitating valve looks alike. */
const FALL_SHARE = 0.005;
const FALL_S = 1;
const FALL_SHARE_BLIND = 0.015;
const FALL_BLIND_S = 4;
/** Without a table: share of a fall that must have come in its last seconds. A piece that gives way falls ever faster, one that relaxes ever slower. */
const FALLS_ON_S = 2;
const FALLS_ON_SHARE = 0.3;
/** Under this share of its usual speed the table hesitates. */
const HESITATES = 0.5;
/** Rise from the trough, as a share of the force, by which a fallen force is on its way back. */
const RISE_SHARE = 0.002;

/** Falls before this many times the travel at the knee are early. */
const EARLY = 1.5;
const YIELD_SHARE = 0.5;

export interface Motion {
  readonly isMoving: boolean;
  readonly isFallen: boolean;
}

/** Whether the table moves at about its usual speed, and whether the force is below where it has been. */
export function motionOf(memory: WatchMemory, block: Block): Motion {
  const blind = memory.axis === 'time';
  const above = memory.envelope_kN - memory.zero_kN;
  const steps = block.readings < 4 ? 2 * memory.noise.resolution_kN : 0;
  const share = blind ? FALL_SHARE_BLIND : FALL_SHARE;
  const fall = Math.max(
    share * above,
    6 * blockNoise_kN(memory, block.readings),
    noiseOf(memory.noise) > 0 ? steps : 0,
  );
  const speed = Math.abs(memory.speed_mm_per_s ?? 0);
  return {
    isMoving: blind || speed > HESITATES * memory.usualSpeed_mm_per_s,
    isFallen: block.force_kN < memory.envelope_kN - fall,
  };
}

/** Whether little rise is left: by the forecast and its upper bound where there is one, and by a curve that has grown flat in any case. Never without a table: a valve that is eased looks alike. */
function isNear(memory: WatchMemory, travel: number, force_kN: number): boolean {
  const { axis, forecast, tangent, zero_kN, kneeForce_kN } = memory;
  if (axis === 'time' || kneeForce_kN === null || tangent === null || travel < EARLY * memory.kneeTravel) return false;
  const wasNear = memory.stage === 'near maximum';
  const growth = (tangent * travel) / Math.max(Number.MIN_VALUE, force_kN - zero_kN);
  if (growth < (wasNear ? NEAR_ENDS_GROWTH : NEAR_GROWTH)) return true;
  if (!forecast) return false;
  const rise = (force: number): number => (force - memory.envelope_kN) / (memory.envelope_kN - zero_kN);
  return (
    rise(forecast.maximum_kN) < (wasNear ? NEAR_ENDS_RISE : NEAR_RISE) &&
    rise(forecast.upper90_kN) < (wasNear ? NEAR_ENDS_MOST_RISE : NEAR_MOST_RISE)
  );
}

/** Stage that the tangent of now speaks for, given the stage there is. */
function stageByRate(memory: WatchMemory, travel: number, force_kN: number): Stage {
  const { ratio, tangent, stage } = memory;
  if (ratio === null || tangent === null) return stage;
  if (isNear(memory, travel, force_kN)) return 'near maximum';
  if (stage === 'elastic') return ratio < ELASTIC_ENDS ? 'plastic' : stage;
  return ratio > ELASTIC_AGAIN && travel < 1.5 * memory.kneeTravel ? 'elastic' : 'plastic';
}

function vote(memory: WatchMemory, wanted: Stage, needed: number): void {
  if (wanted === memory.stage) memory.votes = 0;
  else if (++memory.votes >= needed) {
    memory.stage = wanted;
    memory.votes = 0;
  }
}

function followSlack(memory: WatchMemory, block: Block): void {
  const above = block.force_kN - memory.zero_kN;
  vote(memory, above > loadLevel_kN(memory) ? 'take-up' : 'slack', 3);
}

/** A slow source may leave too few points of a short elastic part to know its slope: when the curve has bent away from it, what is known must do. */
function takeRoughRate(memory: WatchMemory): void {
  if (memory.tangent === null || memory.tangent > ELASTIC_ENDS * memory.roughRate) return;
  memory.elasticRate = memory.roughRate;
  memory.grownRate = memory.roughRate;
  memory.grownForce_kN = memory.zero_kN;
}

/** Take-up is over when the force has grown by a quarter while the slope has not grown much. */
function followTakeUp(memory: WatchMemory, block: Block): void {
  if (memory.loss) return;
  const above = block.force_kN - memory.zero_kN;
  if (above < loadLevel_kN(memory) / 2) {
    vote(memory, 'slack', 10);
    return;
  }
  if (memory.elasticRate === null && isBeyondSnags(memory, above)) takeRoughRate(memory);
  const isStraight = memory.elasticRate !== null && above > STRAIGHT * (memory.grownForce_kN - memory.zero_kN);
  vote(memory, isStraight && above > 4 * loadLevel_kN(memory) ? 'elastic' : 'take-up', VOTES);
}

/** Moves the stage on by one closed block; `dt_s` since the block before. */
export function followStage(memory: WatchMemory, block: Block, travel: number, dt_s: number): void {
  if (memory.stage === 'slack') followSlack(memory, block);
  else if (memory.stage === 'take-up') followTakeUp(memory, block);
  else followLoaded(memory, block, travel, dt_s);
}

/** Time for which a fallen force has not risen from its trough while the table moved. */
function followTrough(memory: WatchMemory, block: Block, isMoving: boolean, dt_s: number): void {
  const rise = Math.max(RISE_SHARE * (memory.envelope_kN - memory.zero_kN), 4 * blockNoise_kN(memory, block.readings));
  if (block.force_kN > memory.trough_kN + rise) {
    memory.fallenFor_s = 0;
    memory.trough_kN = block.force_kN - rise / 2;
    return;
  }
  memory.trough_kN = Math.min(memory.trough_kN, block.force_kN);
  if (isMoving) memory.fallenFor_s += dt_s;
}

/** Whether a fall goes on as that of a piece that gives way does. */
function fallsOn(memory: WatchMemory): boolean {
  const last = blockBack(memory.blocks, 0);
  for (let back = 1; last; back++) {
    const block = blockBack(memory.blocks, back);
    if (!block) return false;
    if (last.time_s - block.time_s < FALLS_ON_S) continue;
    return block.force_kN - last.force_kN > FALLS_ON_SHARE * (memory.envelope_kN - last.force_kN);
  }
  return false;
}

/**
 * Whether a fall has lasted long enough to be past the maximum. Without a table it must go on as well: a valve that hesitates lets the force relax, ever slower. Soon after the elastic part it may be the yielding of an ageing steel (upper and lower yield):
 * there the table must have moved on by half of its travel so far.
 */
function hasLasted(memory: WatchMemory, travel: number): boolean {
  const isBlind = memory.axis === 'time';
  if (memory.fallenFor_s < (isBlind ? FALL_BLIND_S : FALL_S) || (isBlind && !fallsOn(memory))) return false;
  const isEarly = memory.kneeForce_kN === null || memory.fellAtTravel < EARLY * memory.kneeTravel;
  return !isEarly || travel - memory.fellAtTravel > YIELD_SHARE * memory.fellAtTravel;
}

function followLoaded(memory: WatchMemory, block: Block, travel: number, dt_s: number): void {
  if (memory.loss) return;
  const { isMoving, isFallen } = motionOf(memory, block);
  if (isFallen) {
    if (memory.trough_kN === Number.POSITIVE_INFINITY) memory.fellAtTravel = travel;
    followTrough(memory, block, isMoving, dt_s);
    if (memory.stage !== 'past maximum') memory.stageBeforeFall = memory.stage;
    // A dip or a hesitation holds the stage: only a fall that lasts changes it.
    if (hasLasted(memory, travel)) memory.stage = 'past maximum';
    memory.votes = 0;
    return;
  }
  memory.fallenFor_s = 0;
  memory.trough_kN = Number.POSITIVE_INFINITY;
  if (memory.stage === 'past maximum') vote(memory, memory.stageBeforeFall, VOTES);
  else if (isMoving) vote(memory, stageByRate(memory, travel, block.force_kN), VOTES);
}
