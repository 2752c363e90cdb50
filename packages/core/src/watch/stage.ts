import type { Block } from './block.ts';
import { blockNoise_kN, loadLevel_kN } from './load-level.ts';
import type { WatchMemory } from './memory.ts';
import type { Stage } from './state.ts';

/** Rates over the elastic rate at which a stage is entered, and left again. */
const ELASTIC_ENDS = 0.55;
const ELASTIC_AGAIN = 0.85;
/** Growth of the force for a growth of the travel, both as shares (d ln F / d ln x): near the maximum, and no longer near it. */
const NEAR_GROWTH = 0.14;
const NEAR_ENDS_GROWTH = 0.28;
/** Blocks in a row that must agree on a change of stage. */
const VOTES = 5;
/** Growth of the force without growth of its slope after which the rise counts as straight. */
const STRAIGHT = 1.25;
/** A fall of this share counts as past the maximum, held for this long while the table moves; without a table a hesitating valve looks alike. */
const FALL_SHARE = 0.005;
const FALL_S = 1;
const FALL_SHARE_BLIND = 0.015;
const FALL_BLIND_S = 4;
/** Under this share of its usual speed the table hesitates. */
const HESITATES = 0.5;
/** Rise, over the elastic rate, by which a fallen force is being regained. */
const REGAINS = 0.06;

export interface Motion {
  readonly isMoving: boolean;
  readonly isFallen: boolean;
  readonly isRegaining: boolean;
}

/** Whether the table moves and the force is below where it has been, or on its way back. */
export function motionOf(memory: WatchMemory, block: Block): Motion {
  const blind = memory.axis === 'time';
  const above = memory.envelope_kN - memory.zero_kN;
  const share = blind ? FALL_SHARE_BLIND : FALL_SHARE;
  const fall = Math.max(
    share * above,
    6 * blockNoise_kN(memory, block.readings),
    2 * memory.noise.resolution_kN * Number(block.readings < 4),
  );
  const speed = Math.abs(memory.speed_mm_per_s ?? 0);
  const isMoving = blind || speed > HESITATES * memory.usualSpeed_mm_per_s;
  const perSecond = (memory.elasticRate ?? 0) * (blind ? 1 : speed);
  return {
    isMoving,
    isFallen: block.force_kN < memory.envelope_kN - fall,
    isRegaining: (memory.rate_kN_per_s ?? 0) > REGAINS * perSecond && (memory.rate_kN_per_s ?? 0) > 0,
  };
}

/** Stage that the tangent of now speaks for, given the stage there is. */
function stageByRate(memory: WatchMemory, travel: number, force_kN: number): Stage {
  const { ratio, tangent, stage } = memory;
  if (ratio === null || tangent === null) return stage;
  const growth = (tangent * travel) / Math.max(1e-12, force_kN - memory.zero_kN);
  const wasNear = stage === 'near maximum' || stage === 'past maximum';
  if (memory.kneeForce_kN !== null && growth < (wasNear ? NEAR_ENDS_GROWTH : NEAR_GROWTH)) return 'near maximum';
  const wasElastic = stage === 'elastic' || stage === 'take-up';
  if (wasElastic) return ratio < ELASTIC_ENDS ? 'plastic' : stage;
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

/** Take-up is over when the force has grown by a quarter while the slope has not grown much. */
function followTakeUp(memory: WatchMemory, block: Block): void {
  const above = block.force_kN - memory.zero_kN;
  if (above < loadLevel_kN(memory) / 2) {
    vote(memory, 'slack', 10);
    return;
  }
  const isStraight = memory.elasticRate !== null && above > STRAIGHT * (memory.grownForce_kN - memory.zero_kN);
  vote(memory, isStraight && above > 4 * loadLevel_kN(memory) ? 'elastic' : 'take-up', VOTES);
}

/** Moves the stage on by one closed block; `dt_s` since the block before. */
export function followStage(memory: WatchMemory, block: Block, travel: number, dt_s: number): void {
  if (memory.stage === 'slack') followSlack(memory, block);
  else if (memory.stage === 'take-up') followTakeUp(memory, block);
  else followLoaded(memory, block, travel, dt_s);
}

function followLoaded(memory: WatchMemory, block: Block, travel: number, dt_s: number): void {
  const motion = motionOf(memory, block);
  const blind = memory.axis === 'time';
  if (motion.isFallen) {
    if (motion.isRegaining) memory.fallenFor_s = 0;
    else if (motion.isMoving) memory.fallenFor_s += dt_s;
    // A dip or a hesitation holds the stage: only a fall that lasts changes it.
    if (memory.fallenFor_s >= (blind ? FALL_BLIND_S : FALL_S)) memory.stage = 'past maximum';
    memory.votes = 0;
    return;
  }
  memory.fallenFor_s = 0;
  if (!motion.isMoving) return;
  vote(memory, stageByRate(memory, travel, block.force_kN), VOTES);
}
