import assert from 'node:assert/strict';
import { spawnSync } from 'node:child_process';
import { copyFileSync, cpSync, mkdirSync, mkdtempSync, readFileSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { after, before, type TestContext, test } from 'node:test';
import { fileURLToPath } from 'node:url';
import { cautions, type LiveMessage } from '@provinghouse/contract';
import { isInputError, readTrace, startWatch, step, viewOf } from '@provinghouse/core';
import { recover } from '@provinghouse/rig';
import { attachments, campaignRows, readBlob } from '@provinghouse/store';
import { sealed } from '../../src/pull/keeper.ts';
import { openBench, scriptedRig, simulated, storyUntil } from './bench.ts';

const rig = 'PRACTICE-RIG';
const spool = 'PRACTICE.P-001';
const goOnInput = { spool, confirmed: 'PRACTICE-8-1', cautions: [...cautions] };
/** A record in which a pull was killed, made once. */
const killedHome = mkdtempSync(join(tmpdir(), 'provinghouse-killed-'));
before(() => {
  const program = fileURLToPath(new URL('./process/pull.ts', import.meta.url));
  spawnSync(process.execPath, [program, killedHome], { stdio: 'inherit' });
});
after(() => rmSync(killedHome, { recursive: true, force: true }));

async function killedBench(t: TestContext) {
  const bench = await openBench(t, [scriptedRig(rig)]);
  cpSync(join(killedHome, 'spool'), join(bench.home, 'spool'), { recursive: true });
  return bench;
}

function coded(code: string) {
  return (error: unknown) => isInputError(error) && error.code === code;
}

function viewsOf(told: readonly LiveMessage[]) {
  return told.flatMap((message) => (message.kind === 'view' ? [message.view] : []));
}

test('a pull whose process was killed is gone on with: maximum, stage and curve run on, and the gap is marked everywhere', async (t) => {
  const { desks, effects } = await killedBench(t);
  const [waits] = (await desks.desk(rig))?.unfinished ?? [];
  assert.ok(waits?.canGoOn && waits.how === 'broken off' && waits.last_s !== null);
  const told = storyUntil(desks, rig, 'ended');
  const desk = await desks.goOn(rig, goOnInput);
  assert.deepEqual([desk?.pull?.pull, desk?.pull?.state, desk?.unfinished], ['P-001', 'running', []]);
  const story = await told;
  const first = story.findIndex(({ kind }) => kind === 'samples');
  assert.deepEqual(
    story.slice(0, first).map(({ kind }) => kind),
    ['armed', 'started'],
  );
  const curve = story[first];
  assert.ok(curve?.kind === 'samples' && curve.received >= waits.samples);
  const times = story.flatMap((message) => (message.kind === 'samples' ? message.samples : [])).map((s) => s.time_s);
  assert.deepEqual(
    times,
    times.toSorted((a, b) => a - b),
  );
  const view = viewsOf(story)[0];
  assert.ok(view?.maximumSoFar_kN === waits.maximum_kN, `${view?.maximumSoFar_kN} kN`);
  const gap = story.find(({ kind }) => kind === 'gap');
  assert.ok(gap?.kind === 'gap' && gap.from_s === waits.last_s && gap.to_s > gap.from_s + 0.9);
  assert.match(gap.words, /the record broke off and was taken up again/);

  const end = story.at(-1);
  assert.ok(end?.kind === 'ended' && end.view.ended === 'parted' && end.sha256 !== null);
  const text = new TextDecoder().decode(await readBlob(effects.store, end.sha256));
  assert.match(text, /^# .*Gap from [\d.]+ s to [\d.]+ s: the record broke off and was taken up again\.$/m);
  const [pull] = (await campaignRows(effects.store, 'PRACTICE')).pulls;
  assert.match(pull?.note ?? '', /^PRACTICE: .*Gone on with after it was broken off\..*Gap from/);
  assert.equal(pull?.valid, true);
  const { maximumForce_kN, zeroForce_kN } = readTrace(new TextEncoder().encode(text));
  const asRead_kN = (maximumForce_kN ?? 0) + (zeroForce_kN ?? 0);
  assert.ok(Math.abs(asRead_kN - (end.view.maximumAccepted_kN ?? 0)) < 0.05, `${asRead_kN} kN`);
  assert.ok(
    Math.abs((maximumForce_kN ?? 0) - simulated.truth.maximumForce_kN) < 0.01 * simulated.truth.maximumForce_kN,
  );
});

test('the watch of a pull that is gone on with stands where it stood: as if nothing had been broken off', async (t) => {
  const { desks, home } = await killedBench(t);
  const spoolPath = join(home, 'spool', `${spool}.spool`);
  const copy = join(home, 'copy.spool');
  copyFileSync(spoolPath, copy);
  const story = storyUntil(desks, rig, 'view');
  await desks.goOn(rig, goOnInput);
  const [view] = viewsOf(await story);
  const { columns } = await recover(copy);
  const facts = (await desks.desk(rig))?.pull;
  const straight = startWatch({
    ruleLines: facts?.ruleLines ?? [],
    tableSpeedLimits_mm_per_min: facts?.tableSpeedLimits_mm_per_min ?? null,
    rangeMaximum_kN: facts?.rangeMaximum_kN ?? null,
    fixtureLimit_kN: null,
    area_mm2: null,
    agreedDrop_pct: null,
    silence_s: facts?.silence_s ?? 0,
  });
  columns.time_s.forEach((time_s, i) => {
    const [force_kN = 0, table_mm = null, extension_mm = null] = [
      columns.force_kN[i],
      columns.table_mm[i],
      columns.extension_mm[i],
    ].map((value) => (value === undefined || Number.isNaN(value) ? null : value));
    step(straight, { time_s, force_kN: force_kN ?? 0, table_mm, extension_mm });
  });
  const { stage, maximumSoFar_kN, timeOfMaximumSoFar_s, passed } = viewOf(straight);
  assert.deepEqual(
    [view?.stage, view?.maximumSoFar_kN, view?.timeOfMaximumSoFar_s, view?.passed],
    [stage, maximumSoFar_kN, timeOfMaximumSoFar_s, passed],
  );
});

test('before a pull is gone on with the checklist holds again: cautions, tag, and a recording that can be gone on with', async (t) => {
  const { desks } = await killedBench(t);
  await assert.rejects(desks.goOn(rig, { ...goOnInput, cautions: [] }), coded('pull/caution-open'));
  await assert.rejects(desks.goOn(rig, { ...goOnInput, confirmed: 'PRACTICE-8-2' }), coded('pull/piece-not-confirmed'));
  await assert.rejects(desks.goOn(rig, { ...goOnInput, spool: 'NONE' }), coded('pull/spool-unknown'));
  const [waits] = (await desks.desk(rig))?.unfinished ?? [];
  assert.equal(waits?.canGoOn, true);
  assert.equal(await desks.goOn('NONE', goOnInput), null);
});

async function stoppedAt(t: TestContext, upTo: number) {
  const bench = await openBench(t, [scriptedRig(rig, { upTo })]);
  const { desks } = bench;
  await desks.arm(rig, { ...goOnInput, campaign: 'PRACTICE', piece: 'PRACTICE-8-1', operator: null });
  await desks.start(rig);
  return bench;
}

test('a pull that has parted, and one in which nothing was recorded, are kept or put aside and not gone on with', async (t) => {
  const empty = await stoppedAt(t, 0);
  await empty.desks.stop(rig);
  await storyUntil(empty.desks, rig, 'ended');
  assert.equal((await empty.desks.desk(rig))?.unfinished[0]?.canGoOn, false);
  await assert.rejects(empty.desks.goOn(rig, goOnInput), coded('pull/cannot-go-on'));
  const whole = await openBench(t, [scriptedRig(rig)]);
  mkdirSync(join(whole.home, 'spool', `${spool}.csv`), { recursive: true });
  await whole.desks.arm(rig, { ...goOnInput, campaign: 'PRACTICE', piece: 'PRACTICE-8-1', operator: null });
  await whole.desks.start(rig);
  await storyUntil(whole.desks, rig, 'ended');
  const [waits] = (await whole.desks.desk(rig))?.unfinished ?? [];
  assert.deepEqual([waits?.how, waits?.hasParted, waits?.canGoOn], ['ended', true, false]);
  await assert.rejects(whole.desks.goOn(rig, goOnInput), coded('pull/cannot-go-on'));
});

test('a keeping that fails leaves the recording as it was, and it can be tried again', async (t) => {
  const { desks, home, effects } = await openBench(t, [scriptedRig(rig)]);
  const inTheWay = join(home, 'spool', `${spool}.csv`);
  mkdirSync(inTheWay, { recursive: true });
  await desks.arm(rig, { ...goOnInput, campaign: 'PRACTICE', piece: 'PRACTICE-8-1', operator: null });
  await desks.start(rig);
  const end = (await storyUntil(desks, rig, 'ended')).at(-1);
  assert.ok(end?.kind === 'ended' && end.sha256 === null);
  const before = readFileSync(join(home, 'spool', `${spool}.spool`));
  await assert.rejects(desks.recover(rig, spool), coded('spool/unwritable'));
  assert.deepEqual(readFileSync(join(home, 'spool', `${spool}.spool`)), before);
  rmSync(inTheWay, { recursive: true });
  assert.deepEqual((await desks.recover(rig, spool))?.unfinished, []);
  assert.equal((await campaignRows(effects.store, 'PRACTICE')).pulls.length, 1);
  const again = (await storyUntil(desks, rig, 'ended')).at(-1);
  assert.ok(again?.kind === 'ended' && again.sha256 !== null, 'whoever looks on is told that it is kept now');
});

test('a recording is sealed in a thread of its own, told as it goes, to the bytes that this thread would make', async (t) => {
  const threads: number[] = [];
  const count = (worker: { readonly threadId: number }) => void threads.push(worker.threadId);
  process.on('worker', count);
  t.after(() => process.off('worker', count));
  const { desks, home, effects } = await killedBench(t);
  const here = mkdtempSync(join(tmpdir(), 'provinghouse-here-'));
  t.after(() => rmSync(here, { recursive: true, force: true }));
  for (const end of ['json', 'spool'])
    copyFileSync(join(home, 'spool', `${spool}.${end}`), join(here, `${spool}.${end}`));
  const shares: number[] = [];
  await desks.follow(rig, {
    send: (message) => message.kind === 'keeping' && shares.push(message.share),
    backlog: () => 0,
    drop: () => undefined,
  });
  await desks.recover(rig, spool);
  assert.equal(threads.length, 1);
  assert.notEqual(threads[0], 0);
  assert.ok(shares.length > 10 && shares[0] === 0 && shares.at(-1) === 1, String(shares.length));
  const head = JSON.parse(readFileSync(join(here, `${spool}.json`), 'utf8'));
  const same = await sealed({ folder: here, head });
  const [file] = (await attachments(effects.store, 'PRACTICE')).filter(({ path }) => path.startsWith('traces/'));
  assert.equal(file?.sha256, same.sha256);
});

test('a rig that falls silent closes the recording and leaves it to a person: it is gone on with when the rig returns', async (t) => {
  const silent = scriptedRig(rig, { upTo: 0.5 });
  const back = scriptedRig(rig);
  let pulls = 0;
  const wired = {
    ...silent,
    open: (...given: Parameters<typeof back.open>) => (pulls++ ? back : silent).open(...given),
  };
  const { desks, effects } = await openBench(t, [wired], undefined, 1.2);
  await desks.arm(rig, { ...goOnInput, campaign: 'PRACTICE', piece: 'PRACTICE-8-1', operator: null });
  await desks.start(rig);
  const end = (await storyUntil(desks, rig, 'ended')).at(-1);
  assert.ok(end?.kind === 'ended' && end.view.ended === 'silence' && end.sha256 === null);
  const desk = await desks.desk(rig);
  assert.match(
    desk?.pull?.fault ?? '',
    /^Nothing came from the rig for 1.2 s\. .* waits: go on with it, or keep it as it is\.$/,
  );
  assert.deepEqual(
    desk?.unfinished.map(({ how, canGoOn }) => ({ how, canGoOn })),
    [{ how: 'silence', canGoOn: true }],
  );
  assert.equal((await campaignRows(effects.store, 'PRACTICE')).pulls.length, 0);
  await desks.goOn(rig, goOnInput);
  const after = (await storyUntil(desks, rig, 'ended')).at(-1);
  assert.ok(after?.kind === 'ended' && after.view.ended === 'parted' && after.sha256 !== null);
});

test('a recording that fell silent can be kept as it is, and its note says how it ended', async (t) => {
  const { desks, effects } = await openBench(t, [scriptedRig(rig, { upTo: 0.5 })], undefined, 1.2);
  await desks.arm(rig, { ...goOnInput, campaign: 'PRACTICE', piece: 'PRACTICE-8-1', operator: null });
  await desks.start(rig);
  await storyUntil(desks, rig, 'ended');
  await desks.recover(rig, spool);
  const [pull] = (await campaignRows(effects.store, 'PRACTICE')).pulls;
  assert.match(pull?.note ?? '', /^PRACTICE: .*Ended by silence of the rig\./);
});
