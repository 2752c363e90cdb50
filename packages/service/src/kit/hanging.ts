import type { CampaignRows, HangingInCampaign, HangingReadings, HangingResults } from '@provinghouse/contract';
import { InputError } from '@provinghouse/core';
import { campaignCodes } from '@provinghouse/store';
import { rowsShown } from '../blind/rows-shown.ts';
import type { Effects } from '../effects.ts';
import { campaignRow } from '../judge/evidence.ts';

export interface HangingAsked {
  readonly instrument: string;
  /** First and last day, ISO 8601. */
  readonly from: string;
  readonly to: string;
}

/**
 * Everything read with an instrument from one day to another, both included, in all campaigns of the record. Readings without a day are
 * counted in, and told: nobody can say that they do not belong.
 * @throws InputError `entry/days-reversed`
 */
export async function hangingResults(asked: HangingAsked, { store }: Pick<Effects, 'store'>): Promise<HangingResults> {
  if (asked.from > asked.to)
    throw new InputError('entry/days-reversed', `The first day (${asked.from}) lies after the last (${asked.to}).`);
  const campaigns: HangingInCampaign[] = [];
  for (const code of await campaignCodes(store)) {
    const found = inCampaign(await rowsShown(code, { store }), asked);
    if (found.gauging.readings + found.zinc.readings + found.pulls.length > 0) campaigns.push(found);
  }
  return { ...asked, campaigns };
}

function inCampaign(rows: CampaignRows, { instrument, from, to }: HangingAsked): HangingInCampaign {
  const { campaign, title } = campaignRow(rows);
  const isMeant = (day: string | null) => day === null || (from <= day && day <= to);
  const gauging = rows.gauging
    .filter((row) => row.instrument === instrument)
    .map(({ piece, read_at }) => ({ piece, day: read_at?.slice(0, 10) ?? null }));
  // The zinc table has no column for the day of a reading.
  const zinc = rows.zinc.filter((row) => row.instrument === instrument).map(({ piece }) => ({ piece, day: null }));
  return {
    campaign,
    title,
    gauging: counted(gauging.filter(({ day }) => isMeant(day))),
    zinc: counted(zinc),
    pulls: rows.pulls
      .map(({ pull, piece, rig, pulled_at }) => ({ pull, piece, rig, on: pulled_at?.slice(0, 10) ?? null }))
      .filter(({ rig, on }) => rig === instrument && isMeant(on))
      .map(({ pull, piece, on }) => ({ pull, piece, on })),
  };
}

function counted(readings: readonly { readonly piece: string; readonly day: string | null }[]): HangingReadings {
  return {
    readings: readings.length,
    pieces: [...new Set(readings.map(({ piece }) => piece))],
    undated: readings.filter(({ day }) => day === null).length,
  };
}
