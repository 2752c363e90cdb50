import type { Limit } from '../../src/chain/index.ts';
import { type ExpectedInterval, expectedInterval, type GaugingQuantity } from '../../src/gauging/index.ts';
import { everyRow } from '../chain/every-row.ts';

/** What the screens know of a product: its size and the limits of its specification. */
export interface ProductLimits {
  readonly title: string;
  readonly nominalSize_mm: number;
  readonly limits: readonly Limit[];
}

/** Every size and grade of every standard of the rulebook. */
export const everyProduct: readonly ProductLimits[] = everyRow().map(({ specification }) => ({
  title: specification.title,
  nominalSize_mm: specification.nominalSize_mm,
  limits: specification.limits,
}));

export const quantitiesOfLink = [
  'diameter',
  'weldDiameter',
  'pitch',
  'innerWidth',
  'outerWidth',
  'outerLength',
] as const satisfies readonly GaugingQuantity[];

export function interval(
  product: ProductLimits,
  quantity: GaugingQuantity,
  overLinks: number | null = null,
): ExpectedInterval {
  return expectedInterval(quantity, { ...product, overLinks });
}

/** A value of the interval, by its share of the way from end to end; rounded as a calliper shows it where it stays inside. */
export function within({ lower_mm, upper_mm }: ExpectedInterval, share: number): number {
  const value = lower_mm + share * (upper_mm - lower_mm);
  const shown = Number(value.toFixed(2));
  return shown >= lower_mm && shown <= upper_mm ? shown : value;
}
