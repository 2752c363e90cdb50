import assert from 'node:assert/strict';
import { test } from 'node:test';
import { gaugingSchedule, placeKey } from '@provinghouse/core';
import fc from 'fast-check';
import {
  besideInGrid,
  gridOf,
  nextOpen,
  nextPiece,
  placeToRead,
  readCount,
} from '../src/features/gauging/gauging-progress.ts';

const schedule = fc
  .record({ links: fc.integer({ min: 1, max: 11 }), withCrown: fc.boolean(), again: fc.integer({ min: 0, max: 2 }) })
  .map(({ links, withCrown, again }) =>
    gaugingSchedule({
      links,
      withCrown,
      linksReadAgain: Math.min(again, links),
      quantities: ['diameter', 'weldDiameter', 'pitch', 'lengthOverLinks'],
    }),
  );
const none: ReadonlySet<string> = new Set();

test('reading what is asked next, from wherever one begins, reads every place once and then ends', () => {
  fc.assert(
    fc.property(schedule, fc.nat(), (places, start) => {
      const read = new Set<string>();
      let at: number | null = start % places.length;
      for (let step = 0; at !== null; step += 1) {
        assert.ok(step < places.length);
        const place = places[at];
        assert.ok(place && !read.has(placeKey(place)));
        read.add(placeKey(place));
        at = nextOpen({ places, read, skipped: none }, at);
      }
      assert.equal(readCount({ places, read, skipped: none }), places.length);
    }),
    { seed: 7, numRuns: 100 },
  );
});

test('a place that was passed over is not asked again', () => {
  fc.assert(
    fc.property(schedule, (places) => {
      const skipped = new Set(places.slice(0, 2).map(placeKey));
      const at = nextOpen({ places, read: none, skipped }, -1);
      assert.equal(at, places.length > 2 ? 2 : null);
    }),
    { seed: 7, numRuns: 50 },
  );
});

test('the piece to go on with is the next with an open place, round the end of the list; none when all are read', () => {
  const places = gaugingSchedule({ links: 1, quantities: ['pitch'] });
  const open = { places, read: none, skipped: none };
  const done = { ...open, read: new Set(places.map(placeKey)) };
  const pieces = [
    { piece: 'P-1', progress: open },
    { piece: 'P-2', progress: done },
    { piece: 'P-3', progress: open },
  ];
  assert.equal(nextPiece(pieces, 'P-1'), 'P-3');
  assert.equal(nextPiece(pieces, 'P-3'), 'P-1');
  assert.equal(nextPiece(pieces, null), 'P-1');
  assert.equal(nextPiece([{ piece: 'P-1', progress: done }], 'P-1'), null);
});

test('a place that is read is read again as the repeat after its last', () => {
  const [place] = gaugingSchedule({ links: 1, quantities: ['pitch'] });
  assert.ok(place);
  assert.deepEqual(placeToRead(place, []), place);
  assert.equal(placeToRead(place, [place, { ...place, repeat: 4 }]).repeat, 5);
});

test('the grid holds every place once, and a step down and up again leads back', () => {
  fc.assert(
    fc.property(schedule, (places) => {
      const grid = gridOf(places);
      const shown = [...grid.rows.flatMap(({ at }) => at.filter((one) => one !== null)), ...grid.lengths];
      assert.deepEqual(
        shown.toSorted((a, b) => a - b),
        places.map((_, at) => at),
      );
      for (const row of grid.rows.slice(0, -1))
        for (const at of row.at) if (at !== null) assert.equal(besideInGrid(grid, besideInGrid(grid, at, 1), -1), at);
    }),
    { seed: 7, numRuns: 50 },
  );
});
