import type { Row } from './package/tables.ts';

/** Instruments that stand in campaigns and not in the book of the bench, each as its newest campaign has it. */
export interface KitInCampaigns {
  readonly instruments: readonly KitInCampaign[];
}

export interface KitInCampaign {
  readonly instrument: Row<'instruments'>;
  readonly calibrations: readonly Row<'calibrations'>[];
  readonly campaigns: readonly string[];
}

/** What was read with an instrument in a stretch of time: what must be looked at again when it is found out of tolerance. */
export interface HangingResults {
  readonly instrument: string;
  /** First and last day, ISO 8601. */
  readonly from: string;
  readonly to: string;
  readonly campaigns: readonly HangingInCampaign[];
}

export interface HangingInCampaign {
  readonly campaign: string;
  readonly title: string;
  readonly gauging: HangingReadings;
  readonly zinc: HangingReadings;
  readonly pulls: readonly { readonly pull: string; readonly piece: string; readonly on: string | null }[];
}

export interface HangingReadings {
  readonly readings: number;
  readonly pieces: readonly string[];
  /** Of the readings, those whose day nobody wrote down: they may or may not belong here. */
  readonly undated: number;
}
