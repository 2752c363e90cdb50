/**
 * A root of a continuous function between two points of opposite sign, by inverse quadratic interpolation with bisection
 * as its safeguard (Chandrupatla 1997, Advances in Engineering Software 28, 145-149).
 *
 * @param bracket.lower, bracket.upper ends where `f` has opposite signs (an end may be the root)
 * @returns the root to `tolerance` relative to its size; null when the ends do not bracket one
 */
export function bracketedRoot(
  f: (x: number) => number,
  bracket: { readonly lower: number; readonly upper: number; readonly tolerance?: number },
): number | null {
  const tolerance = bracket.tolerance ?? 1e-12;
  let [a, b] = [bracket.upper, bracket.lower];
  let [fa, fb] = [f(a), f(b)];
  if (!(fa * fb <= 0)) return null;
  let [c, fc] = [a, fa];
  let step = 0.5;
  for (let round = 0; round < 200; round += 1) {
    const x = a + step * (b - a);
    const fx = f(x);
    if (Math.sign(fx) === Math.sign(fa)) [c, fc] = [a, fa];
    else [c, fc, b, fb] = [b, fb, a, fa];
    [a, fa] = [x, fx];
    const best = Math.abs(fa) < Math.abs(fb) ? a : b;
    const share =
      (2 * Number.EPSILON * Math.abs(best) + tolerance * Math.max(Math.abs(best), 1e-300)) / Math.abs(b - a);
    if (share > 0.5 || fa === 0 || fb === 0) return fa === 0 ? a : fb === 0 ? b : best;
    step = Math.min(Math.max(interpolated({ a, b, c, fa, fb, fc }), share), 1 - share);
  }
  return a;
}

function interpolated(at: {
  readonly a: number;
  readonly b: number;
  readonly c: number;
  readonly fa: number;
  readonly fb: number;
  readonly fc: number;
}): number {
  const { a, b, c, fa, fb, fc } = at;
  const place = (a - b) / (c - b);
  const level = (fa - fb) / (fc - fb);
  const monotone = level * level < place && (1 - level) ** 2 < 1 - place;
  if (!monotone) return 0.5;
  return (fa / (fb - fa)) * (fc / (fb - fc)) + ((c - a) / (b - a)) * (fa / (fc - fa)) * (fb / (fc - fb));
}
