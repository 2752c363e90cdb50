import assert from 'node:assert/strict';
import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { test } from 'node:test';
import { fileURLToPath } from 'node:url';
import { isInputError } from '@provinghouse/core';
import { attachments, campaignRows, readBlob, reviseRecord, verifyLedger } from '@provinghouse/store';
import { judgeCampaign, reportOf } from '../../src/index.ts';
import { armInput, openBench, scriptedRig, simulated, storyUntil } from './bench.ts';

const rig = 'PRACTICE-RIG';

function coded(code: string) {
  return (error: unknown) => isInputError(error) && error.code === code;
}

test('a pull ends by parting and stands in the record: row, recording, ledger, and a maximum that agrees with the truth', async (t) => {
  const { desks, effects } = await openBench(t, [scriptedRig(rig)]);
  await desks.arm(rig, armInput('PRACTICE-8-1', { operator: 'learner' }));
  await desks.start(rig);
  const told = await storyUntil(desks, rig, 'ended');
  const end = told.at(-1);
  assert.ok(end?.kind === 'ended' && end.sha256 !== null);
  assert.equal(end.view.ended, 'parted');
  assert.equal(end.samples, simulated.samples.filter(({ time_s }) => time_s <= (end.view.time_s ?? 0)).length);

  const { pulls } = await campaignRows(effects.store, 'PRACTICE');
  assert.deepEqual(
    pulls.map(({ pull, piece, operator, valid }) => ({ pull, piece, operator, valid })),
    [{ pull: 'P-001', piece: 'PRACTICE-8-1', operator: 'learner', valid: true }],
  );
  const file = (await attachments(effects.store, 'PRACTICE')).find(({ path }) => path === pulls[0]?.trace);
  assert.equal(file?.sha256, end.sha256);
  const text = new TextDecoder().decode(await readBlob(effects.store, end.sha256));
  assert.match(text, /^# PRACTICE: simulated/);
  assert.ok((await verifyLedger(effects.store, 'PRACTICE')).ok);

  const finding = await judgeCampaign({ campaign: 'PRACTICE' }, effects);
  const pull = finding.pieces[0]?.pull;
  assert.equal(pull?.use, 'value');
  const { value, expandedUncertainty } = pull?.maximum ?? { value: 0, expandedUncertainty: 0 };
  assert.ok(Math.abs(value - simulated.truth.maximumForce_kN) <= (expandedUncertainty ?? 0), `${value} kN`);
});

test('a rig takes one pull at a time, a piece is pulled once, and what is not armed is not started', async (t) => {
  const { desks } = await openBench(t, [scriptedRig(rig)]);
  await assert.rejects(desks.start(rig), coded('pull/not-armed'));
  const both = await Promise.allSettled([
    desks.arm(rig, armInput('PRACTICE-8-1')),
    desks.arm(rig, armInput('PRACTICE-8-2')),
  ]);
  assert.deepEqual(
    both.map(({ status }) => status),
    ['fulfilled', 'rejected'],
  );
  assert.ok(both[1]?.status === 'rejected' && coded('pull/rig-busy')(both[1].reason));
  await assert.rejects(desks.mark(rig, 'bang'), coded('pull/not-started'));
  await desks.start(rig);
  await assert.rejects(desks.start(rig), coded('pull/already-started'));
  await assert.rejects(desks.mark(rig, ' \n'), coded('pull/mark-empty'));
  await storyUntil(desks, rig, 'ended');
  await assert.rejects(desks.arm(rig, armInput('PRACTICE-8-1')), coded('pull/piece-pulled'));
  assert.equal(await desks.desk('NONE'), null);
});

test('a pull given up before its start leaves nothing', async (t) => {
  const { desks, effects } = await openBench(t, [scriptedRig(rig)]);
  await desks.arm(rig, armInput('PRACTICE-8-1'));
  const desk = await desks.stop(rig);
  assert.equal(desk?.pull?.state, 'ended');
  assert.deepEqual(desk?.unfinished, []);
  assert.equal((await campaignRows(effects.store, 'PRACTICE')).pulls.length, 0);
  await desks.arm(rig, armInput('PRACTICE-8-1'));
});

test('the operator ends a recording: it is kept as far as it goes, with the marks, and counts as "at least"', async (t) => {
  const { desks, effects } = await openBench(t, [scriptedRig(rig, { upTo: 0.6 })]);
  await desks.arm(rig, armInput('PRACTICE-8-1'));
  await desks.start(rig);
  await new Promise((resolve) => setTimeout(resolve, 800));
  await desks.mark(rig, 'valve\ntouched');
  await desks.stop(rig);
  const told = await storyUntil(desks, rig, 'ended');
  assert.deepEqual(
    told.filter(({ kind }) => kind === 'mark').map((message) => message.kind === 'mark' && message.words),
    ['valve touched'],
  );
  const finding = await judgeCampaign({ campaign: 'PRACTICE' }, effects);
  assert.equal(finding.pieces[0]?.pull?.use, 'at least');
  assert.match(finding.pieces[0]?.pull?.note ?? '', /Ended by the operator\. At [\d.]+ s: valve touched\./);
});

test('a recording in which nothing was loaded is no pull: it is put aside and the piece may be pulled', async (t) => {
  const { desks, effects } = await openBench(t, [scriptedRig(rig, { upTo: 0.02 })]);
  await desks.arm(rig, armInput('PRACTICE-8-1'));
  await desks.start(rig);
  await new Promise((resolve) => setTimeout(resolve, 300));
  await desks.stop(rig);
  const end = (await storyUntil(desks, rig, 'ended')).at(-1);
  assert.ok(end?.kind === 'ended' && end.sha256 === null);
  assert.match((await desks.desk(rig))?.pull?.fault ?? '', /^Nothing was loaded/);
  assert.equal((await campaignRows(effects.store, 'PRACTICE')).pulls.length, 0);
  await desks.arm(rig, armInput('PRACTICE-8-1'));
});

test('a recording to which nothing came ends all the same, is said not to be in the record, and can be put aside', async (t) => {
  const { desks } = await openBench(t, [scriptedRig(rig, { upTo: 0 })]);
  await desks.arm(rig, armInput('PRACTICE-8-1'));
  await desks.start(rig);
  await desks.stop(rig);
  const end = (await storyUntil(desks, rig, 'ended')).at(-1);
  assert.ok(end?.kind === 'ended' && end.sha256 === null);
  const [left] = (await desks.desk(rig))?.unfinished ?? [];
  assert.deepEqual([left?.samples, left?.maximum_kN], [0, null]);
  assert.deepEqual((await desks.recover(rig, left?.spool ?? ''))?.unfinished, []);
  await desks.arm(rig, armInput('PRACTICE-8-1'));
});

test('a report of practice pulls is refused where the campaign no longer says that it is practice, whatever the notes say', async (t) => {
  const { desks, effects } = await openBench(t, [scriptedRig(rig)]);
  await desks.arm(rig, armInput('PRACTICE-8-1'));
  await desks.start(rig);
  await storyUntil(desks, rig, 'ended');
  const rows = await campaignRows(effects.store, 'PRACTICE');
  const [campaign, pull] = [rows.campaign[0], rows.pulls[0]];
  assert.ok(campaign && pull);
  const change = {
    campaign: 'PRACTICE',
    revision: 1,
    who: 'learner',
    why: 'to pass it for real',
    at: '2026-03-11T08:00:00Z',
  };
  await reviseRecord(effects.store, {
    ...change,
    kind: 'campaign',
    id: 'PRACTICE',
    body: { ...campaign, marking: null },
  });
  await assert.rejects(reportOf('PRACTICE', effects), coded('report/practice'));
  await reviseRecord(effects.store, { ...change, kind: 'pulls', id: 'P-001', body: { ...pull, note: 'a fine pull' } });
  await assert.rejects(reportOf('PRACTICE', effects), coded('report/practice'));
  await assert.rejects(desks.arm(rig, armInput('PRACTICE-8-2')), coded('pull/practice-in-earnest'));
});

test('a pull whose process was killed is offered for recovery with all that was shown, and its piece to nobody else', async (t) => {
  const { desks, effects, home } = await openBench(
    t,
    [scriptedRig(rig)],
    fileURLToPath(new URL('./process/pull.ts', import.meta.url)),
  );
  const offered = (await desks.desk(rig))?.unfinished ?? [];
  assert.deepEqual(
    offered.map(({ pull, piece }) => ({ pull, piece })),
    [{ pull: 'P-001', piece: 'PRACTICE-8-1' }],
  );
  const shown = Number(readFileSync(join(home, 'shown'), 'utf8'));
  assert.ok(shown > 1000 && (offered[0]?.samples ?? 0) >= shown, `${offered[0]?.samples} of ${shown} shown`);
  await assert.rejects(desks.arm(rig, armInput('PRACTICE-8-1')), coded('pull/piece-pulled'));
  await assert.rejects(desks.recover(rig, 'NONE'), coded('pull/spool-unknown'));
  const desk = await desks.recover(rig, offered[0]?.spool ?? '');
  assert.deepEqual(desk?.unfinished, []);
  const [pull] = (await campaignRows(effects.store, 'PRACTICE')).pulls;
  assert.match(pull?.note ?? '', /^PRACTICE: .*Recovered after it was broken off\. .*breaks off at/);
});
