/** Where and how a link parted, as one examiner read it. */
export interface BreakReading {
  readonly link: number;
  readonly examiner: string;
  readonly position: string;
  readonly mode: string;
  readonly note: string | null;
}

export interface BreakTally {
  readonly position: string;
  readonly mode: string;
  readonly count: number;
}

/** True when the piece parted in the grips, or in a gripped link: no measure of the chain (common practice). */
export function partedInGrip(breaks: readonly BreakReading[]): boolean {
  return breaks.some((reading) => reading.position === 'in grip' || reading.link === 0);
}

/** True when examiners of the same link differ on where or how it parted. */
export function examinersDiffer(breaks: readonly BreakReading[]): boolean {
  return breaks.some((a) => breaks.some((b) => a.link === b.link && (a.position !== b.position || a.mode !== b.mode)));
}

/** Counts breaks by position and mode; the first examiner named in each list of readings speaks for the piece. */
export function tallyBreaks(pieces: readonly (readonly BreakReading[])[]): BreakTally[] {
  const counts = new Map<string, BreakTally>();
  for (const readings of pieces) {
    const first = readings[0];
    if (!first) continue;
    const key = `${first.position}|${first.mode}`;
    counts.set(key, { position: first.position, mode: first.mode, count: (counts.get(key)?.count ?? 0) + 1 });
  }
  return [...counts.values()].sort((a, b) => b.count - a.count || a.position.localeCompare(b.position, 'en'));
}
