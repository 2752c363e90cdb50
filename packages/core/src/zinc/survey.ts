import { summarise } from '../statistics/summary.ts';

export interface ZincReading {
  /** What shares a local mean: a link of a piece. */
  readonly place: string;
  readonly thickness_um: number | null;
  readonly adherence: number | null;
  readonly flakedShare_pct: number | null;
  readonly note: string | null;
}

export interface ZincSurvey {
  readonly readings: number;
  readonly mean_um: number | null;
  /** Standard uncertainty of the mean from the scatter of the readings alone; null below two readings. */
  readonly standardUncertainty_um: number | null;
  readonly leastLinkMean_um: number | null;
  /** Highest figure of the adherence scale seen after deformation (0 no change to 5 over half bare or sheets). */
  readonly worstAdherence: number | null;
  readonly greatestFlakedShare_pct: number | null;
}

/** What adherence figures mean. A described behaviour, not a nonconformity, unless the campaign's specification says so. */
export const adherenceWords = [
  'no change',
  'fine crazing',
  'cracked but adherent',
  'flakes under 10 % of the strained zone',
  'flakes 10 to 50 % of the strained zone',
  'flakes over 50 %, or sheets',
] as const;

/** Thickness by link and behaviour after deformation. Null when nothing was recorded. Readings without a thickness do not count in the mean. */
export function surveyZinc(readings: readonly ZincReading[]): ZincSurvey | null {
  if (readings.length === 0) return null;
  const thick = readings.filter((reading) => reading.thickness_um !== null);
  const summary = summarise(thick.map((reading) => reading.thickness_um ?? 0));
  const linkMeans = [...Map.groupBy(thick, (reading) => reading.place).values()].map(
    (group) => summarise(group.map((reading) => reading.thickness_um ?? 0)).mean ?? 0,
  );
  return {
    readings: thick.length,
    mean_um: summary.mean,
    standardUncertainty_um: summary.sd === null ? null : summary.sd / Math.sqrt(summary.n),
    leastLinkMean_um: linkMeans.length === 0 ? null : Math.min(...linkMeans),
    worstAdherence: greatest(readings.map((reading) => reading.adherence)),
    greatestFlakedShare_pct: greatest(readings.map((reading) => reading.flakedShare_pct)),
  };
}

function greatest(values: readonly (number | null)[]): number | null {
  const known = values.filter((value) => value !== null);
  return known.length === 0 ? null : Math.max(...known);
}
