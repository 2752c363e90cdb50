/** Ranks of a list and what ties do to them. */
export interface Ranks {
  /** From 1, in the order of the values; tied values share their mean rank. */
  readonly ranks: readonly number[];
  /** Sum of t^3 - t over groups of t tied values; 0 without ties. */
  readonly tieSum: number;
}

/** Mean ranks of `values`, the least first. */
export function midRanks(values: readonly number[]): Ranks {
  const order = values.map((value, index) => ({ value, index })).sort((a, b) => a.value - b.value);
  const ranks = new Array<number>(values.length).fill(0);
  let tieSum = 0;
  let start = 0;
  while (start < order.length) {
    let end = start + 1;
    while (end < order.length && order[end]?.value === order[start]?.value) end += 1;
    const tied = end - start;
    tieSum += tied ** 3 - tied;
    for (const { index } of order.slice(start, end)) ranks[index] = (start + 1 + end) / 2;
    start = end;
  }
  return { ranks, tieSum };
}
