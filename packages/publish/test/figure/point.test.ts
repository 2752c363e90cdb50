import assert from 'node:assert/strict';
import { describe, test } from 'node:test';
import fc from 'fast-check';
import { type Point, simplified } from '../../src/figure/point.ts';

describe('a simplified line', () => {
  test('keeps its ends and leaves no point farther off than the tolerance', () => {
    const point = fc.record({
      x: fc.double({ min: 0, max: 100, noNaN: true }),
      y: fc.double({ min: 0, max: 100, noNaN: true }),
    });
    fc.assert(
      fc.property(fc.array(point, { minLength: 2, maxLength: 40 }), (points) => {
        const kept = simplified(points, 1);
        assert.equal(kept[0], points[0]);
        assert.equal(kept.at(-1), points.at(-1));
        for (const one of points) assert.ok(distanceToLine(one, kept) <= 1 + 1e-9);
      }),
      { seed: 7, numRuns: 500 },
    );
  });

  test('a straight run is its two ends', () => {
    const straight = Array.from({ length: 50 }, (_, index) => ({ x: index, y: 2 * index }));
    assert.equal(simplified(straight, 0.01).length, 2);
  });

  test('a peak of one point stays', () => {
    const peak = [0, 0, 0, 50, 0, 0, 0].map((y, x) => ({ x, y }));
    assert.ok(simplified(peak, 0.1).some((point) => point.y === 50));
  });
});

function distanceToLine(point: Point, line: readonly Point[]): number {
  const distances = line.slice(1).flatMap((to, index) => {
    const from = line[index];
    if (from === undefined) return [];
    const length = Math.hypot(to.x - from.x, to.y - from.y);
    const steps = [0, 1].concat(
      length === 0 ? [] : [((point.x - from.x) * (to.x - from.x) + (point.y - from.y) * (to.y - from.y)) / length ** 2],
    );
    return steps
      .filter((step) => step >= 0 && step <= 1)
      .map((step) => Math.hypot(point.x - from.x - step * (to.x - from.x), point.y - from.y - step * (to.y - from.y)));
  });
  return Math.min(...distances);
}
