import type { Limit } from '../chain/specification.ts';
import { isOutside } from './question-words.ts';
import type { GaugingInput } from './reading.ts';

/** How a reading lies to its limit. */
export interface ReadingSide {
  readonly limit: Limit;
  /** `above, zinc on it`: above as read, but over zinc whose thickness nobody knows yet. */
  readonly side: 'inside' | 'below' | 'above' | 'above, zinc on it';
  /** What is held against the limit: the reading, less the zinc on a bar. */
  readonly steel_mm: number;
}

/** What {@link readingSide} works from. */
export interface SideInputs {
  /** Limits of the specification; the first of the quantity is taken. */
  readonly limits: readonly Limit[];
  /** What comes off a diameter for zinc, mm (twice its thickness): 0 for bare steel, null where it is not known. */
  readonly zincOnBar_mm: number | null;
}

/**
 * On which side of its limit a reading is, as the verdict takes it: zinc comes off a bar first where its thickness is known.
 * One reading, without its uncertainty: a mark beside it, never a verdict. Null where nothing limits the quantity.
 */
export function readingSide(
  { quantity, overLinks, value_mm }: Pick<GaugingInput, 'quantity' | 'overLinks' | 'value_mm'>,
  { limits, zincOnBar_mm }: SideInputs,
): ReadingSide | null {
  const limit = limits.find((one) => one.quantity === quantity && (one.links === null || one.links === overLinks));
  if (limit === undefined || (limit.lower === null && limit.upper === null)) return null;
  const isOfBar = quantity === 'diameter' || quantity === 'weldDiameter';
  const steel_mm = value_mm - (isOfBar ? (zincOnBar_mm ?? 0) : 0);
  const side = isOutside(steel_mm, limit);
  const isZincOpen = isOfBar && zincOnBar_mm === null && side === 'above';
  return { limit, side: isZincOpen ? 'above, zinc on it' : (side ?? 'inside'), steel_mm };
}
