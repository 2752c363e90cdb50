import { type Block, blockBack } from './block.ts';
import { addToCurve, startCurve } from './curve.ts';
import { updateElasticRate } from './elastic-rate.ts';
import { end } from './ending.ts';
import { forecastOf } from './forecast.ts';
import { loadLevel_kN } from './load-level.ts';
import type { WatchMemory } from './memory.ts';
import { followRest, isPartingFinal } from './parting-watch.ts';
import { recentSlopes } from './recent-slope.ts';
import { followStage, motionOf } from './stage.ts';

const RATE_S = 1;
/** The tangent is taken over this share of the loaded time, within these bounds. */
const TANGENT_SHARE = 0.06;
const TANGENT_MOST_S = 6;
const KNEE = 0.5;
const DROP_S = 1;
const REST_BLOCKS = 5;
/** Times the level at which a piece carries load. */
const BELOW_TIMES = 4;

/** The zero follows the force while the piece is slack, but not one that runs far below zero: that is a swapped sign. */
function followSlackLevel(memory: WatchMemory, block: Block): void {
  const below = memory.rest_kN - block.force_kN;
  if (memory.zeroBlocks >= REST_BLOCKS && block.force_kN < 0 && below > BELOW_TIMES * loadLevel_kN(memory)) {
    memory.doubts.belowZeroFrom_s ??= block.time_s;
    return;
  }
  memory.zeroBlocks++;
  memory.zero_kN += (block.force_kN - memory.zero_kN) / Math.min(memory.zeroBlocks, 50);
  if (memory.zeroBlocks <= REST_BLOCKS) memory.rest_kN = memory.zero_kN;
}

function startLoaded(memory: WatchMemory, block: Block): void {
  memory.loadedFrom_s = block.time_s;
  memory.axis = Number.isNaN(block.table_mm) ? 'time' : 'table';
  memory.travelFrom = memory.axis === 'table' ? block.table_mm : block.time_s;
}

function travelOf(memory: WatchMemory, block: Block): number {
  return memory.axis === 'table' ? Math.abs(block.table_mm - memory.travelFrom) : block.time_s - memory.travelFrom;
}

function followSpeed(memory: WatchMemory, dt_s: number): void {
  const window = memory.options.tableSpeedLimits_mm_per_min;
  const speed = memory.speed_mm_per_s;
  if (speed === null) return;
  const size = Math.abs(speed);
  // A hand that eases the valve does so for seconds; a speed that stays is the new usual one.
  const slow_s = memory.stage === 'take-up' ? 1 : 20;
  const pace_s = size > memory.usualSpeed_mm_per_s ? 2 : slow_s;
  memory.usualSpeed_mm_per_s += (size - memory.usualSpeed_mm_per_s) * Math.min(1, dt_s / pace_s);
  memory.loaded_s += dt_s;
  if (window && (60 * size < window[0] || 60 * size > window[1])) memory.outside_s += dt_s;
}

function followTangent(memory: WatchMemory, block: Block, travel: number): void {
  const loaded_s = block.time_s - (memory.loadedFrom_s ?? block.time_s);
  const stretch_s = Math.min(TANGENT_MOST_S, Math.max(RATE_S, TANGENT_SHARE * loaded_s));
  const { isMoving, isFallen } = motionOf(memory, block);
  if (!isMoving || isFallen) memory.steadyFrom_s = block.time_s;
  const slopes = recentSlopes(memory.blocks, stretch_s);
  const slope = memory.axis === 'table' ? slopes.force_kN_per_mm : slopes.force_kN_per_s;
  memory.tangent = block.time_s - memory.steadyFrom_s >= stretch_s ? slope : null;
  if (memory.kneeForce_kN === null) updateElasticRate(memory);
  memory.ratio = memory.tangent !== null && memory.elasticRate ? memory.tangent / memory.elasticRate : null;
  if (memory.kneeForce_kN === null && memory.stage === 'plastic' && memory.ratio !== null && memory.ratio < KNEE) {
    memory.kneeForce_kN = block.force_kN;
    memory.kneeTravel = travel;
  }
}

/** A fall by the agreed share that lasts a second, the table moving, and does not rise again ends the pull. */
function followDrop(memory: WatchMemory, block: Block): void {
  const { agreedDrop_pct } = memory.options;
  if (agreedDrop_pct === null || memory.stage === 'slack' || memory.stage === 'take-up') return;
  const top = (memory.maximum_kN ?? 0) - memory.zero_kN;
  const isBelow = block.force_kN - memory.zero_kN <= (1 - agreedDrop_pct / 100) * top;
  if (!isBelow || memory.loss || memory.stage !== 'past maximum' || memory.fallenFor_s < DROP_S) return;
  end(memory, 'agreed drop', block.time_s);
}

/** What caught for a moment has let go: what was learned of it does not hold for the piece. */
function forgetSnag(memory: WatchMemory): void {
  memory.curve = startCurve();
  memory.elasticRate = null;
  memory.roughRate = 0;
  memory.grownRate = 0;
  memory.grownForce_kN = 0;
  memory.envelope_kN = Number.NEGATIVE_INFINITY;
  memory.loaded_s = 0;
  memory.outside_s = 0;
}

function followSlackBlock(memory: WatchMemory, block: Block): void {
  followStage(memory, block, 0, 0);
  if (memory.stage === 'slack') followSlackLevel(memory, block);
  else startLoaded(memory, block);
}

function followLoadedBlock(memory: WatchMemory, block: Block, dt_s: number): void {
  const travel = travelOf(memory, block);
  memory.travel = travel;
  memory.lastBlock_kN = block.force_kN;
  addToCurve(memory.curve, block.time_s, block.force_kN, travel);
  if (!memory.loss) followSpeed(memory, dt_s);
  followTangent(memory, block, travel);
  followStage(memory, block, travel, dt_s);
  if (memory.stage === 'slack') {
    forgetSnag(memory);
    return;
  }
  followDrop(memory, block);
  memory.envelope_kN = Math.max(memory.envelope_kN, block.force_kN);
  memory.forecast = memory.ended === null ? forecastOf(memory, dt_s) : null;
}

/** Everything that follows from a closed block: rates, speed, stage, ends, forecast. Bounded work, whatever the rate of readings. */
export function followBlock(memory: WatchMemory): void {
  const block = blockBack(memory.blocks, 0);
  if (!block) return;
  const before = blockBack(memory.blocks, 1);
  const dt_s = before ? Math.min(block.time_s - before.time_s, memory.options.silence_s) : 0;
  followRest(memory, block);
  const { force_kN_per_s, table_mm_per_s } = recentSlopes(memory.blocks, RATE_S);
  memory.rate_kN_per_s = force_kN_per_s;
  memory.speed_mm_per_s = table_mm_per_s;
  if (memory.stage === 'slack') followSlackBlock(memory, block);
  else if (memory.axis === 'table' && Number.isNaN(block.table_mm)) memory.doubts.tableLost_s ??= block.time_s;
  else followLoadedBlock(memory, block, dt_s);
  if (isPartingFinal(memory, block)) end(memory, 'parted', memory.loss?.from_s ?? block.time_s);
}
