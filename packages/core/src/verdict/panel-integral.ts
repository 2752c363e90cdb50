const points = 16;

/** Nodes and weights of Gauss-Legendre on -1 to 1, by Newton's method on the Legendre polynomial (Abramowitz and Stegun 25.4.29). */
const rule = Array.from({ length: points }, (_, index) => {
  let x = Math.cos((Math.PI * (index + 0.75)) / (points + 0.5));
  let slope = 1;
  for (let i = 0; i < 20; i++) {
    let [before, here] = [1, x];
    for (let k = 2; k <= points; k++) [before, here] = [here, ((2 * k - 1) * x * here - (k - 1) * before) / k];
    slope = (points * (x * here - before)) / (x * x - 1);
    x -= here / slope;
  }
  return { x, weight: 2 / ((1 - x * x) * slope * slope) };
});

/**
 * Integral of a function that is smooth between the ascending `edges`, 16 Gauss-Legendre points a panel. Edges that are not ascending
 * are sorted; fewer than two give 0.
 */
export function panelIntegral(f: (x: number) => number, edges: readonly number[]): number {
  const sorted = [...new Set(edges)].sort((a, b) => a - b);
  let total = 0;
  for (const [index, to] of sorted.entries()) {
    const from = sorted[index - 1];
    if (from === undefined) continue;
    const half = (to - from) / 2;
    for (const { x, weight } of rule) total += half * weight * f(from + half * (1 + x));
  }
  return total;
}

/** Edges from `from` to `to`, at most `width` apart. */
export function evenEdges(from: number, to: number, width: number): number[] {
  const panels = Math.max(1, Math.ceil((to - from) / width));
  return Array.from({ length: panels + 1 }, (_, index) => from + ((to - from) * index) / panels);
}
