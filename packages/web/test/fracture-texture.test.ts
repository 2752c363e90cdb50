import assert from 'node:assert/strict';
import { test } from 'node:test';
import { tables } from '@provinghouse/contract';
import { linkPlaces } from '../src/components/link-drawing-scene.ts';
import { bandsPath, raysPath, rimPath, strokesPath } from '../src/features/breaks/fracture-texture.ts';

const disc = { x: 160, y: 46, radius: 34 };

/** All points of a path of M, L and A. */
function pointsOf(path: string): { x: number; y: number }[] {
  return [...path.matchAll(/[ML](-?[\d.]+) (-?[\d.]+)/g)].map(([, x, y]) => ({ x: Number(x), y: Number(y) }));
}

test('grain, rim, rays and bands stay on the face they are drawn on', () => {
  const paths = [
    strokesPath({ ...disc, count: 150, length: 4 }),
    rimPath(disc, 13, 40),
    raysPath(disc, 15),
    bandsPath(disc, [9, 21, 44, 60]),
  ];
  for (const path of paths) {
    assert.ok(pointsOf(path).length > 3);
    for (const { x, y } of pointsOf(path)) assert.ok(Math.hypot(x - disc.x, y - disc.y) <= disc.radius + 0.1, path);
  }
});

test('strokes stand only where they may', () => {
  const path = strokesPath({ ...disc, count: 100, length: 2, where: (x) => x > disc.x });
  for (const { x } of pointsOf(path)) assert.ok(x > disc.x - 1.1);
});

test('the places of the drawing are those of the record', () => {
  assert.deepEqual([...linkPlaces], tables.breaks.fields.position.choices);
});
