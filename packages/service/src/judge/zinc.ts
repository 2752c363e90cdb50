import type { CampaignRows } from '@provinghouse/contract';
import { surveyZinc, type ZincSurvey } from '@provinghouse/core';

/** The zinc survey over some pieces: links of different pieces keep their own local means. */
export function zincOf(rows: CampaignRows, pieces: readonly string[]): ZincSurvey | null {
  const names = new Set(pieces);
  return surveyZinc(
    rows.zinc
      .filter((row) => names.has(row.piece))
      .map((row) => ({
        place: `${row.piece}, link ${row.link}`,
        thickness_um: row.thickness_um,
        adherence: row.adherence,
        flakedShare_pct: row.flaked_share_pct,
        note: row.note,
      })),
  );
}
