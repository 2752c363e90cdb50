import { type Blocks, startBlocks } from './block.ts';
import { type Curve, startCurve } from './curve.ts';
import type { Expected } from './forecast-settling.ts';
import { type JumpHold, startJumpHold } from './jump-hold.ts';
import { type NoiseTrack, startNoise } from './noise-track.ts';
import type { Forecast, RuleLine, Stage, WatchEnd, WatchOptions, WatchSample } from './state.ts';

/** A stretch without readings. */
export interface Silence {
  count: number;
  longest_s: number;
  longestFrom_s: number;
}

/** Counters behind the doubts; each gives at most one sentence, so that doubts stay few however long a pull runs. */
export interface DoubtCounts {
  backwards: number;
  firstBackwards_s: number;
  readonly gaps: Silence;
  stuckFrom_s: number | null;
  stuckAt_kN: number;
  stuckFor_s: number;
  belowZeroFrom_s: number | null;
  jumpedAt_s: number | null;
  jumpedFrom_kN: number;
  jumpedTo_kN: number;
  rangePassed_s: number | null;
  fixturePassed_s: number | null;
  withdrawnParting_s: number | null;
  tableLost_s: number | null;
  roseAfterEnd_s: number | null;
}

/** Loss of over half the force, waiting to be known for a parting. */
export interface Loss {
  /** Time and force of the last reading before it. */
  from_s: number;
  from_kN: number;
  /** Where the table was; NaN where it is not read. */
  table_mm: number;
  readings: number;
  /** Stage to go back to when the force comes back. */
  stage: Stage;
  /** Lowest mean of a block since, or since a parting was taken back. */
  least_kN: number;
  /** The same, drawn up behind a force that rises; and since when it has not risen. */
  lowest_kN: number;
  stillFrom_s: number;
}

/** Everything a watch keeps of a pull: numbers, and arrays of fixed length. It can be cloned (structuredClone) and kept. */
export interface WatchMemory {
  readonly options: WatchOptions;
  readonly noise: NoiseTrack;
  readonly hold: JumpHold;
  readonly blocks: Blocks;
  curve: Curve;
  readonly lines: readonly RuleLine[];
  readonly passed: { readonly name: string; readonly force_kN: number; readonly time_s: number }[];
  readonly doubts: DoubtCounts;
  last: WatchSample | null;
  /** Usual time between readings. */
  step_s: number;
  sameForceFrom_s: number;
  /** Latest time heard of, by a reading or by a tick. */
  time_s: number;
  zero_kN: number;
  zeroBlocks: number;
  /** Where the force stood in the first half second. */
  rest_kN: number;
  stage: Stage;
  /** Blocks in a row that speak for another stage. */
  votes: number;
  maximum_kN: number | null;
  maximumAt_s: number | null;
  /** Lowest force since the maximum so far. */
  valley_kN: number;
  dips: number;
  loadedFrom_s: number | null;
  axis: 'table' | 'time';
  travelFrom: number;
  /** At the last closed block, from where loading began. */
  travel: number;
  lastBlock_kN: number;
  /** Largest mean force of a block. */
  envelope_kN: number;
  fallenFor_s: number;
  /** Lowest mean of a block since the fall, drawn up behind a force that rises again. */
  trough_kN: number;
  /** Travel where the force fell. */
  fellAtTravel: number;
  /** Stage before the force fell. */
  stageBeforeFall: Stage;
  rate_kN_per_s: number | null;
  speed_mm_per_s: number | null;
  usualSpeed_mm_per_s: number;
  /** Since then the table has moved steadily and the force was not below where it had been. */
  steadyFrom_s: number;
  /** Force per mm of table, or per second where there is no table. */
  elasticRate: number | null;
  /** The steepest that was known roughly; 0 before. */
  roughRate: number;
  /** Elastic rate and force when the rate last grew by much. */
  grownRate: number;
  grownForce_kN: number;
  tangent: number | null;
  ratio: number | null;
  /** Force and travel where the rate first fell under half of the elastic one. */
  kneeForce_kN: number | null;
  kneeTravel: number;
  loaded_s: number;
  outside_s: number;
  forecast: Forecast | null;
  expected: Expected | null;
  /** Blocks in a row for which the table had nothing to say. */
  unforecast: number;
  peakNow_kN: number;
  peakBefore_kN: number;
  peakUntil_s: number;
  loss: Loss | null;
  aliveFrom_s: number | null;
  ended: WatchEnd | null;
  endedAt_s: number | null;
}

function noDoubts(): DoubtCounts {
  return {
    backwards: 0,
    firstBackwards_s: 0,
    gaps: { count: 0, longest_s: 0, longestFrom_s: 0 },
    stuckFrom_s: null,
    stuckAt_kN: 0,
    stuckFor_s: 0,
    belowZeroFrom_s: null,
    jumpedAt_s: null,
    jumpedFrom_kN: 0,
    jumpedTo_kN: 0,
    rangePassed_s: null,
    fixturePassed_s: null,
    withdrawnParting_s: null,
    tableLost_s: null,
    roseAfterEnd_s: null,
  };
}

export function startMemory(options: WatchOptions): WatchMemory {
  return {
    options,
    noise: startNoise(),
    hold: startJumpHold(),
    blocks: startBlocks(),
    curve: startCurve(),
    lines: [...options.ruleLines].sort((a, b) => a.force_kN - b.force_kN),
    passed: [],
    doubts: noDoubts(),
    last: null,
    step_s: 0,
    sameForceFrom_s: 0,
    time_s: Number.NEGATIVE_INFINITY,
    zero_kN: 0,
    zeroBlocks: 0,
    rest_kN: 0,
    stage: 'slack',
    votes: 0,
    maximum_kN: null,
    maximumAt_s: null,
    valley_kN: Number.POSITIVE_INFINITY,
    dips: 0,
    loadedFrom_s: null,
    axis: 'time',
    travelFrom: 0,
    travel: 0,
    lastBlock_kN: 0,
    envelope_kN: Number.NEGATIVE_INFINITY,
    fallenFor_s: 0,
    trough_kN: Number.POSITIVE_INFINITY,
    fellAtTravel: 0,
    stageBeforeFall: 'slack',
    rate_kN_per_s: null,
    speed_mm_per_s: null,
    usualSpeed_mm_per_s: 0,
    steadyFrom_s: Number.NEGATIVE_INFINITY,
    elasticRate: null,
    roughRate: 0,
    grownRate: 0,
    grownForce_kN: 0,
    tangent: null,
    ratio: null,
    kneeForce_kN: null,
    kneeTravel: 0,
    loaded_s: 0,
    outside_s: 0,
    forecast: null,
    expected: null,
    unforecast: 0,
    peakNow_kN: Number.NEGATIVE_INFINITY,
    peakBefore_kN: Number.NEGATIVE_INFINITY,
    peakUntil_s: Number.NEGATIVE_INFINITY,
    loss: null,
    aliveFrom_s: null,
    ended: null,
    endedAt_s: null,
  };
}
