import type { WatchOptions, WatchSample } from '@provinghouse/core';
import { type PracticePull, practicePull, variedPractice } from '@provinghouse/rig/practice';

/** A pull to replay, with what is known of it. Forces as the transducer would show them without noise. */
export interface KnownPull {
  readonly name: string;
  readonly rate_Hz: number;
  readonly samples: readonly WatchSample[];
  readonly maximum_kN: number;
  readonly timeOfMaximum_s: number;
  readonly timeOfParting_s: number | null;
}

const RATES_HZ = [10, 25, 50, 100] as const;

/** A varied practice pull of this seed, at 10, 25, 50 or 100 readings a second in turn unless said. */
export function variedPull(seed: number, rate_Hz: number = RATES_HZ[seed % RATES_HZ.length] ?? 100): KnownPull {
  return knownPull(`seed ${seed}`, rate_Hz, practicePull({ ...variedPractice(seed), rate_Hz }));
}

/** A practice pull with what its simulator knows. */
export function knownPull(name: string, rate_Hz: number, { samples, truth }: PracticePull): KnownPull {
  const { gainError_pct, zero_kN, zeroDrift_kN_per_s } = truth.transducer;
  const gain = 1 + gainError_pct / 100;
  return {
    name,
    rate_Hz,
    samples,
    maximum_kN: truth.maximumForce_kN * gain + zero_kN + zeroDrift_kN_per_s * truth.timeAtMaximum_s,
    timeOfMaximum_s: truth.timeAtMaximum_s,
    timeOfParting_s: truth.timeAtParting_s,
  };
}

/** A watch that is told nothing of what is pulled. */
export const plainOptions: WatchOptions = {
  ruleLines: [],
  tableSpeedLimits_mm_per_min: null,
  rangeMaximum_kN: null,
  fixtureLimit_kN: null,
  area_mm2: null,
  agreedDrop_pct: null,
  silence_s: 2,
};
