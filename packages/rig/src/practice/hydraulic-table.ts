import type { Random } from './random.ts';
import type { Hand } from './valve-hand.ts';

/** The table of a hydraulic rig; `advance` is called once a step with the force the chain now gives. Travel in mm. */
export interface Table {
  readonly advance: (time_s: number, step_s: number, force_kN: number) => number;
}

export interface TableCharacter {
  /** Share of the speed lost to leakage past the piston for each kN. */
  readonly sag_per_kN: number;
  /** How strongly the speed wanders as the oil warms: relative, per square root of a second. */
  readonly wander: number;
  /** Damping of the speed's swing after the valve was turned (1: none, 0.4: overshoots by a quarter); null: it only lags. */
  readonly damping: number | null;
}

const wanderMemory_s = 6;
/** Natural frequency of oil column and table, rad/s. */
const swing_per_s = 6;

/**
 * A table whose speed a hand sets: it drifts as the oil warms (an Ornstein-Uhlenbeck wander), sags under load by
 * leakage, and follows the valve late, or late and with a swing. It never runs back.
 */
export function hydraulicTable(hand: Hand, random: Random, character: TableCharacter): Table {
  let travel_mm = 0;
  let speed = 0;
  let change = 0;
  let wander = 0;
  return {
    advance: (time_s, step_s, force_kN) => {
      wander += (-wander / wanderMemory_s) * step_s + character.wander * Math.sqrt(step_s) * random.normal(0, 1);
      const order = hand.order(time_s, force_kN);
      const target = order.speed_mm_per_s * (1 + wander) * order.kept * (1 - character.sag_per_kN * force_kN);
      if (character.damping === null) {
        const lag_s = order.isOpening && speed < target ? 1.1 : 0.35;
        speed += ((target - speed) * step_s) / lag_s;
      } else {
        change += (swing_per_s ** 2 * (target - speed) - 2 * character.damping * swing_per_s * change) * step_s;
        speed = Math.max(0, speed + change * step_s);
      }
      travel_mm += Math.max(0, speed) * step_s;
      return travel_mm;
    },
  };
}
