import type { DecisionRule, MachineCheck, PullOrder } from '@provinghouse/core';

/** What a number of the plan was computed from: given, assumed or found, with the place it comes from. */
export interface PlanInput {
  readonly name: string;
  readonly value: number;
  /** Empty for a count or a share. */
  readonly unit: string;
  readonly source: string;
}

/** A number of the plan with all that is needed to compute it again. */
export interface PlannedNumber {
  /** Null where there is none; the sentence says why. */
  readonly value: number | null;
  /** Empty for a count; `share` for a number between 0 and 1. */
  readonly unit: string;
  readonly sentence: string;
  readonly method: string;
  readonly inputs: readonly PlanInput[];
}

/** `assumed`: before any pull, from what is usual; `found`: with the mean and the scatter of the counted pieces. */
export type PlanBasis = 'assumed' | 'found';

/** What is expected of the breaking force of a product. */
export interface Expectation {
  readonly basis: PlanBasis;
  readonly mean_kN: PlannedNumber;
  /** Standard deviation of the pieces over their mean, in per cent. */
  readonly cov_pct: PlannedNumber;
  /** Moves the minimum upward: the uncertainty of the rig, which all pieces share. 0 under simple acceptance. */
  readonly guard_kN: PlannedNumber;
}

/** How well the pieces prepared can show one statement about the breaking force, and how many would do. */
export interface ShowingPlan {
  /** Chance that the pieces prepared show it. */
  readonly chance: PlannedNumber;
  readonly piecesFor80: PlannedNumber;
  readonly piecesFor90: PlannedNumber;
  /** Mean breaking force the product must have for the pieces prepared to show it with a chance of 90 %. */
  readonly neededMean_kN: PlannedNumber;
}

export interface ProductPlan extends Expectation {
  /** That the mean lies above the minimum, by a one-sided confidence bound. */
  readonly mean: ShowingPlan;
  /** That 95 % of all pieces lie above the minimum, by a one-sided tolerance bound. */
  readonly share: ShowingPlan;
  /** That every piece prepared passes on its own, which is what the verdicts of the campaign ask. */
  readonly allPass: PlannedNumber;
}

/** What passes say about the share of bad pieces, whatever the distribution of the forces. */
export interface ShareBound {
  /** Share of all such pieces that hold, at least, if all prepared pieces pass. */
  readonly ifAllPass: PlannedNumber;
  /** The same from the pieces judged; null before any was. */
  readonly found: PlannedNumber | null;
  /** Pieces that must all pass to show that 95 % hold. */
  readonly piecesFor95: PlannedNumber;
}

/** The brief of one product. What it claims and every limit with its source stand in the finding, under the same code. */
export interface ProductBrief {
  readonly product: string;
  /** Pieces prepared for a pull. */
  readonly pieces: number;
  /** Pieces whose breaking force counts. */
  readonly counted: number;
  /** Least breaking force of the specification; null where it sets none. */
  readonly minimum_kN: number | null;
  /** Assumed, then found; empty without a minimum. */
  readonly plans: readonly ProductPlan[];
  readonly passes: ShareBound;
}

/** How well the mean breaking forces of products can be told apart; differences in per cent of the mean. */
export interface DifferenceBrief {
  readonly basis: PlanBasis;
  /** Of the product with the fewest. */
  readonly pieces: number;
  readonly cov_pct: PlannedNumber;
  readonly difference80_pct: PlannedNumber;
  readonly difference90_pct: PlannedNumber;
  /** Pieces of each product needed to tell a difference of 5 %. */
  readonly piecesFor80: PlannedNumber;
  readonly piecesFor90: PlannedNumber;
  /** Chance to tell a difference of 5 % when all products of the size are compared at once; null for two. */
  readonly amongAll: PlannedNumber | null;
}

export interface SizeBrief {
  readonly nominalSize_mm: number;
  readonly products: readonly string[];
  /** Empty where fewer than two products share the size. */
  readonly differences: readonly DifferenceBrief[];
}

/** A rig against the forces expected of the products of one size. */
export interface RigCheck {
  readonly nominalSize_mm: number;
  readonly basis: PlanBasis;
  readonly least_kN: number;
  readonly greatest_kN: number;
  /** Factor by which a piece may surpass the greatest force. */
  readonly margin: number;
  readonly check: MachineCheck;
}

export interface RigBrief {
  readonly rig: string;
  readonly description: string | null;
  readonly rangeMinimum_kN: number | null;
  readonly rangeMaximum_kN: number | null;
  readonly class: number | null;
  readonly resolution_kN: number | null;
  /** Newest certificate in the record. */
  readonly certificate: { readonly number: string; readonly calibratedOn: string; readonly dueOn: string } | null;
  readonly checks: readonly RigCheck[];
  /** Judged pulls made on it. */
  readonly pulls: number;
}

export interface MadePull {
  /** Place in the order of time, from 1. */
  readonly position: number;
  readonly piece: string;
  readonly product: string;
  readonly rig: string;
  readonly pulledAt: string;
}

/** The order a lot gives, beside the one the pulls were made in. */
export interface OrderBrief {
  readonly drawn: PullOrder;
  /** By the time of the pull; pulls of one time stand as in the record. */
  readonly made: readonly MadePull[];
  /** Pieces pulled without a recorded time. */
  readonly untimed: readonly string[];
  /** Neighbours of one product in the order made; null below two timed pulls. */
  readonly likeNeighbours: PlannedNumber | null;
  readonly sentences: readonly string[];
}

/** What was asked, by which rule it is decided, and what the pieces prepared can show at all. */
export interface BriefFinding {
  readonly campaign: string;
  readonly question: string;
  readonly askedBy: string | null;
  readonly laboratory: string | null;
  readonly rule: DecisionRule;
  readonly ruleSentence: string;
  readonly method: string | null;
  readonly sampling: string | null;
  /** The plan in a few sentences for a reader who is no statistician. */
  readonly answers: readonly string[];
  readonly products: readonly ProductBrief[];
  readonly sizes: readonly SizeBrief[];
  readonly rigs: readonly RigBrief[];
  /** Null without pieces. */
  readonly order: OrderBrief | null;
  /** What the plan takes for granted. */
  readonly assumptions: readonly string[];
}
