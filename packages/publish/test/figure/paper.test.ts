import assert from 'node:assert/strict';
import { describe, test } from 'node:test';
import { breakingForceDots } from '@provinghouse/figure';
import { onPaper } from '../../src/figure/paper.ts';

const drawn = (product: string) =>
  onPaper((setting) =>
    breakingForceDots(
      { products: [{ product, pieces: [], minimum_kN: 40, acceptedFrom_kN: null, tolerance: null }] },
      setting,
    ),
  );

describe('a figure on paper', () => {
  test('shows a word the font cannot show as its code point', () => {
    assert.match(drawn('中\u202eX'), />\[U\+4E2D\]\[U\+202E\]X</);
  });

  test('keeps words that look like markup as words', () => {
    const source = drawn('"<b>&#panic()\\');
    assert.match(source, /&lt;b&gt;&amp;#panic\(\)\\\\/);
    assert.doesNotMatch(source.slice(source.indexOf('<svg')), /<b>/);
  });

  test('is the same when it is drawn again', () => {
    assert.equal(drawn('ASH-8'), drawn('ASH-8'));
  });

  test('has words for who cannot see it', () => {
    assert.match(
      drawn('ASH-8'),
      /^#drawing\(447, "Breaking force of each piece\. ASH-8: no forces, minimum 40 kN\.", "<svg /,
    );
  });
});
