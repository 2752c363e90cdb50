import assert from 'node:assert/strict';
import { test } from 'node:test';
import fc from 'fast-check';
import { neighbourLink, nextPlace, placeOn, readLinks } from '../src/features/zinc/survey-place.ts';

const plan = { links: [1, 2, 3], readingsPerLink: 2 };
const at = (link: number, reading: number, thickness_um: number | null = 80) => ({ link, reading, thickness_um });

test('a survey goes link by link, and ends when each has its readings', () => {
  assert.deepEqual(nextPlace(plan, []), { link: 1, reading: 1 });
  assert.deepEqual(nextPlace(plan, [at(1, 1), at(1, 2), at(2, 1)]), { link: 2, reading: 2 });
  assert.equal(
    nextPlace(
      plan,
      [1, 2, 3].flatMap((link) => [at(link, 1), at(link, 2)]),
    ),
    null,
  );
});

test('a reading taken back leaves its own place to be read again', () => {
  assert.deepEqual(nextPlace(plan, [at(1, 2), at(2, 1)]), { link: 1, reading: 1 });
});

test('a reading after the pull takes a number but is no reading of thickness', () => {
  assert.deepEqual(nextPlace(plan, [at(1, 1, null), at(1, 2)]), { link: 1, reading: 3 });
  assert.deepEqual(placeOn(2, [at(2, 1), at(2, 2)]), { link: 2, reading: 3 });
});

test('following the plan fills it with no place twice', () => {
  fc.assert(
    fc.property(fc.integer({ min: 1, max: 12 }), fc.integer({ min: 1, max: 6 }), (count, readingsPerLink) => {
      const links = Array.from({ length: count }, (_, index) => index + 1);
      const taken: ReturnType<typeof at>[] = [];
      for (let place = nextPlace({ links, readingsPerLink }, taken); place !== null; ) {
        taken.push(at(place.link, place.reading));
        place = nextPlace({ links, readingsPerLink }, taken);
      }
      assert.equal(taken.length, count * readingsPerLink);
      assert.equal(new Set(taken.map(({ link, reading }) => `${link} ${reading}`)).size, taken.length);
    }),
    { seed: 7, numRuns: 30 },
  );
});

test('links are written singly or as a span; nothing means all, and one the piece has not is a fault', () => {
  assert.deepEqual(readLinks('', 3), { links: [1, 2, 3] });
  assert.deepEqual(readLinks('5, 1-3', 5), { links: [1, 2, 3, 5] });
  for (const wrong of ['6', '0', 'two', '3-1']) assert.match(JSON.stringify(readLinks(wrong, 5)), /links 1 to 5/);
});

test('the arrow keys stop at the ends of the piece', () => {
  assert.equal(neighbourLink(1, -1, 5), 1);
  assert.equal(neighbourLink(5, 1, 5), 5);
  assert.equal(neighbourLink(2, 1, 5), 3);
});
