import type { ProductFinding } from '@provinghouse/contract';
import { figureText } from '../../lib/figure.ts';

/** A nominal size is a name, not a reading: it carries no decimal places of its own. */
export function sizeText(products: readonly Pick<ProductFinding, 'nominalSize_mm'>[]): string {
  const size = products[0]?.nominalSize_mm ?? 0;
  return `${size}${figureText({ value: size, unit: 'mm' }).replace(/^[\d.]+/, '')}`;
}
