import { meanBetween } from './mean.ts';

/** Block means of the loaded stretch: at most some thousands of points, so that what follows costs the same at 10 Hz and at 10 kHz. */
export interface Coarse {
  readonly force_kN: Float64Array;
  readonly travel_mm: Float64Array;
  /** Samples in a block. */
  readonly block: number;
  /** First sample of the first block. */
  readonly from: number;
}

const MOST_BLOCKS = 3000;

function blockMeans(values: Float64Array, from: number, block: number, count: number): Float64Array {
  const means = new Float64Array(count);
  for (let k = 0; k < count; k++) means[k] = meanBetween(values, from + k * block, from + (k + 1) * block);
  return means;
}

/** Means over equal blocks of samples [from, to]; blocks whose travel is missing are left out. Null without travel. */
export function coarsen(
  { force_kN, travel_mm }: { readonly force_kN: Float64Array; readonly travel_mm: Float64Array | null },
  from: number,
  to: number,
): Coarse | null {
  const length = to - from + 1;
  if (!travel_mm || length < 2) return null;
  const block = Math.max(1, Math.ceil(length / MOST_BLOCKS));
  const count = Math.floor(length / block);
  const travel = blockMeans(travel_mm, from, block, count);
  return {
    force_kN: blockMeans(force_kN, from, block, count).filter((_, k) => !Number.isNaN(travel[k])),
    travel_mm: travel.filter((value) => !Number.isNaN(value)),
    block,
    from,
  };
}
