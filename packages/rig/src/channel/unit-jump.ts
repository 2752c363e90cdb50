import { UNITS } from '@provinghouse/core';

/** A ratio by which a value jumps when a panel is switched from one unit to another. */
export interface UnitRatio {
  readonly ratio: number;
  readonly words: string;
}

/** Ratios nearer to 1 than this are lost among honest jumps. */
const LEAST_RATIO = 1.5;

/** Ratios to every other unit of the same kind, from the unit on the wire; those within a factor of 1.5 cannot be told and are left out. */
export function unitRatios(symbol: string): readonly UnitRatio[] {
  const from = UNITS.find((known) => known.unit.symbol === symbol)?.unit;
  if (!from) return [];
  return UNITS.filter(({ unit }) => unit.dimension === from.dimension && unit.symbol !== symbol)
    .map(({ unit }) => ({
      ratio: (from.multiply * unit.divide) / (from.divide * unit.multiply),
      words: `from ${symbol} to ${unit.symbol}`,
    }))
    .filter(({ ratio }) => ratio > LEAST_RATIO || ratio < 1 / LEAST_RATIO);
}

/** The unit ratio nearest to a jump, when it is within 2 %. */
export function ratioOfJump(ratios: readonly UnitRatio[], jump: number): UnitRatio | null {
  let best: UnitRatio | null = null;
  for (const ratio of ratios)
    if (best === null || Math.abs(jump / ratio.ratio - 1) < Math.abs(jump / best.ratio - 1)) best = ratio;
  return best && Math.abs(jump / best.ratio - 1) < 0.02 ? best : null;
}
