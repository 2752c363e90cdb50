import assert from 'node:assert/strict';
import { describe, test } from 'node:test';
import { parse } from 'csv-parse/sync';
import fc from 'fast-check';
import { csvOf, shownCells } from '../../src/index.ts';
import { apart } from '../../src/sheet/apart.ts';
import { inkOf } from '../../src/sheet/setting.ts';
import { modeShape, pathOf } from '../../src/sheet/symbol.ts';
import { numberColumn, textColumn } from '../../src/sheet/table.ts';
import { fitted, textWidth } from '../../src/sheet/text-width.ts';

describe('words kept apart', () => {
  const places = fc.array(fc.double({ min: -50, max: 150, noNaN: true }), { maxLength: 8 });
  const room = { gap: 10, from: 0, to: 100 };

  test('keep their order, their distance and the sheet', () => {
    fc.assert(
      fc.property(places, (wished) => {
        const moved = apart(wished, room);
        const order = wished.map((_, index) => index).sort((a, b) => (wished[a] ?? 0) - (wished[b] ?? 0));
        const sorted = order.map((index) => moved[index] ?? Number.NaN);
        sorted.forEach((place, index) => {
          assert.ok(place >= -1e-9 && place <= 100 + 1e-9);
          if (index > 0) assert.ok(place - (sorted[index - 1] ?? 0) >= 10 - 1e-6);
        });
      }),
      { seed: 7, numRuns: 300 },
    );
  });

  test('that stand well stay where they are', () => {
    assert.deepEqual(apart([5, 80, 40], room), [5, 80, 40]);
  });
});

describe('a name too long for its place', () => {
  test('keeps its two ends and fits', () => {
    const name = 'SUPPLIER-OF-A-VERY-LONG-NAME-08';
    const short = fitted(name, 10, 90);
    assert.ok(textWidth(short, 10) <= 90);
    assert.ok(short.startsWith('SUP') && short.endsWith('08') && short.includes('…'));
  });
});

describe('a table as CSV', () => {
  const columns = [textColumn('piece', 'piece'), numberColumn('force_kN', 'force', 'kN')];

  test('reads back as what was written, whatever the text', () => {
    const text = fc.string().filter((value) => !/^[=+\-@\t\r]/.test(value));
    const rows = fc.array(fc.tuple(text, fc.option(fc.double({ min: -1e6, max: 1e6, noNaN: true }))), { maxLength: 5 });
    fc.assert(
      fc.property(rows, (cells) => {
        const back: string[][] = parse(csvOf({ columns, rows: cells }), { record_delimiter: '\r\n' });
        assert.deepEqual(back[0], ['piece', 'force_kN']);
        cells.forEach(([words, number], index) => {
          assert.equal(back[index + 1]?.[0], words);
          const read = back[index + 1]?.[1];
          if (number === null) assert.equal(read, '');
          else assert.ok(Math.abs(Number(read) - number) <= 1e-11 * Math.abs(number));
        });
      }),
      { seed: 7, numRuns: 200 },
    );
  });

  test('holds no text that a spreadsheet would run', () => {
    assert.match(csvOf({ columns, rows: [['=1+1', 2]] }), /\r\n'=1\+1,2\r\n$/);
  });
});

describe('a table as shown', () => {
  test('has the numbers of a column to one place, and a dash for none', () => {
    const columns = [numberColumn('force_kN', 'force', 'kN'), numberColumn('links', 'links', null)];
    const rows = [
      [42.908, 5],
      [45.7, 10],
      [-0.0001, null],
    ];
    assert.deepEqual(shownCells({ columns, rows }), [
      ['42.91', '5'],
      ['45.70', '10'],
      ['0.00', '–'],
    ]);
  });

  test('has each number to its own digits where they span many decades', () => {
    const columns = [numberColumn('links_broken_pct', 'links broken', '%', { digits: 2, of: 'each' })];
    assert.deepEqual(shownCells({ columns, rows: [[86.4], [0.000048]] }), [['86'], ['0.000048']]);
  });
});

describe('inks', () => {
  test('of words and lines have at least 4.5 to 1 on their ground (WCAG 2.2, 1.4.3)', () => {
    for (const theme of ['paper', 'screen-light', 'screen-dark'] as const) {
      const { ground, ink, soft, accent, band } = inkOf({ theme });
      for (const paint of [ink, soft, accent]) assert.ok(contrast(paint, ground) >= 4.5, `${theme} ${paint}`);
      assert.ok(contrast(ink, band) >= 4.5);
    }
  });
});

function contrast(one: string, other: string): number {
  const [high, low] = [luminance(one), luminance(other)].sort((a, b) => b - a);
  return ((high ?? 0) + 0.05) / ((low ?? 0) + 0.05);
}

function luminance(colour: string): number {
  const [r, g, b] = [1, 3, 5].map((at) => {
    const value = Number.parseInt(colour.slice(at, at + 2), 16) / 255;
    return value <= 0.04045 ? value / 12.92 : ((value + 0.055) / 1.055) ** 2.4;
  });
  return 0.2126 * (r ?? 0) + 0.7152 * (g ?? 0) + 0.0722 * (b ?? 0);
}

describe('shapes', () => {
  test('tell the break modes of the trade apart without colour', () => {
    const shapes = ['bar', 'weld', 'beside weld'].map((mode) => pathOf(modeShape(mode), 3));
    assert.equal(new Set(shapes).size, 3);
  });
});
