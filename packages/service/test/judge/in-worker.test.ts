import assert from 'node:assert/strict';
import { mkdtemp, rm } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { after, before, test } from 'node:test';
import { fileURLToPath } from 'node:url';
import {
  assembleFinding,
  assembleInWorker,
  bringIn,
  type Evidence,
  gatherEvidence,
  type OpenRecord,
  openRecord,
} from '../../src/index.ts';

const demo = fileURLToPath(new URL('../../../../examples/sallow-reach', import.meta.url));

let home = '';
let record: OpenRecord;
let evidence: Evidence;

before(async () => {
  home = await mkdtemp(join(tmpdir(), 'provinghouse-'));
  record = await openRecord({ home });
  const { campaign } = await bringIn({ path: demo, who: 'tester', why: 'to be judged' }, record.effects);
  evidence = await gatherEvidence(campaign, record.effects);
});

after(async () => {
  await record.close();
  await rm(home, { recursive: true, force: true });
});

test('a thread of its own finds what the same thread finds, and tells how far it is', async () => {
  const steps: number[] = [];
  const finding = await assembleInWorker(evidence, { progress: (_, done) => steps.push(done) });
  assert.deepEqual(finding, JSON.parse(JSON.stringify(assembleFinding(evidence))));
  assert.equal(steps.length, finding.pieces.length);
});

test('a cancelled judgement ends at once with the reason given', async () => {
  const cancel = new AbortController();
  const judging = assembleInWorker(evidence, {
    progress: () => cancel.abort(new Error('no longer wanted')),
    signal: cancel.signal,
  });
  await assert.rejects(judging, /no longer wanted/);
  await assert.rejects(
    assembleInWorker(evidence, { progress: () => undefined, signal: cancel.signal }),
    /no longer wanted/,
  );
});

test('a fault of the input comes out of the thread as itself', async () => {
  const products = evidence.rows.products.map((row) => ({ ...row, specification: 'no-such-rule' }));
  const broken = { ...evidence, rows: { ...evidence.rows, products } };
  await assert.rejects(assembleInWorker(broken, { progress: () => undefined }), {
    name: 'InputError',
    code: 'chain/unknown-standard',
  });
});
