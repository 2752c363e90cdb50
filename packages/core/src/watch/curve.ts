/**
 * The loaded part of the pull in at most 256 points, evenly spread over time: when they are all used, neighbours are joined and each
 * new point takes twice the blocks. Memory is bounded and the curve stays as fine as a share of itself.
 */
export interface Curve {
  readonly time_s: Float64Array;
  readonly force_kN: Float64Array;
  /** Travel of the table since loading began, or seconds where there is no table. */
  readonly travel: Float64Array;
  length: number;
  blocksPerPoint: number;
  blocks: number;
  sumTime: number;
  sumForce: number;
  sumTravel: number;
}

const MOST_POINTS = 256;

export function startCurve(): Curve {
  return {
    time_s: new Float64Array(MOST_POINTS),
    force_kN: new Float64Array(MOST_POINTS),
    travel: new Float64Array(MOST_POINTS),
    length: 0,
    blocksPerPoint: 1,
    blocks: 0,
    sumTime: 0,
    sumForce: 0,
    sumTravel: 0,
  };
}

function joinNeighbours(values: Float64Array): void {
  for (let i = 0; i < MOST_POINTS / 2; i++) {
    values[i] = ((values[2 * i] as number) + (values[2 * i + 1] as number)) / 2;
  }
}

/** Adds one block to the curve. */
export function addToCurve(curve: Curve, time_s: number, force_kN: number, travel: number): void {
  curve.blocks++;
  curve.sumTime += time_s;
  curve.sumForce += force_kN;
  curve.sumTravel += travel;
  if (curve.blocks < curve.blocksPerPoint) return;
  if (curve.length === MOST_POINTS) {
    joinNeighbours(curve.time_s);
    joinNeighbours(curve.force_kN);
    joinNeighbours(curve.travel);
    curve.length = MOST_POINTS / 2;
    curve.blocksPerPoint *= 2;
    return;
  }
  curve.time_s[curve.length] = curve.sumTime / curve.blocks;
  curve.force_kN[curve.length] = curve.sumForce / curve.blocks;
  curve.travel[curve.length] = curve.sumTravel / curve.blocks;
  curve.length++;
  curve.blocks = 0;
  curve.sumTime = 0;
  curve.sumForce = 0;
  curve.sumTravel = 0;
}
