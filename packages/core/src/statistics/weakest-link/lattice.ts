/** A prime number of points, and a multiplier with evenly spread powers (after L'Ecuyer, Mathematics of Computation 68 (1999) 249-260; from memory). */
const POINTS = 1021;
const MULTIPLIER = 76;

export const latticePoints = POINTS;

/**
 * Order in which coordinate `dimension` of a rank-one lattice of `latticePoints` points runs through the cells 0, 1, ... of that coordinate.
 * Each coordinate meets every cell once, so a table of quantiles in the middle of the cells serves all points.
 */
export function latticeCells(dimension: number): Int32Array {
  let factor = 1;
  for (let k = 0; k < dimension; k++) factor = (factor * MULTIPLIER) % POINTS;
  return Int32Array.from({ length: POINTS }, (_, index) => (index * factor) % POINTS);
}

/** The middle of cell `cell` as a probability. */
export function cellMiddle(cell: number): number {
  return (cell + 0.5) / POINTS;
}
