import assert from 'node:assert/strict';
import { describe, test } from 'node:test';
import {
  csvOf,
  type OverlaidTrace,
  type TraceOverlay,
  traceOverlay,
  traceOverlayPoints,
  traceOverlayTable,
} from '../src/index.ts';
import { settingOf, wordsOf } from './paper.ts';

/** A pull that rises to its maximum and falls, its places counted from `from`. */
function pulled(piece: string, product: string, maximum_kN: number, from = 0): OverlaidTrace {
  const places = Array.from({ length: 41 }, (_, at) => from + at);
  return {
    piece,
    product,
    pull: `P-${piece}`,
    places,
    forces_kN: places.map((place) => maximum_kN * Math.sin((Math.PI * (place - from)) / 40)),
    maximum_kN,
    expandedUncertainty_kN: 0.4,
    isAtLeast: false,
    top: null,
  };
}

const overlay = (traces: readonly OverlaidTrace[], rules: TraceOverlay['rules'] = []): TraceOverlay => ({
  axis: 'extension',
  traces,
  rules,
});

const strokes = (svg: SVGSVGElement) =>
  [...svg.querySelectorAll('[stroke-linejoin="round"]')].map(
    (drawn) => `${drawn.getAttribute('stroke-dasharray')} ${drawn.getAttribute('stroke-width')}`,
  );

describe('traces over each other', () => {
  const six = ['A', 'B', 'C', 'D', 'E', 'F'].map((name, at) => pulled(name, 'ASH', 40 + at));

  test('of one product each have a stroke of their own, without any colour', () => {
    const found = strokes(traceOverlay(overlay(six), settingOf()));
    assert.equal(found.length, 6);
    assert.equal(new Set(found).size, 6);
  });

  test('of several products bear the stroke of their product, and their own number', () => {
    const two = [pulled('A', 'ASH', 40), pulled('B', 'BIRCH', 41), pulled('C', 'ASH', 42)];
    const svg = traceOverlay(overlay(two), settingOf());
    const [a, b, c] = strokes(svg);
    assert.equal(a, c);
    assert.notEqual(a, b);
    for (const words of ['1', '2', '3', '1 A', '2 B', '3 C']) assert.ok(wordsOf(svg).includes(words), words);
  });

  test('whose maxima fall together keep their numbers apart', () => {
    const same = [pulled('A', 'ASH', 40), pulled('B', 'ASH', 40), pulled('C', 'ASH', 40)];
    const svg = traceOverlay(overlay(same), settingOf());
    const numbers = [...svg.querySelectorAll('[font-weight="600"] text, text[font-weight="600"]')];
    const places = numbers.map((one) => Number(/translate\(([\d.]+)/.exec(one.getAttribute('transform') ?? '')?.[1]));
    assert.equal(places.length, 3);
    assert.ok(Math.abs((places[1] ?? 0) - (places[0] ?? 0)) > 7, places.join());
  });

  test('are held against lines that say what they are', () => {
    const svg = traceOverlay(overlay(six, [{ words: 'minimum breaking force 40 kN', force_kN: 40 }]), settingOf());
    assert.ok(wordsOf(svg).includes('minimum breaking force 40 kN'));
    assert.match(svg.getAttribute('aria-label') ?? '', /6 pulls: 1 A, 40 kN.*Lines: minimum/);
  });

  test('keep the words of lines apart that lie close together', () => {
    const rules = [20, 20.1].map((force_kN) => ({ words: `line ${force_kN}`, force_kN }));
    const svg = traceOverlay(overlay(six, rules), settingOf());
    const heights = [...svg.querySelectorAll('text')].flatMap((one) => {
      if (!/^line/.test(one.textContent ?? '')) return [];
      const chain = [one, one.parentElement].map((part) => part?.getAttribute('transform') ?? '').join(' ');
      return [[...chain.matchAll(/translate\([^,]+,(-?[\d.]+)\)/g)].reduce((sum, match) => sum + Number(match[1]), 0)];
    });
    assert.equal(heights.length, 2);
    assert.ok(Math.abs((heights[0] ?? 0) - (heights[1] ?? 0)) > 7, heights.join());
  });

  test('leave a hole where the recording has one', () => {
    const whole = pulled('A', 'ASH', 40);
    const holed = { ...whole, places: whole.places.map((place, at) => (at === 20 ? null : place)) };
    const path = (trace: OverlaidTrace) =>
      traceOverlay(overlay([trace]), settingOf())
        .querySelector('[stroke-linejoin="round"]')
        ?.getAttribute('d') ??
      traceOverlay(overlay([trace]), settingOf())
        .querySelector('[stroke-linejoin="round"] path')
        ?.getAttribute('d') ??
      '';
    assert.equal(path(whole).split('M').length, 2);
    assert.equal(path(holed).split('M').length, 3);
  });

  test('bear their number at the maximum as read, not at a spike that overtops it', () => {
    const spiked = pulled('A', 'ASH', 40);
    const forces_kN = spiked.forces_kN.map((force, at) => (at === 3 ? 60 : force));
    const table = traceOverlayTable(overlay([{ ...spiked, forces_kN, top: { place: 20, force_kN: 40 } }]));
    assert.equal(table.rows[0]?.at(-1), 20);
  });

  test('are drawn where there is nothing to draw', () => {
    assert.match(traceOverlay(overlay([]), settingOf()).outerHTML, /<svg/);
  });

  test('have one row each in the table, with the place of the maximum, and all their points as CSV', () => {
    const table = traceOverlayTable(overlay([pulled('A', 'ASH', 40, 3)]));
    assert.deepEqual(table.rows, [[1, 'A', 'ASH', 'P-A', 40, 0.4, 'value', 23]]);
    assert.equal(table.columns.at(-1)?.key, 'extension_at_maximum_mm');
    assert.equal(
      csvOf(traceOverlayPoints(overlay(six)))
        .trim()
        .split('\r\n').length,
      1 + 6 * 41,
    );
  });
});
