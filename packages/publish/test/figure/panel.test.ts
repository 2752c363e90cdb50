import assert from 'node:assert/strict';
import { describe, test } from 'node:test';
import { axisOf, highestForce, type TracePanel } from '../../src/figure/panel.ts';
import { traceFigure } from '../../src/figure/trace.ts';

const curve = { pull: 'P', time_s: [0, 1, 2, 3], force_kN: [0, 99, 40, 0], table_mm: null, extension_mm: null };
const panel: TracePanel = { piece: 'A-1', curve, use: 'value', maximum_kN: 40, spikes: [{ time_s: 1, force_kN: 99 }] };

describe('a panel of curves', () => {
  test('takes no rejected sample for the maximum, and draws it as a cross', () => {
    assert.equal(highestForce(panel), 40);
    assert.equal(traceFigure([panel], []).match(/cross-mark\(/g)?.length, 1);
  });

  test('is drawn against extension before table before time before the number of the sample', () => {
    const all = { ...curve, table_mm: [0, 1, 2, 3], extension_mm: [0, 1, 2, 3] };
    assert.equal(axisOf(all).words, 'extension, mm');
    assert.equal(axisOf({ ...all, extension_mm: null }).words, 'table travel, mm');
    assert.equal(axisOf(curve).words, 'time, s');
    assert.equal(axisOf({ ...curve, time_s: null }).words, 'number of sample');
  });

  test('marks a value with a disc, a censored value with an arrow, a pull not used with a ring', () => {
    const drawn = (use: TracePanel['use']) => traceFigure([{ ...panel, use }], []);
    assert.match(drawn('value'), /disc\(.*, true\)/);
    assert.match(drawn('at least'), /arrow-up\(/);
    assert.match(drawn('none'), /disc\(.*, false\)/);
    assert.match(drawn('none'), /trace\("unused"/);
  });

  test('without a recording says so', () => {
    assert.match(traceFigure([{ ...panel, curve: null }], []), /no recording/);
  });

  test('does not join the curve across a gap with numbers that are none', () => {
    const gap = { ...curve, force_kN: [0, 20, Number.NaN, 40] };
    assert.doesNotMatch(traceFigure([{ ...panel, curve: gap, spikes: [] }], []), /NaN/);
  });
});
