import type { RandomSource } from '../packages/core/src/statistics/random.ts';
import { chainForces, type ModeLaw, type PulledPiece } from '../packages/core/src/statistics/weakest-link/index.ts';

/** One row of the coverage table: what the simulated product is like. */
export interface CoverageCell {
  readonly pieces: number;
  /** Scatter of the forces of pieces that break in the bar, in per cent. */
  readonly scatter_pct: number;
  /** Share of pieces that break in the weld. */
  readonly weldShare: number;
}

/** Links of every simulated piece. */
export const pieceLinks = 5;
/** Welds scatter so many times as much as bar in the simulated products. */
export const weldScatter = 2;

/** The laws of a product whose pieces break as the cell says, bar first. */
export function productLaws(cell: CoverageCell): ModeLaw[] {
  const bar = { mode: 'bar', shape: shapeFor(cell.scatter_pct), scale_kN: 35 };
  if (cell.weldShare === 0) return [bar];
  const shape = shapeFor(weldScatter * cell.scatter_pct);
  let low = 20;
  let high = 400;
  for (let k = 0; k < 80; k++) {
    const scale_kN = (low + high) / 2;
    const weld = { mode: 'weld', shape, scale_kN };
    const share = chainForces([bar, weld], pieceLinks)?.shares.find(({ mode }) => mode === 'weld')?.share ?? 0;
    if (share > cell.weldShare) low = scale_kN;
    else high = scale_kN;
  }
  return [bar, { mode: 'weld', shape, scale_kN: (low + high) / 2 }];
}

/** The Weibull shape with this coefficient of variation. */
function shapeFor(cov_pct: number): number {
  let low = 1;
  let high = 1000;
  for (let k = 0; k < 80; k++) {
    const shape = Math.sqrt(low * high);
    const forces = chainForces([{ mode: 'bar', shape, scale_kN: 1 }], 1);
    if ((forces?.cov_pct ?? 0) > cov_pct) low = shape;
    else high = shape;
  }
  return Math.sqrt(low * high);
}

/** One campaign: pieces pulled to destruction, each broken where the least of its modes lies. */
export function drawCampaign(laws: readonly ModeLaw[], pieces: number, random: RandomSource): PulledPiece[] {
  return Array.from({ length: pieces }, () => {
    const forces = laws.map(({ mode, shape, scale_kN }) => {
      const hazard = -Math.log(1 - random.uniform()) / pieceLinks;
      return { mode, force_kN: scale_kN * Math.exp(Math.log(hazard) / shape) };
    });
    const [first, ...rest] = forces;
    if (!first) throw new Error('a product has at least one mode');
    const least = rest.reduce((a, b) => (b.force_kN < a.force_kN ? b : a), first);
    return { links: pieceLinks, force_kN: least.force_kN, mode: least.mode, isAtLeast: false };
  });
}
