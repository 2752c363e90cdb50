import { nominalArea_mm2, type WatchOptions } from '@provinghouse/core';
import type { Cleared } from './arming.ts';

/** Seconds without a reading after which a pull is taken to have ended by silence; long enough for a network to come back. */
export const silence_s = 30;

/** How a cleared pull is watched: the rule lines of its piece, the window of its method, the range of its rig and the limit of its fixture, the drop agreed. */
export function watchOptionsOf({ campaign, piece, fixtureLimit_kN, agreedDrop }: Cleared): WatchOptions {
  return {
    ruleLines: piece.ruleLines,
    tableSpeedLimits_mm_per_min: campaign.tableSpeedLimits_mm_per_min,
    rangeMaximum_kN: campaign.rangeMaximum_kN,
    fixtureLimit_kN,
    area_mm2: nominalArea_mm2(piece.nominalSize_mm),
    agreedDrop_pct: agreedDrop === null ? null : 100 * agreedDrop,
    silence_s,
  };
}
