/** A time without readings. */
export interface CurveGap {
  readonly from_s: number;
  readonly to_s: number;
}

export interface BrokenCurve {
  readonly times_s: readonly number[];
  /** Null where the line is not to be drawn through. */
  readonly forces_kN: readonly (number | null)[];
}

/** A curve with a hole in the middle of each gap, so that no line is drawn where nothing was read. */
export function brokenAtGaps(
  times_s: readonly number[],
  forces_kN: readonly number[],
  gaps: readonly CurveGap[],
): BrokenCurve {
  const points: { readonly time_s: number; readonly force_kN: number | null }[] = times_s.map((time_s, i) => ({
    time_s,
    force_kN: forces_kN[i] ?? null,
  }));
  for (const { from_s, to_s } of gaps) {
    const time_s = (from_s + to_s) / 2;
    const at = points.findIndex((point) => point.time_s > time_s);
    if (at > 0) points.splice(at, 0, { time_s, force_kN: null });
  }
  return { times_s: points.map((point) => point.time_s), forces_kN: points.map((point) => point.force_kN) };
}
