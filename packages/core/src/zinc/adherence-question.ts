/** Bare share of the strained zone that a figure of the adherence scale stands for, %; the lower end belongs to the figure. */
export const adherenceShares_pct = [
  { least: 0, below: 0 },
  { least: 0, below: 0 },
  { least: 0, below: 0 },
  { least: 0, below: 10 },
  { least: 10, below: 50 },
  { least: 50, below: 100 },
] as const;

/**
 * What does not fit between a figure of the adherence scale (0 to 5) and the bare share of the strained zone in %; null where they fit or
 * one of them was not read. A figure of 5 stands for sheets too, however small the share.
 */
export function adherenceQuestion(adherence: number | null, flakedShare_pct: number | null): string | null {
  const share = adherence === null ? undefined : adherenceShares_pct[adherence];
  if (share === undefined || flakedShare_pct === null || adherence === 5) return null;
  if (share.below === 0) {
    return flakedShare_pct === 0
      ? null
      : `Grade ${adherence} says that nothing flaked, but ${flakedShare_pct} % of the strained zone is written as bare.`;
  }
  // What flaked off and what was rounded up to the next class may both be written at the boundary.
  if (flakedShare_pct >= share.least && flakedShare_pct <= share.below) return null;
  const means = share.least === 0 ? `under ${share.below} %` : `${share.least} to ${share.below} %`;
  return `Grade ${adherence} stands for ${means} of the strained zone, but ${flakedShare_pct} % is written as bare.`;
}
