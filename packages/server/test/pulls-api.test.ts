import assert from 'node:assert/strict';
import { test } from 'node:test';
import { campaignBench } from './bench.ts';

const { app, post, sendFile } = await campaignBench();
const preview = (payload: object, code = 'QUAY-1', headers = {}) =>
  post(`/api/campaigns/${code}/trace-preview`, payload, headers);
const asked = { name: 'a.csv', rig: null, piece: null, pulledAt: null };
const sent = (text: string) => sendFile(Buffer.from(text));

test('a file that was sent is previewed with all that is known of it, and nothing is kept', async () => {
  const sha256 = await sent('time_s,force_kN\n0,0\n1,10\n2,20\n3,30\n4,0\n');
  const reply = await preview({ ...asked, sha256 });
  assert.equal(reply.statusCode, 200);
  assert.deepEqual(
    reply.json().columns.map(({ name, unit }: { name: string; unit: string }) => `${name} ${unit}`),
    ['time s', 'force kN'],
  );
  const page = (await app.inject('/api/campaigns/QUAY-1/records/pulls')).json();
  assert.deepEqual(page.rows, []);
});

test('a file without a force comes back with its question, not with a problem', async () => {
  const reply = await preview({ ...asked, sha256: await sent('a,b\n1,2\n2,3\n3,4\n') });
  assert.equal(reply.statusCode, 200);
  assert.equal(reply.json().questions[0].code, 'trace/no-force-column');
});

const refusals: readonly (readonly [string, object, string, number, string])[] = [
  ['a file nobody sent', { ...asked, sha256: '0'.repeat(64) }, 'QUAY-1', 404, 'record-unknown'],
  ['an unknown campaign', { ...asked, sha256: '0'.repeat(64) }, 'NONE', 404, 'campaign-unknown'],
  ['no hash', { ...asked, sha256: 'x' }, 'QUAY-1', 400, 'body-malformed'],
  ['half the columns', { ...asked, sha256: '0'.repeat(64), columns: { time: null } }, 'QUAY-1', 400, 'body-malformed'],
];
for (const [what, body, code, status, problem] of refusals)
  test(`a preview of ${what} is refused with ${problem}`, async () => {
    const reply = await preview(body, code);
    assert.equal(reply.statusCode, status);
    assert.equal(reply.json().code, problem);
  });

test('another site may not ask for a preview', async () => {
  const reply = await preview({ ...asked, sha256: '0'.repeat(64) }, 'QUAY-1', { origin: 'http://elsewhere.example' });
  assert.equal(reply.json().code, 'origin-refused');
});

test('the planned order is answered, and an unknown campaign has none', async () => {
  const planned = await app.inject('/api/campaigns/QUAY-1/planned-pulls');
  assert.deepEqual(planned.json(), { order: [], seed: null, sentence: null });
  assert.equal((await app.inject('/api/campaigns/NONE/planned-pulls')).json().code, 'campaign-unknown');
});
