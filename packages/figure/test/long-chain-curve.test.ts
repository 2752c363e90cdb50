import assert from 'node:assert/strict';
import { describe, test } from 'node:test';
import { seededRandom } from '@provinghouse/core';
import { longChainCurve, longChainCurveTable, weibullFigure, weibullFigureTable } from '../src/index.ts';
import { governingStretches, reachStretches } from '../src/long-chain-stretch.ts';
import { chainOf, demoChain } from './demo.ts';
import { settingOf, wordsOf } from './paper.ts';

/** Many pieces of a made-up law: bars break most, welds govern far out. */
function manyPieces() {
  const random = seededRandom(5);
  const draw = (scale: number, shape: number) => scale * (-Math.log(1 - random.uniform()) / 5) ** (1 / shape);
  return Array.from({ length: 60 }, () => {
    const [bar, weld] = [draw(46, 30), draw(58, 9)];
    return { links: 5, force_kN: Math.min(bar, weld), mode: bar < weld ? 'bar' : 'weld', isAtLeast: false };
  });
}

const dashesOf = (svg: SVGSVGElement) =>
  new Set([...svg.querySelectorAll('[stroke-dasharray]')].map((part) => part.getAttribute('stroke-dasharray')));

describe('the curve of a long chain', () => {
  test('says in words where the pieces cannot carry it, and draws it dotted there', () => {
    const data = demoChain();
    const svg = longChainCurve(data, settingOf());
    assert.ok(data.finding.lengths.every(({ reach }) => reach.restsOn === 'prior'));
    assert.ok(wordsOf(svg).includes('the pieces cannot carry this: rests on the assumed shape'));
    assert.ok(dashesOf(svg).has('1.3 2.16'));
  });

  test('is solid as far as the pieces reach, and dashed beyond the longest', () => {
    const data = chainOf('MANY', manyPieces());
    const [first, second] = reachStretches(data);
    assert.equal(first?.reach, 'pieces');
    assert.equal(second?.reach, 'form');
    assert.equal(first?.curve.at(-1)?.links, second?.curve[0]?.links);
    assert.ok(first?.curve.every((chain) => chain.links <= 5));
    assert.ok(second?.curve.slice(1).every((chain) => chain.links > 5));
    assert.ok(wordsOf(longChainCurve(data, settingOf())).some((words) => /Weibull form/.test(words)));
  });

  test('marks where another mode comes to govern', () => {
    const data = demoChain();
    const stretches = governingStretches(data.finding.curve);
    assert.deepEqual(
      stretches.map(({ mode }) => mode),
      ['bar', 'beside weld'],
    );
    assert.equal(stretches[0]?.to_m, stretches[1]?.from_m);
    assert.ok(wordsOf(longChainCurve(data, settingOf())).includes('beside weld governs'));
  });

  test('has a row in its table for each length, once', () => {
    for (const data of [demoChain(), chainOf('MANY', manyPieces())]) {
      const table = longChainCurveTable(data);
      assert.deepEqual(
        table.rows.map((row) => row[1]),
        data.finding.curve.map((chain) => chain.links),
      );
      assert.ok(table.rows.every((row) => row.length === table.columns.length));
    }
  });

  test('says which breaks nobody saw its bounds allow for', () => {
    const words = wordsOf(longChainCurve(demoChain('ASH-8', { modes: ['bar', 'weld'] }), settingOf()));
    assert.ok(words.includes('bound, allowing for breaks not seen: weld'));
    assert.ok(!wordsOf(longChainCurve(demoChain(), settingOf())).some((word) => word.includes('not seen')));
  });

  test('gives a bound alone when nothing broke', () => {
    const held = Array.from({ length: 5 }, () => ({ links: 5, force_kN: 44, mode: null, isAtLeast: true }));
    const words = wordsOf(longChainCurve(chainOf('HELD', held), settingOf()));
    assert.ok(words.includes('95 % hold more, 90 % sure'));
    assert.ok(!words.some((word) => word.includes('estimate') || word === 'half hold more'));
  });
});

describe('the Weibull plot', () => {
  test('has a panel for each mode, named with its number of breaks', () => {
    const words = wordsOf(weibullFigure(demoChain(), settingOf()));
    for (const title of ['bar: 2 breaks', 'beside weld: 2 breaks', 'weld: 1 break']) assert.ok(words.includes(title));
  });

  test('has each break and each point of the law in its table', () => {
    const { finding } = demoChain();
    const rows = weibullFigureTable(demoChain()).rows;
    const count = finding.plots.reduce((sum, plot) => sum + plot.breaks.length + plot.line.length, 0);
    assert.equal(rows.length, count);
  });
});
