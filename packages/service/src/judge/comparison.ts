import type { Comparison, ProductFinding } from '@provinghouse/contract';
import { figure, list } from './wording.ts';

/** Products side by side, size by size. It says what the ranges show and infers nothing from a handful of pieces. */
export function compareProducts(products: readonly ProductFinding[]): Comparison[] {
  const sizes = [...new Set(products.map((product) => product.nominalSize_mm))].sort((a, b) => a - b);
  return sizes.map((size) =>
    compareSize(
      size,
      products.filter((product) => product.nominalSize_mm === size),
    ),
  );
}

function compareSize(nominalSize_mm: number, products: readonly ProductFinding[]): Comparison {
  const pairs = products.flatMap((a, index) => products.slice(index + 1).map((b) => compareRanges(a, b)));
  return {
    nominalSize_mm,
    products: products.map((product) => product.product),
    sentences: [...pairs.flatMap((sentence) => sentence ?? []), ...censoredNote(products)],
  };
}

function compareRanges(a: ProductFinding, b: ProductFinding): string | null {
  const [low, high] = (a.breakingForce.mean ?? 0) <= (b.breakingForce.mean ?? 0) ? [a, b] : [b, a];
  if (low.breakingForce.greatest === null || high.breakingForce.least === null) return null;
  const gap = high.breakingForce.least - low.breakingForce.greatest;
  const counts = `(${high.breakingForce.n} and ${low.breakingForce.n} pieces)`;
  return gap > 0
    ? `Every counted piece of ${high.product} held more than every counted piece of ${low.product}, by at least ${figure(gap, 2)} kN ${counts}.`
    : `The breaking forces of ${high.product} and ${low.product} overlap ${counts}: on these ranges neither can be called the stronger.`;
}

function censoredNote(products: readonly ProductFinding[]): string[] {
  const open = products.filter((product) => product.breakingForce.atLeast.length > 0);
  if (open.length === 0) return [];
  return [
    `${list(open.map((product) => product.product))} held at least as much as the counted pieces show: pulls known only as "at least" stand outside the ranges.`,
  ];
}
