import assert from 'node:assert/strict';
import { test } from 'node:test';
import { listSpecifications, specificationFor } from '@provinghouse/core';
import {
  crownPath,
  edgePath,
  legPath,
  linkOutline,
  ringPath,
  weldPath,
} from '../src/components/link-drawing-outline.ts';
import { proportionFrom, proportionOf, usualProportion } from '../src/components/link-drawing-proportion.ts';

const size = 100;
const en818 = { specification: 'en-818-3', grade: '4', nominal_size_mm: 8 };

test('a link is drawn inside the limits that its specification sets', () => {
  const drawn = proportionOf(en818, []);
  const { limits } = specificationFor({ standard: 'en-818-3', grade: '4', size_mm: 8 });
  const limitOf = (quantity: string) => limits.find((limit) => limit.quantity === quantity);
  assert.equal(drawn.basis, 'rulebook');
  assert.equal(drawn.pitch * 8, limitOf('pitch')?.nominal);
  assert.ok(drawn.outerWidth * 8 <= (limitOf('outerWidth')?.upper ?? 0));
  assert.ok((drawn.outerWidth - 2) * 8 >= (limitOf('innerWidth')?.lower ?? Infinity));
  assert.equal(drawn.weld * 8, limitOf('weldDiameter')?.upper);
});

test('without a specification that can be read here the usual short link is drawn, and said to be that', () => {
  assert.equal(proportionOf(null, []), usualProportion);
  assert.equal(proportionOf({ ...en818, specification: 'no-such-rule' }, []), usualProportion);
  assert.equal(proportionOf({ ...en818, nominal_size_mm: 8.123 }, []).basis, 'common practice');
});

test('outside length is pitch and two bars, outside width is two radii', () => {
  const outline = linkOutline(usualProportion, size);
  assert.equal(2 * outline.reach, (usualProportion.pitch + 2) * size);
  assert.equal(2 * outline.outerRadius, usualProportion.outerWidth * size);
  assert.equal(outline.outerRadius - outline.innerRadius, size);
});

test('weld, the zone beside it and the rest of the leg follow each other on every chain of the rulebook', () => {
  let drawn = 0;
  for (const { specification, size_mm } of listSpecifications()) {
    const proportion = proportionFrom(specification.limits, size_mm);
    if (proportion.basis !== 'rulebook') continue;
    const { straight, weldHalf, besideHalf } = linkOutline(proportion, size);
    assert.ok(0 < weldHalf && weldHalf < besideHalf && besideHalf < straight, specification.title);
    drawn += 1;
  }
  assert.ok(drawn > 10);
});

test('no path of a drawing holds a number that is none', () => {
  const outline = linkOutline(usualProportion, size);
  const paths = [
    crownPath(outline, 'left'),
    crownPath(outline, 'right'),
    legPath(outline, 'lower', [-outline.straight, outline.straight]),
    weldPath(outline, 110),
    ringPath(outline),
    edgePath(outline, size),
  ];
  for (const path of paths) assert.match(path, /^[MHVACSZ\d .-]+$/);
});
