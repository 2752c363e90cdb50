/** A place in a figure, in points from its top left corner. */
export interface Point {
  readonly x: number;
  readonly y: number;
}

/**
 * Leaves out the points of a line that lie nearer than `tolerance` to the line through those kept (Ramer 1972, Douglas
 * and Peucker 1973). Ends stay; at a tenth of a point the drawing is the same on paper and a tenth of the size.
 */
export function simplified(points: readonly Point[], tolerance: number): readonly Point[] {
  if (points.length < 3) return points;
  const kept = new Uint8Array(points.length);
  kept[0] = 1;
  kept[points.length - 1] = 1;
  const open = [{ first: 0, last: points.length - 1 }];
  for (let span = open.pop(); span !== undefined; span = open.pop()) {
    const farthest = farthestFrom(points, span);
    if (farthest.distance <= tolerance) continue;
    kept[farthest.index] = 1;
    open.push({ first: span.first, last: farthest.index }, { first: farthest.index, last: span.last });
  }
  return points.filter((_, index) => kept[index] === 1);
}

function farthestFrom(
  points: readonly Point[],
  span: { readonly first: number; readonly last: number },
): { readonly index: number; readonly distance: number } {
  const from = points[span.first];
  const to = points[span.last];
  let index = span.first;
  let distance = -1;
  if (from === undefined || to === undefined) return { index, distance };
  for (let candidate = span.first + 1; candidate < span.last; candidate += 1) {
    const point = points[candidate];
    const away = point === undefined ? -1 : distanceTo(point, from, to);
    if (away > distance) {
      index = candidate;
      distance = away;
    }
  }
  return { index, distance };
}

/** Distance of a point from the segment between two others: a curve may turn back on itself. */
function distanceTo(point: Point, from: Point, to: Point): number {
  const dx = to.x - from.x;
  const dy = to.y - from.y;
  const squared = dx * dx + dy * dy;
  const along = squared === 0 ? 0 : ((point.x - from.x) * dx + (point.y - from.y) * dy) / squared;
  const share = Math.min(Math.max(along, 0), 1);
  return Math.hypot(point.x - from.x - share * dx, point.y - from.y - share * dy);
}
