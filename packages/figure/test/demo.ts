import { readFileSync } from 'node:fs';
import {
  breakModeOf,
  budget,
  compareGroups,
  type LongChainAsked,
  longChain,
  type PulledPiece,
  toleranceBound,
} from '@provinghouse/core';
import type { BreakingForceDots, BudgetBars, ComparisonIntervals, LongChainCurve } from '../src/index.ts';

/** Invented demonstration data, as the file itself says: measured on no chain. */
interface Truth {
  readonly pieces: readonly {
    readonly piece: string;
    readonly maximumForce_kN: number;
    readonly position: string;
    readonly clipped: boolean;
    readonly recordShowsParting: boolean;
    readonly barDiameter_mm: readonly number[];
  }[];
}

const truth: Truth = JSON.parse(
  readFileSync(new URL('../../../examples/sallow-reach-truth.json', import.meta.url), 'utf8'),
);

interface DemoPiece extends PulledPiece {
  readonly piece: string;
}

const demo: readonly { readonly product: string; readonly pieces: readonly DemoPiece[] }[] = [
  ...Map.groupBy(truth.pieces, ({ piece }) => piece.replace(/-\d+$/, '')),
].map(([product, pieces]) => ({
  product,
  pieces: pieces.map((one) => ({
    piece: one.piece,
    links: one.barDiameter_mm.length,
    force_kN: one.maximumForce_kN,
    mode: breakModeOf(one.position),
    isAtLeast: one.position === 'in grip' || one.clipped || !one.recordShowsParting,
  })),
}));

const minimum_kN = 63;

/** The three products of 10 mm: values, "at least" values, and a grip break that counts nowhere. */
export function demoDots(): BreakingForceDots {
  const products = demo.filter(({ product }) => product.endsWith('-10'));
  return {
    products: products.map(({ product, pieces }) => {
      const values = pieces.flatMap((piece) => (piece.isAtLeast ? [] : [piece.force_kN]));
      const bound = toleranceBound({ values, coverage: 0.95, confidence: 0.95, side: 'lower' });
      return {
        product,
        minimum_kN,
        acceptedFrom_kN: minimum_kN + 0.42,
        tolerance: bound.lower === null ? null : { bound: bound.lower, coverage: 0.95, confidence: 0.95 },
        pieces: pieces.map(({ piece, force_kN, mode, isAtLeast }) => ({
          piece,
          force_kN,
          use: mode === null ? ('left out' as const) : isAtLeast ? ('at least' as const) : ('value' as const),
          expandedUncertainty_kN: 0.01 * force_kN,
        })),
      };
    }),
  };
}

/** The product whose welds are weak, or another. */
export function demoChain(name = 'BIRCH-8', asked: Partial<LongChainAsked> = {}): LongChainCurve {
  const pieces = demo.find(({ product }) => product === name)?.pieces ?? [];
  return chainOf(name, pieces, asked);
}

export function chainOf(
  product: string,
  pieces: readonly PulledPiece[],
  asked: Partial<LongChainAsked> = {},
): LongChainCurve {
  const given = { pieces, pitch_mm: 24, lengths_m: [0.12, 1, 10, 100], confidence: 0.9, seed: 1, resamples: 0 };
  return { product, pieces, minimum_kN: 40.2, finding: longChain({ ...given, ...asked }) };
}

export function demoIntervals(): ComparisonIntervals {
  const groups = demo.map(({ product, pieces }) => ({
    name: product,
    values: pieces.flatMap((piece) => (piece.isAtLeast ? [] : [piece.force_kN])),
  }));
  const { pairs, confidence } = compareGroups({ groups, seed: 1, draws: 500, unit: 'kN' });
  return { quantity: 'breaking force', unit: 'kN', confidence, pairs };
}

export function demoBudget(): BudgetBars {
  const exact = { sensitivity: 1, degreesOfFreedom: Number.POSITIVE_INFINITY, distribution: 'rectangular' } as const;
  return budget({
    quantity: 'breaking force of ASH-8-1',
    unit: 'kN',
    value: 42.8,
    terms: [
      { ...exact, name: 'drift since the last calibration', standardUncertainty: 0.08, source: 'invented' },
      { ...exact, name: 'class of the rig', standardUncertainty: 0.25, source: 'invented' },
      { ...exact, name: 'resolution', standardUncertainty: 0.004, source: 'invented' },
    ],
  });
}
