import { doubtWords } from './doubt-words.ts';
import type { WatchMemory } from './memory.ts';
import type { WatchState, WatchView } from './state.ts';

const NEAR_LIMIT = 0.9;

function rangeGuard(memory: WatchMemory, force_kN: number): WatchView['rangeGuard'] {
  const { rangeMaximum_kN, fixtureLimit_kN } = memory.options;
  const limit = Math.min(rangeMaximum_kN ?? Number.POSITIVE_INFINITY, fixtureLimit_kN ?? Number.POSITIVE_INFINITY);
  if (force_kN >= limit) return 'beyond';
  return force_kN >= NEAR_LIMIT * limit ? 'near' : 'clear';
}

function isSpeedInside(memory: WatchMemory, speed_mm_per_min: number | null): boolean | null {
  const window = memory.options.tableSpeedLimits_mm_per_min;
  if (!window || speed_mm_per_min === null) return null;
  return speed_mm_per_min >= window[0] && speed_mm_per_min <= window[1];
}

function nextLine(memory: WatchMemory, force_kN: number): WatchView['next'] {
  const line = memory.lines[memory.passed.length];
  return line ? { name: line.name, force_kN: line.force_kN, distance_kN: line.force_kN - force_kN } : null;
}

/**
 * What a screen shows of the pull now: a plain record that later samples do not change. Forces are as read, no zero taken off. Before the first sample
 * time and force are 0.
 */
export function viewOf(state: WatchState): WatchView {
  const { memory } = state;
  const force_kN = memory.last?.force_kN ?? 0;
  const speed = memory.speed_mm_per_s === null ? null : Math.abs(memory.speed_mm_per_s) * 60;
  const window = memory.options.tableSpeedLimits_mm_per_min;
  const accepted = memory.ended === 'parted' || memory.ended === 'agreed drop';
  return {
    time_s: memory.last === null ? 0 : memory.time_s,
    force_kN,
    stage: memory.stage,
    maximumSoFar_kN: memory.maximum_kN,
    timeOfMaximumSoFar_s: memory.maximumAt_s,
    maximumAccepted_kN: accepted ? memory.maximum_kN : null,
    rateOfRise_kN_per_s: memory.rate_kN_per_s,
    rateOverElastic: memory.ratio,
    tableSpeed_mm_per_min: speed,
    isSpeedInside: isSpeedInside(memory, speed),
    shareOutsideSpeed: window && memory.loaded_s > 0 ? memory.outside_s / memory.loaded_s : null,
    passed: [...memory.passed],
    next: nextLine(memory, force_kN),
    rangeGuard: rangeGuard(memory, force_kN),
    forecast: memory.forecast,
    dips: memory.dips,
    ended: memory.ended,
    doubts: doubtWords(memory),
  };
}
