import {
  breakModeOf,
  type Comparison,
  type Judgement,
  type LongChainFinding,
  type MeasuredValue,
  type PulledPiece,
  type Specification,
  type ToleranceBound,
} from '@provinghouse/core';
import type { BreakingForceDots, PieceDot, ProductDots } from './breaking-force-dots.ts';
import { type BudgetBars, budgetOfMeasured } from './budget-bars.ts';
import type { ComparisonIntervals } from './comparison-intervals.ts';
import type { LongChainCurve } from './long-chain-curve.ts';

/** What the figures take from a piece of a campaign's finding. */
export interface PieceInFinding {
  readonly piece: string;
  readonly product: string;
  readonly links: number;
  readonly pull: {
    readonly use: 'value' | 'at least' | 'none';
    readonly maximum: MeasuredValue | null;
    readonly reading: { readonly maximumForce_kN: number | null } | null;
  } | null;
  readonly breaks: readonly { readonly position: string }[];
  readonly judgements: readonly Pick<Judgement, 'limit' | 'acceptance'>[];
}

/** What the figures take from a product of it. */
export interface ProductInFinding {
  readonly product: string;
  readonly specification: Pick<Specification, 'limits'>;
  readonly inference: { readonly tolerance: Pick<ToleranceBound, 'lower' | 'coverage' | 'confidence'> };
  readonly longChain: LongChainFinding | null;
}

/** Every piece that shows a force, used or not, under its product. */
export function dotsOf(products: readonly ProductInFinding[], pieces: readonly PieceInFinding[]): BreakingForceDots {
  return { products: products.map((product) => productDots(product, ownOf(product, pieces))) };
}

function ownOf(product: ProductInFinding, pieces: readonly PieceInFinding[]): PieceInFinding[] {
  return pieces.filter((piece) => piece.product === product.product);
}

function productDots(product: ProductInFinding, own: readonly PieceInFinding[]): ProductDots {
  const { lower, coverage, confidence } = product.inference.tolerance;
  const judged = own.flatMap((piece) => piece.judgements.filter((one) => one.limit.quantity === 'breakingForce'));
  // The highest of the pieces, so that a dot beyond it clears its own for certain.
  const accepted = judged.flatMap((one) => one.acceptance.lower ?? []);
  return {
    product: product.product,
    pieces: own.flatMap(dotOf),
    minimum_kN: minimumOf(product),
    acceptedFrom_kN: accepted.length === 0 ? null : Math.max(...accepted),
    tolerance: lower === null ? null : { bound: lower, coverage, confidence },
  };
}

function minimumOf({ specification }: ProductInFinding): number | null {
  return specification.limits.find((limit) => limit.quantity === 'breakingForce')?.lower ?? null;
}

/** A pull that counts nowhere still has a force in its reading, and is shown hollow. */
function dotOf({ piece, pull }: PieceInFinding): PieceDot[] {
  const force_kN = pull?.maximum?.value ?? pull?.reading?.maximumForce_kN ?? null;
  if (pull === null || force_kN === null) return [];
  const use = pull.use === 'none' ? 'left out' : pull.use;
  return [{ piece, force_kN, use, expandedUncertainty_kN: pull.maximum?.expandedUncertainty ?? null }];
}

/** The long-chain finding of a product with its pieces; null when there is no curve. */
export function longChainOf(product: ProductInFinding, pieces: readonly PieceInFinding[]): LongChainCurve | null {
  const finding = product.longChain;
  if (finding === null || finding.curve.length === 0) return null;
  const pulled = ownOf(product, pieces).flatMap(pulledPiece);
  return { product: product.product, finding, pieces: pulled, minimum_kN: minimumOf(product) };
}

function pulledPiece({ links, pull, breaks }: PieceInFinding): PulledPiece[] {
  const maximum = pull?.maximum;
  if (!maximum) return [];
  const position = breaks[0]?.position;
  const mode = position === undefined ? null : breakModeOf(position);
  return [{ links, force_kN: maximum.value, mode, isAtLeast: maximum.isAtLeast }];
}

/** The pairs of a comparison of mean breaking forces; null when there is none. */
export function intervalsOf(statistics: Pick<Comparison, 'pairs' | 'confidence'> | null): ComparisonIntervals | null {
  if (statistics === null || statistics.pairs.length === 0) return null;
  return { quantity: 'breaking force', unit: 'kN', confidence: statistics.confidence, pairs: statistics.pairs };
}

/** The budget of the least breaking force that counts: the one a challenge would start with. Null when none carries a budget. */
export function budgetOf(
  product: Pick<ProductInFinding, 'product'>,
  pieces: readonly PieceInFinding[],
): { readonly piece: string; readonly budget: BudgetBars } | null {
  const counted = pieces.flatMap(({ piece, product: of, pull }) => {
    const maximum = of !== product.product || pull === null || pull.use === 'none' ? null : pull.maximum;
    return maximum === null ? [] : [{ piece, maximum }];
  });
  if (counted.length === 0) return null;
  const least = counted.reduce((a, b) => (b.maximum.value < a.maximum.value ? b : a));
  const budget = budgetOfMeasured(`breaking force of ${least.piece}`, least.maximum);
  return budget === null ? null : { piece: least.piece, budget };
}
