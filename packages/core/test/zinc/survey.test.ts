import assert from 'node:assert/strict';
import { test } from 'node:test';
import { surveyZinc, type ZincReading } from '../../src/zinc/index.ts';
import { check, citation, coatingChecks } from '../reference-checks.ts';

function reading(place: string, thickness_um: number | null, rest: Partial<ZincReading> = {}): ZincReading {
  return { place, thickness_um, adherence: null, flakedShare_pct: null, note: null, ...rest };
}

const statistics = check(coatingChecks, 'MAG-STAT-1');
test(`MAG-STAT-1: mean and its scatter of five readings (${citation(statistics)})`, () => {
  const readings = (statistics.inputs.readings_um as number[]).map((thickness) => reading('link 1', thickness));
  const survey = surveyZinc(readings);
  const near = (found: number | null | undefined, key: string) =>
    assert.ok(
      Math.abs((found ?? Number.NaN) - Number(statistics.expected[key])) <= (statistics.tolerance ?? 0),
      `${key}: ${found}`,
    );
  near(survey?.mean_um, 'mean_um');
  near(survey?.standardUncertainty_um, 'u_mean_um');
});

test('local means keep the links apart', () => {
  assert.equal(
    surveyZinc([reading('a', 60), reading('a', 62), reading('b', 90), reading('b', 92)])?.leastLinkMean_um,
    61,
  );
});

test('the worst behaviour speaks for the piece, and a note without a thickness is no thickness', () => {
  const survey = surveyZinc([
    reading('a', 80),
    reading('a', null, { adherence: 4, flakedShare_pct: 20 }),
    reading('b', null, { adherence: 1 }),
  ]);
  assert.equal(survey?.worstAdherence, 4);
  assert.equal(survey?.greatestFlakedShare_pct, 20);
  assert.equal(survey?.readings, 1);
});

test('nothing recorded is no survey', () => {
  assert.equal(surveyZinc([]), null);
});
