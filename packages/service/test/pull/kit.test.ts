import assert from 'node:assert/strict';
import { mkdirSync, mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { type TestContext, test } from 'node:test';
import { isInputError } from '@provinghouse/core';
import { servePractice, usualPattern } from '@provinghouse/rig/practice';
import { campaignRows, reviseRecord } from '@provinghouse/store';
import type { Effects } from '../../src/index.ts';
import { openRigDesks, readKit } from '../../src/pull/index.ts';
import { armInput, openBench, storyUntil } from './bench.ts';

const rig = 'PRACTICE-RIG';

function kitOf(t: TestContext, content: string): string {
  const home = mkdtempSync(join(tmpdir(), 'provinghouse-kit-'));
  t.after(() => rmSync(home, { recursive: true, force: true }));
  mkdirSync(join(home, 'kit'));
  writeFileSync(join(home, 'kit', `${rig}.json`), content);
  return home;
}

const lines = (port: number, pattern: string) =>
  JSON.stringify({ sources: [{ kind: 'tcp lines', host: '127.0.0.1', port, pattern, isClockFree: true }] });

test('no Kit is no rig, and a file of Kit that describes no wires is told with its name', async (t) => {
  assert.deepEqual(await readKit(join(tmpdir(), 'provinghouse-nowhere')), []);
  for (const content of ['{', '{}', '{"sources":[]}', '{"sources":[{"kind":"smoke"}]}', lines(1, 'F {force}')]) {
    const home = kitOf(t, content);
    await assert.rejects(
      readKit(home),
      (error) => isInputError(error) && error.code === 'pull/kit' && error.message.includes(`${rig}.json`),
      content,
    );
  }
});

test('the limit of the fixture and the agreed drop are read with their units, and nothing else is taken for them', async (t) => {
  const sources = JSON.parse(lines(1, '{force[kN]}')).sources;
  const kit = (more: object) => readKit(kitOf(t, JSON.stringify({ sources, ...more })));
  const [rigAt] = await kit({ fixtureLimit_kN: 60, agreedDrop: 0.2 });
  assert.deepEqual([rigAt?.fixtureLimit_kN, rigAt?.agreedDrop], [60, 0.2]);
  const [bare] = await kit({});
  assert.deepEqual([bare?.fixtureLimit_kN, bare?.agreedDrop], [null, null]);
  for (const fault of [{ fixtureLimit_kN: 0 }, { fixtureLimit_kN: '60' }, { agreedDrop: 20 }, { fixtureLimit: 60 }])
    await assert.rejects(
      kit(fault),
      (error) =>
        isInputError(error) && error.code === 'pull/kit' && error.message.includes(Object.keys(fault)[0] ?? '?'),
      JSON.stringify(fault),
    );
});

async function wiredBench(t: TestContext) {
  const wire = await servePractice({ over: 'tcp', seed: 3, speed: 100, startWhen: 'told' });
  t.after(() => wire.stop());
  const rigs = await readKit(kitOf(t, lines(wire.port ?? 0, usualPattern(true))));
  return { wire, rigs, ...(await openBench(t, rigs)) };
}

test('a rig wired by Kit is recorded over its wire, and what says of itself that it is simulated is marked so', async (t) => {
  const { wire, desks, effects } = await wiredBench(t);
  await desks.arm(rig, armInput('PRACTICE-8-1'));
  await new Promise((resolve) => setTimeout(resolve, 100));
  await desks.start(rig);
  wire.start();
  const end = (await storyUntil(desks, rig, 'ended')).at(-1);
  assert.ok(end?.kind === 'ended' && end.view.ended === 'parted');
  const { pulls } = await campaignRows(effects.store, 'PRACTICE');
  assert.match(pulls[0]?.note ?? '', /^PRACTICE/);
});

test('a wire that is taken for a real one but sends a simulated pull starts nothing in a campaign in earnest', async (t) => {
  const { desks, effects } = await wiredBench(t);
  await inEarnest(effects);
  await desks.arm(rig, armInput('PRACTICE-8-1'));
  await new Promise((resolve) => setTimeout(resolve, 200));
  await assert.rejects(desks.start(rig), (error) => isInputError(error) && error.code === 'pull/practice-in-earnest');
});

test('a simulated pull that was broken off is not recovered into a campaign in earnest, though its head knew nothing of it', async (t) => {
  const { wire, rigs, desks, effects, home } = await wiredBench(t);
  await desks.arm(rig, armInput('PRACTICE-8-1'));
  await desks.start(rig);
  wire.start();
  await new Promise((resolve) => setTimeout(resolve, 400));
  await desks.close();
  const later = openRigDesks({ rigs, home }, effects);
  const head = join(home, 'spool', 'PRACTICE.P-001.json');
  writeFileSync(head, readFileSync(head, 'utf8').replace('"isPractice": true', '"isPractice": false'));
  await inEarnest(effects);
  await assert.rejects(
    later.recover(rig, 'PRACTICE.P-001'),
    (error) => isInputError(error) && error.code === 'pull/practice-in-earnest',
  );
  assert.equal((await campaignRows(effects.store, 'PRACTICE')).pulls.length, 0);
});

/** Takes the marking off the practice campaign, as somebody might who wants its pulls to pass for real ones. */
async function inEarnest({ store }: Effects): Promise<void> {
  const [campaign] = (await campaignRows(store, 'PRACTICE')).campaign;
  assert.ok(campaign);
  await reviseRecord(store, {
    campaign: 'PRACTICE',
    kind: 'campaign',
    id: 'PRACTICE',
    revision: 1,
    body: { ...campaign, marking: null },
    who: 'learner',
    why: 'to pass it for real',
    at: '2026-03-11T08:00:00Z',
  });
}
