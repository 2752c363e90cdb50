/**
 * The candidate most like `text`, or null where none is near: at most one wrong, missing, extra or swapped letter for
 * every three letters (optimal string alignment distance). Capitals do not count.
 */
export function nearest(text: string, candidates: Iterable<string>): string | null {
  let best: string | null = null;
  let least = Math.max(1, Math.floor(text.length / 3)) + 1;
  for (const candidate of candidates) {
    if (Math.abs(candidate.length - text.length) >= least) continue;
    const distance = editDistance(text.toLowerCase(), candidate.toLowerCase());
    if (distance < least) {
      best = candidate;
      least = distance;
    }
  }
  return best;
}

function editDistance(a: string, b: string): number {
  let beforePrevious: number[] = [];
  let previous = Array.from({ length: b.length + 1 }, (_, j) => j);
  for (let i = 1; i <= a.length; i += 1) {
    const current = [i];
    for (let j = 1; j <= b.length; j += 1) {
      const same = a[i - 1] === b[j - 1] ? 0 : 1;
      let cost = Math.min(at(previous, j) + 1, at(current, j - 1) + 1, at(previous, j - 1) + same);
      if (i > 1 && j > 1 && a[i - 1] === b[j - 2] && a[i - 2] === b[j - 1])
        cost = Math.min(cost, at(beforePrevious, j - 2) + 1);
      current.push(cost);
    }
    beforePrevious = previous;
    previous = current;
  }
  return at(previous, b.length);
}

function at(row: readonly number[], index: number): number {
  return row[index] ?? Number.POSITIVE_INFINITY;
}
