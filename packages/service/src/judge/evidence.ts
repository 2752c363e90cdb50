import type { CampaignRows, Row } from '@provinghouse/contract';
import type { OwnStandard } from '@provinghouse/core';

/** A recording as kept: its bytes and their SHA-256. */
export interface TraceFile {
  readonly bytes: Uint8Array;
  readonly sha256: string;
}

/** All that a finding rests on: the rows of the campaign, its recordings by path, its own specifications. */
export interface Evidence {
  readonly rows: CampaignRows;
  readonly traces: ReadonlyMap<string, TraceFile>;
  readonly ownStandards: readonly OwnStandard[];
}

/** The one row of the campaign table; a record without it is broken. */
export function campaignRow(rows: CampaignRows): Row<'campaign'> {
  const row = rows.campaign[0];
  if (!row) throw new Error('the record holds a campaign without its campaign row');
  return row;
}

/** The certificate in force for an instrument on a day; undefined when none was. Without a day the newest serves. */
export function certificateOn(
  rows: CampaignRows,
  instrument: string,
  day: string | null,
): Row<'calibrations'> | undefined {
  const own = rows.calibrations
    .filter((row) => row.instrument === instrument)
    .sort((a, b) => b.calibrated_on.localeCompare(a.calibrated_on));
  if (day === null) return own[0];
  return own.find((row) => row.calibrated_on <= day && day <= row.due_on);
}
