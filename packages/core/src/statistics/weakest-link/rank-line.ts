import type { PlottedBreak } from './plotting-position.ts';

export interface RankLine {
  readonly shape: number;
  readonly scale_kN: number;
  readonly method: string;
}

/**
 * Straight line through the points of a Weibull plot, as drawn by hand before likelihood was cheap: least squares of the ordinate on the force,
 * or of the force on the ordinate. For the picture and for comparison with older reports; the fits of this room are by likelihood.
 * null below two points, or when all lie at one force.
 */
export function rankLine(
  breaks: readonly PlottedBreak[],
  regress: 'ordinate on force' | 'force on ordinate',
): RankLine | null {
  const x = breaks.map((point) => Math.log(point.force_kN));
  const y = breaks.map((point) => Math.log(point.hazardOfOneLink));
  const mx = mean(x);
  const my = mean(y);
  const xx = x.reduce((sum, value) => sum + (value - mx) ** 2, 0);
  const xy = x.reduce((sum, value, k) => sum + (value - mx) * ((y[k] ?? 0) - my), 0);
  const yy = y.reduce((sum, value) => sum + (value - my) ** 2, 0);
  if (breaks.length < 2 || !(xy > 0)) return null;
  const shape = regress === 'ordinate on force' ? xy / xx : yy / xy;
  return { shape, scale_kN: Math.exp(mx - my / shape), method: `least squares of ${regress} on the Weibull plot` };
}

function mean(values: readonly number[]): number {
  return values.reduce((sum, value) => sum + value, 0) / Math.max(1, values.length);
}
