import assert from 'node:assert/strict';
import { describe, test } from 'node:test';
import {
  breakingForceDots,
  budgetBars,
  comparisonIntervals,
  type FigureSetting,
  longChainCurve,
  weibullFigure,
} from '../src/index.ts';
import { demoBudget, demoChain, demoDots, demoIntervals } from './demo.ts';
import { formsOf, matchesGolden, settingOf, wordsOf } from './paper.ts';

const nothingPulled = () => demoChain('NONE');

const figures: readonly {
  readonly name: string;
  readonly draw: (setting: FigureSetting) => SVGSVGElement;
  readonly empty: (setting: FigureSetting) => SVGSVGElement;
  readonly axis: RegExp;
}[] = [
  {
    name: 'breaking-force-dots',
    draw: (setting) => breakingForceDots(demoDots(), setting),
    empty: (setting) => breakingForceDots({ products: [] }, setting),
    axis: /^breaking force, kN$/,
  },
  {
    name: 'weibull-plot',
    draw: (setting) => weibullFigure(demoChain(), setting),
    empty: (setting) => weibullFigure(nothingPulled(), setting),
    axis: /^force, kN$/,
  },
  {
    name: 'long-chain-curve',
    draw: (setting) => longChainCurve(demoChain(), setting),
    empty: (setting) => longChainCurve(nothingPulled(), setting),
    axis: /^length of chain, m$/,
  },
  {
    name: 'comparison-intervals',
    draw: (setting) => comparisonIntervals(demoIntervals(), setting),
    empty: (setting) => comparisonIntervals({ ...demoIntervals(), pairs: [] }, setting),
    axis: /^difference in mean breaking force, kN$/,
  },
  {
    name: 'budget-bars',
    draw: (setting) => budgetBars(demoBudget(), setting),
    empty: (setting) => budgetBars({ ...demoBudget(), lines: [], combinedStandardUncertainty: null }, setting),
    axis: /^standard uncertainty of the breaking force of ASH-8-1, kN$/,
  },
];

for (const { name, draw, empty, axis } of figures) {
  describe(name, () => {
    const drawn = draw(settingOf());

    test('is drawn as it was', () => {
      matchesGolden(name, drawn);
    });

    test('is the same on screen and on paper but for size and ink', () => {
      for (const theme of ['screen-light', 'screen-dark'] as const) {
        const shown = draw(settingOf(theme));
        assert.deepEqual(wordsOf(shown), wordsOf(drawn));
        assert.deepEqual(formsOf(shown), formsOf(drawn));
      }
    });

    test('needs no style sheet, class or name, which the policy of the page forbids and a second figure would clash with', () => {
      assert.equal(drawn.querySelectorAll('style, [style], [class], [id]').length, 0);
    });

    test('has a name for who cannot see it, and the unit on its axis', () => {
      assert.equal(drawn.getAttribute('role'), 'img');
      assert.ok((drawn.getAttribute('aria-label') ?? '').length > 30);
      assert.ok(wordsOf(drawn).some((words) => axis.test(words)));
    });

    test('of nothing is an empty figure without a number that is none', () => {
      assert.doesNotMatch(empty(settingOf()).outerHTML, /NaN|Infinity|undefined|null/);
    });

    test('keeps every word on the sheet', () => {
      const width = Number(drawn.getAttribute('width'));
      assert.equal(width, settingOf().width);
      assert.doesNotMatch(drawn.outerHTML, /NaN|Infinity|undefined/);
    });
  });
}
