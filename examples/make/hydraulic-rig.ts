import type { Random } from './random.ts';

/** A stretch of the pull in which the operator eases the valve, then opens it again. */
export interface Hesitation {
  /** Force at which the hand goes to the valve. */
  readonly from_kN: number;
  readonly lasts_s: number;
  /** Speed that is left, as a share of what it was. */
  readonly keeps: number;
}

export interface HandOnValve {
  /** Speed while slack is drawn in, then while the chain takes load, then for the rest: mm/s. */
  readonly approach_mm_per_s: number;
  readonly takeUp_mm_per_s: number;
  readonly main_mm_per_s: number;
  /** Force at which the operator, seeing the rise slow down, opens the valve to the main speed. */
  readonly openFrom_kN: number;
  readonly idle_s: number;
  readonly hesitations: readonly Hesitation[];
}

/** The table of a hydraulic rig; `advance` is called once a step with the force the chain now gives. */
export interface Table {
  readonly advance: (time_s: number, step_s: number, force_kN: number) => number;
  /** The hesitations so far. */
  readonly eased: readonly Eased[];
}

export interface Eased {
  readonly from_s: number;
  readonly to_s: number;
  readonly from_kN: number;
}

/**
 * A table whose speed a hand sets: it drifts as the oil warms (an Ornstein-Uhlenbeck wander), is touched up every
 * quarter of a minute or so, sags under load by leakage past the piston, and follows the valve with a lag.
 */
export function hydraulicTable(hand: HandOnValve, random: Random): Table {
  let travel_mm = 0;
  let speed = 0;
  let wander = 0;
  let touch = 1;
  let nextTouch_s = hand.idle_s + random.between(8, 18);
  let loaded = false;
  let opened = false;
  const pending = [...hand.hesitations];
  let easedUntil_s = Number.NEGATIVE_INFINITY;
  let kept = 1;
  const eased: Eased[] = [];

  const wanted = (time_s: number, force_kN: number): number => {
    if (time_s < hand.idle_s) return 0;
    loaded ||= force_kN > 0.4;
    opened ||= force_kN > hand.openFrom_kN;
    const next = pending[0];
    if (next && force_kN > next.from_kN) {
      pending.shift();
      easedUntil_s = time_s + next.lasts_s;
      kept = next.keeps;
      eased.push({ from_s: time_s, to_s: easedUntil_s, from_kN: force_kN });
    }
    const open = opened ? hand.main_mm_per_s : loaded ? hand.takeUp_mm_per_s : hand.approach_mm_per_s;
    return open * touch * (1 + wander) * (time_s < easedUntil_s ? kept : 1);
  };

  return {
    eased,
    advance: (time_s, step_s, force_kN) => {
      wander += (-wander / 6) * step_s + 0.03 * Math.sqrt(step_s) * random.normal(0, 1);
      if (time_s > nextTouch_s) {
        touch = random.between(0.86, 1.14);
        nextTouch_s = time_s + random.between(9, 20);
      }
      const target = wanted(time_s, force_kN) * (1 - 0.0012 * force_kN);
      const lag_s = opened && speed < target && time_s > easedUntil_s ? 1.1 : 0.35;
      speed += ((target - speed) * step_s) / lag_s;
      travel_mm += Math.max(0, speed) * step_s;
      return travel_mm;
    },
  };
}
