import assert from 'node:assert/strict';
import { test } from 'node:test';
import fc from 'fast-check';
import {
  type GaugingQuantity,
  gaugingSchedule,
  lengthsToGauge,
  placeKey,
  quantitiesToGauge,
} from '../../src/gauging/index.ts';
import { everyProduct } from './product-limits.ts';

const all: readonly GaugingQuantity[] = [
  'diameter',
  'weldDiameter',
  'pitch',
  'innerWidth',
  'outerWidth',
  'outerLength',
  'lengthOverLinks',
];

const asked = fc
  .integer({ min: 1, max: 40 })
  .chain((links) =>
    fc.record({ links: fc.constant(links), linksToGauge: fc.integer({ min: 1, max: links }), withCrown: fc.boolean() }),
  )
  .chain((inputs) =>
    fc.record({ inputs: fc.constant(inputs), linksReadAgain: fc.integer({ min: 0, max: inputs.linksToGauge }) }),
  )
  .map(({ inputs, linksReadAgain }) => ({ ...inputs, linksReadAgain, quantities: all }));

test('no place comes twice, every link is one of the piece, and as many are gauged as were asked for', () => {
  fc.assert(
    fc.property(asked, (inputs) => {
      const places = gaugingSchedule(inputs);
      assert.equal(new Set(places.map(placeKey)).size, places.length);
      const links = new Set(places.flatMap(({ link }) => link ?? []));
      assert.equal(links.size, inputs.linksToGauge);
      for (const link of links) assert.ok(link >= 1 && link <= inputs.links);
      const again = new Set(places.flatMap(({ link, repeat }) => (repeat === 2 && link !== null ? [link] : [])));
      assert.equal(again.size, inputs.linksReadAgain);
    }),
    { seed: 7, numRuns: 300 },
  );
});

test('links come in order from the fixed end, the ends among them, and a second time only after all', () => {
  fc.assert(
    fc.property(asked, (inputs) => {
      const places = gaugingSchedule(inputs);
      for (const repeat of [1, 2]) {
        const links = places.flatMap((place) => (place.repeat === repeat && place.link !== null ? [place.link] : []));
        assert.deepEqual(
          links,
          [...links].sort((a, b) => a - b),
        );
      }
      const repeats = places.map(({ repeat }) => repeat);
      assert.deepEqual(repeats, [...repeats].sort());
      if (inputs.linksToGauge < 2) return;
      assert.ok(places.some(({ link }) => link === 1) && places.some(({ link }) => link === inputs.links));
    }),
    { seed: 7, numRuns: 300 },
  );
});

test('a link is read bar, weld, pitch, widths, the bar and the weld at right angles', () => {
  const places = gaugingSchedule({ links: 5, linksToGauge: 1, quantities: all });
  assert.deepEqual(
    places.map(({ link, position, quantity, direction }) => `${link} ${position} ${quantity} ${direction}`),
    [
      '3 leg diameter 1',
      '3 leg diameter 2',
      '3 weld weldDiameter 1',
      '3 weld weldDiameter 2',
      '3 link pitch 1',
      '3 link innerWidth 1',
      '3 link outerWidth 1',
      '3 link outerLength 1',
      'null piece lengthOverLinks 1',
    ],
  );
  assert.equal(places.at(-1)?.overLinks, 5);
});

test('three links of five are the first, the middle and the last; the middle is read again', () => {
  const places = gaugingSchedule({ links: 5, linksToGauge: 3, linksReadAgain: 1, quantities: ['pitch'] });
  assert.deepEqual(
    places.map(({ link, repeat }) => [link, repeat]),
    [
      [1, 1],
      [3, 1],
      [5, 1],
      [3, 2],
    ],
  );
});

test('bar and pitch are always gauged, and beside them what the specification limits', () => {
  for (const { limits, title } of everyProduct) {
    for (const links of [1, 5, 11, 30]) {
      const quantities = quantitiesToGauge(limits, links);
      assert.ok(quantities.includes('diameter') && quantities.includes('pitch'), title);
      for (const quantity of all.slice(0, -1)) {
        const isLimited = limits.some((limit) => limit.quantity === quantity);
        if (isLimited) assert.ok(quantities.includes(quantity), `${title} ${quantity}`);
      }
      for (const over of lengthsToGauge(limits, links)) assert.ok(over <= links);
    }
  }
});

test('counts that do not fit the piece are refused, all at once', () => {
  assert.throws(() => gaugingSchedule({ links: 3, linksToGauge: 4, linksReadAgain: 5, quantities: all }), {
    code: 'gauging/schedule',
    message: /links to gauge: 4; 1 to 3; links read again: 5/,
  });
  assert.throws(() => gaugingSchedule({ links: 2.5, quantities: all }), { code: 'gauging/schedule' });
});
