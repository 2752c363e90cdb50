/** Gives readings that came in one piece a time each. */
export interface ArrivalSpread {
  /** Times of `count` readings that arrived together, the last at the arrival; never before a time given earlier. */
  times(count: number, arrival_s: number): Float64Array;
}

/**
 * For sources without a clock. Readings in one chunk are spread evenly from the arrival before; after a stall they are laid at their usual
 * distance instead, ending at the arrival. The time of one reading is then known to about one chunk.
 */
export function arrivalSpread(): ArrivalSpread {
  let last_s: number | null = null;
  let period_s: number | null = null;
  return {
    times(count, arrival_s) {
      const end_s = Math.max(arrival_s, last_s ?? arrival_s);
      const span_s = last_s === null ? 0 : end_s - last_s;
      const isStall = period_s !== null && span_s > 5 * period_s * count + 0.02;
      const from_s = isStall && period_s !== null ? end_s - Math.min(period_s * count, span_s) : end_s - span_s;
      if (last_s !== null && !isStall) {
        const seen_s: number = span_s / count;
        period_s = period_s === null ? seen_s : period_s + 0.1 * (seen_s - period_s);
      }
      last_s = end_s;
      const step_s = (end_s - from_s) / count;
      return Float64Array.from({ length: count }, (_, i) => (i === count - 1 ? end_s : from_s + step_s * (i + 1)));
    },
  };
}
