/** Beyond this a plan is no plan. */
export const mostPieces = 100_000;

/**
 * Least whole number from `from` on for which `holds` is true, where it stays true once it is; null beyond {@link mostPieces}.
 * Doubling, then halving: some 2 log2(n) calls.
 */
export function leastWhole(holds: (n: number) => boolean, from: number): number | null {
  if (holds(from)) return from;
  let no = from;
  let yes = Math.max(from + 1, 2 * from);
  while (!holds(yes)) {
    if (yes >= mostPieces) return null;
    no = yes;
    yes = Math.min(mostPieces, 2 * yes);
  }
  while (yes - no > 1) {
    const middle = Math.floor((no + yes) / 2);
    if (holds(middle)) yes = middle;
    else no = middle;
  }
  return yes;
}

/** Where a rising function crosses `target`, between `from` and `to`; null where it does not. */
export function crossing(
  f: (x: number) => number,
  target: number,
  range: { readonly from: number; readonly to: number },
): number | null {
  let { from, to } = range;
  if (f(from) > target || f(to) < target) return null;
  for (let i = 0; i < 200 && to - from > 1e-12 * Math.abs(to); i++) {
    const middle = (from + to) / 2;
    if (f(middle) < target) from = middle;
    else to = middle;
  }
  return (from + to) / 2;
}

export function requireChance(chances: Readonly<Record<string, number>>): void {
  for (const [name, value] of Object.entries(chances))
    if (!(value > 0 && value < 1)) throw new RangeError(`${name} lies between 0 and 1, not ${value}`);
}

export function requirePieces(n: number, least: number): void {
  if (!(Number.isFinite(n) && n >= least)) throw new RangeError(`at least ${least} pieces, not ${n}`);
}

/** Per cent for a sentence. */
export function percentWords(chance: number): string {
  return `${Number((100 * chance).toPrecision(3))} %`;
}
