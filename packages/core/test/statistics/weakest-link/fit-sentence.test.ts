import assert from 'node:assert/strict';
import { test } from 'node:test';
import {
  compareLengthModels,
  fitPooledShape,
  fitSentence,
  fitWeibull,
  goodnessSentence,
  lengthModelsSentence,
  modeRecord,
  pooledShapeSentence,
  weibullGoodness,
} from '../../../src/statistics/weakest-link/index.ts';
import { brokenAt } from './reference-pieces.ts';

const bar = brokenAt([34.1, 33.2, 34.9, 33.9, 34.4], 'bar', 5);
const record = modeRecord(bar, 'bar');

test('a fit is told by its scatter, and that few breaks make it look too small', () => {
  const outcome = fitWeibull(record);
  assert.match(
    fitSentence('bar', outcome),
    /^From 5 breaks in the bar among 5 pieces: like pieces scatter by about \d\.\d %/,
  );
  const told =
    fitSentence('bar', outcome)
      .match(/\d+\.\d(?= %)/g)
      ?.map(Number) ?? [];
  assert.ok((told[1] ?? 0) > (told[0] ?? 0), 'the corrected scatter is greater');
});

test('no fit is told with its reason', () => {
  assert.match(fitSentence('weld', fitWeibull(modeRecord(bar, 'weld'))), /no piece broke in this mode/);
  assert.match(pooledShapeSentence(fitPooledShape([modeRecord(bar, 'weld')])), /nothing broke in this mode/);
});

test('a pool names its breaks and products', () => {
  assert.match(pooledShapeSentence(fitPooledShape([record, record])), /^Taken together, 10 breaks of 2 products/);
});

test('lengths that differ as the weakest link has it, that do not, and one length alone have each their sentence', () => {
  const same = brokenAt([34.1, 33.2, 34.9, 33.9, 34.4], 'bar', 500);
  assert.match(lengthModelsSentence(compareLengthModels([...bar, ...same], 'bar')), /^Longer pieces are not weaker/);
  const less = same.map((piece) => ({ ...piece, force_kN: piece.force_kN * 100 ** (-1 / 70) }));
  assert.match(
    lengthModelsSentence(compareLengthModels([...bar, ...less], 'bar')),
    /^Longer pieces are weaker much as/,
  );
  assert.match(lengthModelsSentence(compareLengthModels(bar, 'bar')), /^All pieces are of one length/);
});

test('five good forces speak neither for nor against the law; two lots far apart speak against it', () => {
  const two = brokenAt([20, 20.1, 20.2, 20.3, 20.4, 20.5, 40, 40.1, 40.2, 40.3, 40.4, 40.5], 'bar', 5);
  const mark = (pieces: typeof bar) => weibullGoodness(pieces, fitWeibull(modeRecord(pieces, 'bar')).fit);
  assert.match(goodnessSentence(mark(bar), 5), /^Nothing speaks against/);
  assert.match(goodnessSentence(mark(two), 12), /do not look like one Weibull law/);
  assert.match(goodnessSentence(null, 3), /cannot be told/);
});
