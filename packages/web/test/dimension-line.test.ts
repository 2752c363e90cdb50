import assert from 'node:assert/strict';
import { test } from 'node:test';
import { gaugingSchedule } from '@provinghouse/core';
import fc from 'fast-check';
import { linkOutline } from '../src/components/link-drawing-outline.ts';
import { dimensionLine } from '../src/features/gauging/dimension-line.ts';

const quantities = [
  'diameter',
  'weldDiameter',
  'pitch',
  'innerWidth',
  'outerWidth',
  'outerLength',
  'lengthOverLinks',
] as const;

test('each dimension drawn is as long as what is read there', () => {
  const proportion = fc.record({
    pitch: fc.double({ min: 2.7, max: 6, noNaN: true }),
    outerWidth: fc.double({ min: 3.2, max: 3.8, noNaN: true }),
    weld: fc.double({ min: 1, max: 1.3, noNaN: true }),
  });
  fc.assert(
    fc.property(proportion, (of) => {
      const size = 100;
      const outline = linkOutline({ ...of, basis: 'rulebook' }, size);
      const lengths = {
        diameter: size,
        weldDiameter: of.weld * size,
        pitch: of.pitch * size,
        innerWidth: (of.outerWidth - 2) * size,
        outerWidth: of.outerWidth * size,
        outerLength: (of.pitch + 2) * size,
        lengthOverLinks: null,
      };
      for (const place of gaugingSchedule({ links: 1, quantities, withCrown: true })) {
        const line = dimensionLine(place, outline, of.weld * size);
        const expected = lengths[place.quantity];
        if (line === null || expected === null) assert.equal(line === null, expected === null);
        else {
          const length = Math.hypot(line.to.x - line.from.x, line.to.y - line.from.y);
          // Coordinates of some hundreds are added and taken away: the last binary digits may differ.
          assert.ok(Math.abs(length - expected) < 1e-9 * expected, `${place.quantity}: ${length}, not ${expected}`);
        }
      }
    }),
    { seed: 7, numRuns: 100 },
  );
});
