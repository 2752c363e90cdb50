import assert from 'node:assert/strict';
import { test } from 'node:test';
import { controlChart } from '@provinghouse/core';
import { controlChartFigure, controlChartTable } from '../src/index.ts';
import { settingOf } from './paper.ts';

const readings = Array.from({ length: 21 }, (_, i) => ({
  at: `2026-02-${String(i + 1).padStart(2, '0')}T08:00:00Z`,
  deviation: i === 20 ? 0.2 : i % 2 === 0 ? 0.01 : -0.01,
}));
const data = {
  instrument: 'CAL-1',
  unit: 'mm',
  chart: controlChart(
    readings,
    readings.map(() => 0.03),
  ),
};

test('the chart tells how many readings there are, the limits, and how many are to be looked at', () => {
  const svg = controlChartFigure(data, settingOf());
  assert.match(svg.outerHTML, /Check readings of CAL-1: 21, limits .* mm, 1 to be looked at\./);
});

test('every reading of the chart stands in its table, with what is told of it', () => {
  const { rows } = controlChartTable(data);
  assert.equal(rows.length, readings.length);
  assert.match(String(rows.at(-1)?.at(-1)), /off by more than allowed/);
});

test('a chart without readings is drawn all the same', () => {
  const empty = { ...data, chart: controlChart([], []) };
  assert.match(controlChartFigure(empty, settingOf()).outerHTML, /no limits yet/);
});
