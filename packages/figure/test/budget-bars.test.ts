import assert from 'node:assert/strict';
import { describe, test } from 'node:test';
import { budgetBars, budgetBarsTable, budgetOfMeasured } from '../src/index.ts';
import { demoBudget } from './demo.ts';
import { settingOf, wordsOf } from './paper.ts';

describe('the bars of a budget', () => {
  test('stand the largest first, and their sum of squares last', () => {
    const rows = budgetBarsTable(demoBudget()).rows;
    const parts = rows.slice(0, -1).map((row) => Number(row[1]));
    assert.deepEqual(
      parts,
      parts.toSorted((a, b) => b - a),
    );
    const sum = Math.hypot(...parts);
    assert.ok(Math.abs(Number(rows.at(-1)?.[1]) - sum) < 1e-12);
  });

  test('have words and no bar for a part nobody knows', () => {
    const svg = budgetBars({ ...demoBudget(), unknown: ['drift of the rig'] }, settingOf());
    const known = budgetBars(demoBudget(), settingOf());
    assert.ok(wordsOf(svg).includes('not known'));
    assert.equal(svg.querySelectorAll('rect').length, known.querySelectorAll('rect').length);
  });

  test('say that an uncertainty is not stated instead of drawing a sum of nothing', () => {
    const data = { ...demoBudget(), combinedStandardUncertainty: null, expandedUncertainty: null };
    assert.ok(wordsOf(budgetBars(data, settingOf())).includes('not stated'));
  });

  test('of a measured value have shares that come to a hundred', () => {
    const part = { source: 'certificate' };
    const budget = budgetOfMeasured('breaking force', {
      value: 42,
      unit: 'kN',
      expandedUncertainty: 1,
      coverageFactor: 2,
      isAtLeast: false,
      origin: 'a pull',
      contributions: [
        { ...part, name: 'class', standardUncertainty: 0.3 },
        { ...part, name: 'resolution', standardUncertainty: 0.4 },
      ],
    });
    const shares = budget?.lines.map((line) => line.share_pct ?? 0) ?? [];
    assert.ok(Math.abs(shares.reduce((sum, share) => sum + share, 0) - 100) < 1e-9);
  });
});
