import type { RuleLine } from '@provinghouse/core';

/** What must be acknowledged, each by its name, before a pull is armed (trade practice: recoil, missiles, noise, stored energy). */
export const cautions = [
  'guards closed',
  'nobody in line with the chain',
  'eyes and ears protected',
  'stored energy',
] as const;

export type Caution = (typeof cautions)[number];

/** A piece as the rig needs to know it. */
export interface PieceAtRig {
  readonly piece: string;
  readonly nominalSize_mm: number;
  readonly links: number;
  /** Least breaking force asked for or claimed; null where the specification knows none. */
  readonly minimumForce_kN: number | null;
  /** What the rig must be good for: 1.5 times the least breaking force; null where that is not known. */
  readonly expectedForce_kN: number | null;
  readonly ruleLines: readonly RuleLine[];
  readonly isPulled: boolean;
}

/** What one campaign says of the rig, and what it has to pull on it. */
export interface CampaignAtRig {
  readonly campaign: string;
  readonly title: string;
  readonly marking: string | null;
  /** Nothing was pulled yet and the plan is not frozen: a pull would come before it is on record what was planned. */
  readonly isPlanOpen: boolean;
  readonly rangeMinimum_kN: number | null;
  readonly rangeMaximum_kN: number | null;
  readonly class: number | null;
  /** Newest certificate; null where there is none. */
  readonly certificate: {
    readonly number: string;
    readonly calibratedOn: string;
    readonly dueOn: string;
    readonly isInForce: boolean;
  } | null;
  readonly tableSpeedLimits_mm_per_min: readonly [number, number] | null;
  readonly people: readonly { readonly person: string; readonly name: string }[];
  readonly pieces: readonly PieceAtRig[];
}

/** The pull a rig is armed for, runs, or ran last. */
export interface PullAtRig {
  readonly state: 'armed' | 'running' | 'sealing' | 'ended';
  readonly pull: string;
  readonly campaign: string;
  readonly piece: string;
  readonly isPractice: boolean;
  readonly ruleLines: readonly RuleLine[];
  readonly tableSpeedLimits_mm_per_min: readonly [number, number] | null;
  readonly rangeMaximum_kN: number | null;
  readonly armedAt: string;
  /** What kept the recording from being sealed into the record; null when nothing did. The recording is on disc all the same. */
  readonly fault: string | null;
  /** Seconds without a reading after which the recording is closed. */
  readonly silence_s: number;
}

/**
 * How a recording came to wait: it broke off (the process or the power went away), the program was stopped while it ran, the rig fell silent,
 * or it ended and could not be kept.
 */
export type UnfinishedHow = 'broken off' | 'stopped' | 'silence' | 'ended';

/** A recording that waits: to be gone on with, or to be kept as it is. */
export interface UnfinishedPull {
  readonly spool: string;
  readonly pull: string;
  readonly campaign: string;
  readonly piece: string;
  readonly isPractice: boolean;
  readonly startedAt: string;
  readonly samples: number;
  readonly maximum_kN: number | null;
  readonly how: UnfinishedHow;
  /** Time of its last sample; null where it holds none. */
  readonly last_s: number | null;
  readonly hasParted: boolean;
  /** False where it ended, where the piece has parted, and where nothing was recorded. */
  readonly canGoOn: boolean;
}

/** All that the screen of a rig stands on. */
export interface RigDesk {
  readonly rig: string;
  /** Where its readings come from. */
  readonly source: string;
  readonly isPractice: boolean;
  /** Force its fixture must not see; null where none is stated. */
  readonly fixtureLimit_kN: number | null;
  /** Fall from the maximum that ends a pull although nothing parted, as a share of it; null where none is agreed. */
  readonly agreedDrop: number | null;
  readonly campaigns: readonly CampaignAtRig[];
  readonly pull: PullAtRig | null;
  readonly unfinished: readonly UnfinishedPull[];
}

/** What is said to arm a pull. */
export interface ArmInput {
  readonly campaign: string;
  readonly piece: string;
  /** The code on the tag of the piece in the rig, typed or scanned. */
  readonly confirmed: string;
  readonly operator: string | null;
  readonly cautions: readonly string[];
}

/** What is said to go on with a recording that waits: the piece still stands in the rig, and a loaded rig is approached. */
export interface GoOnInput {
  readonly spool: string;
  /** The code on the tag of the piece in the rig, typed or scanned. */
  readonly confirmed: string;
  readonly cautions: readonly string[];
}
