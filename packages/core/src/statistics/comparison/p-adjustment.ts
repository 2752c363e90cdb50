/** Each p times the number of tests, at most 1 (Bonferroni). NaN or values outside 0..1 throw a RangeError. */
export function bonferroni(ps: readonly number[]): number[] {
  refuse(ps);
  return ps.map((p) => Math.min(1, p * ps.length));
}

/**
 * Step-down adjustment: never below Bonferroni in power, and holds the same family error
 * (Holm 1979, Scandinavian Journal of Statistics 6, 65-70). The order of the input is kept.
 */
export function holm(ps: readonly number[]): number[] {
  refuse(ps);
  const order = ps.map((p, index) => ({ p, index })).sort((a, b) => a.p - b.p);
  const adjusted = new Array<number>(ps.length).fill(0);
  let floor = 0;
  order.forEach(({ p, index }, place) => {
    floor = Math.min(1, Math.max(floor, p * (ps.length - place)));
    adjusted[index] = floor;
  });
  return adjusted;
}

function refuse(ps: readonly number[]): void {
  if (!ps.every((p) => p >= 0 && p <= 1)) throw new RangeError('a p value lies between 0 and 1');
}
