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

/** What the hand asks of the table at one moment. */
export interface ValveOrder {
  readonly speed_mm_per_s: number;
  /** Share of that speed left while the hand eases the valve; 1 otherwise. */
  readonly kept: number;
  /** The hand is opening the valve to the main speed, slowly. */
  readonly isOpening: boolean;
}

export interface Hand {
  readonly order: (time_s: number, force_kN: number) => ValveOrder;
}

export interface Eased {
  readonly from_s: number;
  readonly to_s: number;
  readonly from_kN: number;
}

export interface ScriptedHand extends Hand {
  /** The hesitations so far. */
  readonly eased: readonly Eased[];
}

/** Below this force the operator takes the chain for slack. */
const loadedFrom_kN = 0.4;

/** An operator who opens the valve by the book, touches it up every quarter of a minute or so, and hesitates as told. */
export function scriptedHand(hand: HandOnValve, random: Random): ScriptedHand {
  let touch = 1;
  let nextTouch_s = hand.idle_s + random.between(8, 18);
  let loaded = false;
  let opened = false;
  const pending = [...hand.hesitations];
  let easedUntil_s = Number.NEGATIVE_INFINITY;
  let kept = 1;
  const eased: Eased[] = [];
  return {
    eased,
    order: (time_s, force_kN) => {
      if (time_s > nextTouch_s) {
        touch = random.between(0.86, 1.14);
        nextTouch_s = time_s + random.between(9, 20);
      }
      if (time_s < hand.idle_s) return { speed_mm_per_s: 0, kept: 1, isOpening: false };
      loaded ||= force_kN > loadedFrom_kN;
      opened ||= force_kN > hand.openFrom_kN;
      const next = pending[0];
      if (next && force_kN > next.from_kN) {
        pending.shift();
        easedUntil_s = time_s + next.lasts_s;
        kept = next.keeps;
        eased.push({ from_s: time_s, to_s: easedUntil_s, from_kN: force_kN });
      }
      const open = opened ? hand.main_mm_per_s : loaded ? hand.takeUp_mm_per_s : hand.approach_mm_per_s;
      return {
        speed_mm_per_s: open * touch,
        kept: time_s < easedUntil_s ? kept : 1,
        isOpening: opened && time_s > easedUntil_s,
      };
    },
  };
}

/** A hand that leaves the valve where `turn` last put it. */
export interface TurnedHand extends Hand {
  readonly turn: (speed_mm_per_s: number) => void;
}

export function turnedHand(): TurnedHand {
  let speed_mm_per_s = 0;
  return {
    turn: (speed) => {
      speed_mm_per_s = speed;
    },
    order: () => ({ speed_mm_per_s, kept: 1, isOpening: false }),
  };
}
