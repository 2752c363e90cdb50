import type { BreakPosition } from './chain-link.ts';
import type { JumpThatHappened } from './chain-pull.ts';
import type { Eased } from './valve-hand.ts';

/** Where the chain gave way; null while it holds. */
export type BreakMode = 'bar' | 'weld' | 'beside weld' | 'in grip';

/** What the simulation knows and no transducer saw. Simulated: never a record of a real pull. */
export interface PracticeTruth {
  readonly isPractice: true;
  readonly seed: number;
  readonly maximumForce_kN: number;
  readonly timeAtMaximum_s: number;
  readonly partingForce_kN: number | null;
  readonly timeAtParting_s: number | null;
  readonly mode: BreakMode | null;
  readonly position: BreakPosition | null;
  /** Counted from the fixed end; 0 for the grip; null while the chain holds. */
  readonly partedLink: number | null;
  /** Least strength in the chain, at the reference rate of flow. */
  readonly weakestStrength_kN: number;
  readonly strengths_kN: readonly number[];
  /** Plastic and elastic extension of the free links over their pitches, at parting (or now, while it holds). */
  readonly elongation_pct: number;
  readonly stiffnessOfLinks_kN_per_mm: number;
  /** Up to parting: what the table put in, what was still stored, and what flow and jumps took. */
  readonly energy: { readonly work_J: number; readonly stored_J: number; readonly dissipated_J: number };
  readonly jumps: readonly JumpThatHappened[];
  readonly hesitations: readonly Eased[];
  readonly transducer: TransducerTruth;
}

/** How the transducer lies: its reading is force x (1 + gain error) + zero + drift x time, late by the lag, with noise. */
export interface TransducerTruth {
  readonly gainError_pct: number;
  readonly zero_kN: number;
  readonly zeroDrift_kN_per_s: number;
  readonly noise_kN: number;
  readonly resolution_kN: number;
  readonly lag_s: number;
  readonly rangeMaximum_kN: number;
}

/** Crown and shank are both sound bar. */
export function modeOf(position: BreakPosition): BreakMode {
  return position === 'crown' || position === 'shank' ? 'bar' : position;
}
