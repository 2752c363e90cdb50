import assert from 'node:assert/strict';
import { test } from 'node:test';
import { isInputError } from '@provinghouse/core';
import { enterRows, freezePlan } from '../../src/entry/index.ts';
import { hangingResults, kitInCampaigns } from '../../src/kit/index.ts';
import { calliper, code, piece, prepared, pull, reading, who } from '../entry/desk.ts';

async function read(t: Parameters<typeof prepared>[0]) {
  const effects = await prepared(t);
  const early = { ...reading('A-1', 8.02), read_at: '2026-03-01T09:00:00Z' };
  const late = { ...reading('A-2', 8.01), read_at: '2026-03-08T09:00:00Z' };
  const undated = { ...reading('A-3', 8.0), read_at: null };
  const rows = { pieces: [piece('A-1'), piece('A-2'), piece('A-3')], gauging: [early, late, undated] };
  await enterRows(code, { rows, who, override: 'checked this morning' }, effects);
  await freezePlan(code, { who, why: 'agreed' }, effects);
  const dated = { ...pull('P-1', 'A-1'), pulled_at: '2026-03-08T12:00:00Z' };
  await enterRows(code, { rows: { pulls: [dated] }, who }, effects);
  return effects;
}

test('what hangs on an instrument is what it read in the days asked for, and what nobody dated', async (t) => {
  const effects = await read(t);
  const { campaigns } = await hangingResults({ instrument: 'CAL-1', from: '2026-03-05', to: '2026-03-09' }, effects);
  assert.deepEqual(campaigns, [
    {
      campaign: code,
      title: 'One chain',
      gauging: { readings: 2, pieces: ['A-2', 'A-3'], undated: 1 },
      zinc: { readings: 0, pieces: [], undated: 0 },
      pulls: [],
    },
  ]);
  const rig = await hangingResults({ instrument: 'RIG-1', from: '2026-03-08', to: '2026-03-08' }, effects);
  assert.deepEqual(rig.campaigns[0]?.pulls, [{ pull: 'P-1', piece: 'A-1', on: '2026-03-08' }]);
  const none = await hangingResults({ instrument: 'RIG-1', from: '2026-03-09', to: '2026-03-09' }, effects);
  assert.deepEqual(none.campaigns, []);
});

test('days the wrong way round are refused', async (t) => {
  const effects = await prepared(t);
  const asked = { instrument: 'CAL-1', from: '2026-03-09', to: '2026-03-05' };
  await assert.rejects(
    hangingResults(asked, effects),
    (error) => isInputError(error) && error.code === 'entry/days-reversed',
  );
});

test('an instrument taken into Kit is no longer listed among those of campaigns only', async (t) => {
  const effects = await prepared(t);
  const names = async () => (await kitInCampaigns(effects)).instruments.map((one) => one.instrument.instrument);
  assert.deepEqual(await names(), ['RIG-1', 'CAL-1']);
  await enterRows('_bench', { rows: { instruments: [calliper] }, who }, effects);
  assert.deepEqual(await names(), ['RIG-1']);
});
