import type { GaugingQuantity } from './reading.ts';

/** A band of values in nominal sizes. */
export interface Band {
  readonly least: number;
  readonly greatest: number;
}

/**
 * Where a quantity lies for any round steel link chain of the rulebook, in nominal sizes: short link to long link.
 * `lengthOverLinks` is meant for one link. Wide, and common practice: a value outside is a slip of the pen, not a chain out
 * of tolerance.
 */
export const plausibleBands: Readonly<Record<GaugingQuantity, Band>> = {
  diameter: { least: 0.75, greatest: 1.25 },
  weldDiameter: { least: 0.75, greatest: 1.6 },
  pitch: { least: 2.4, greatest: 9 },
  innerWidth: { least: 1, greatest: 2.2 },
  outerWidth: { least: 2.9, greatest: 5 },
  outerLength: { least: 4.2, greatest: 11 },
  lengthOverLinks: { least: 2.4, greatest: 9 },
};
