import assert from 'node:assert/strict';
import { test } from 'node:test';
import { rowWith } from '@provinghouse/contract';
import { kitRows } from '../src/lib/entry/kit-rows.ts';

const rig = (instrument: string) => rowWith('instruments', { instrument, kind: 'rig', unit: 'kN', resolution: 0.01 });
const certificate = (calibration: string, instrument: string) =>
  rowWith('calibrations', { calibration, instrument, calibrated_on: '2026-01-12', due_on: '2027-01-12' });
const nothing = { instruments: [], calibrations: [] };
const bench = {
  instruments: [rig('RIG-1'), rig('RIG-2')],
  calibrations: [certificate('C-1', 'RIG-1'), certificate('C-2', 'RIG-1'), certificate('C-3', 'RIG-2')],
};

test('an instrument of the bench comes in with its own certificates and no others', () => {
  assert.deepEqual(kitRows('RIG-1', { own: nothing, bench }), {
    instruments: [rig('RIG-1')],
    calibrations: [certificate('C-1', 'RIG-1'), certificate('C-2', 'RIG-1')],
  });
});

test('one that the campaign has keeps its row, and only certificates that are wanting come in', () => {
  const own = { instruments: [rig('RIG-1')], calibrations: [certificate('C-1', 'RIG-1')] };
  assert.deepEqual(kitRows('RIG-1', { own, bench }), {
    instruments: [],
    calibrations: [certificate('C-2', 'RIG-1')],
  });
});

test('an instrument that nobody knows brings nothing', () => {
  assert.deepEqual(kitRows('RIG-9', { own: nothing, bench }), nothing);
});
