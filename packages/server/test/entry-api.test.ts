import assert from 'node:assert/strict';
import { test } from 'node:test';
import { rowWith } from '@provinghouse/contract';
import { recordBench } from './bench.ts';
import { quay as campaign } from './memory-ports.ts';

const { app, post, sendFile, faults } = await recordBench();
const root = '/api/campaigns/QUAY-1';
const person = rowWith('people', { person: 'gauger', name: 'First person (invented)' });

test('a campaign is opened, a row entered, corrected, listed and withdrawn, each with the word of the ledger', async () => {
  assert.deepEqual((await post('/api/campaigns', { campaign, who: 'gauger' })).json(), { ledgerSeq: 1 });
  assert.deepEqual((await post(`${root}/records`, { rows: { people: [person] }, who: 'gauger' })).json(), {
    ledgerSeq: 2,
  });
  const body = { ...person, role: 'gauging' };
  const correction = { kind: 'people', id: 'gauger', revision: 1, body, who: 'gauger', why: 'role added' };
  assert.deepEqual((await post(`${root}/corrections`, correction)).json(), { ledgerSeq: 3, revision: 2 });
  const page = (await app.inject(`${root}/records/people?limit=10`)).json();
  assert.deepEqual(
    page.rows.map((row: { body: unknown }) => row.body),
    [body],
  );
  assert.equal(page.next, null);
  const withdrawal = { kind: 'people', id: 'gauger', revision: 2, who: 'gauger', why: 'left' };
  assert.deepEqual((await post(`${root}/withdrawals`, withdrawal)).json(), { ledgerSeq: 4 });
  assert.equal((await app.inject(`${root}/ledger/state`)).json().verified, true);
});

test('the same correction from an old revision by somebody else is a conflict with its own code, and nothing is lost', async () => {
  const second = { ...person, person: 'reader' };
  await post(`${root}/records`, { rows: { people: [second] }, who: 'gauger' });
  const correction = { kind: 'people', id: 'reader', revision: 1, who: 'gauger', why: 'role added' };
  await post(`${root}/corrections`, { ...correction, body: { ...second, role: 'first' } });
  const late = await post(`${root}/corrections`, { ...correction, who: 'other', body: { ...second, role: 'other' } });
  assert.equal(late.statusCode, 409);
  assert.equal(late.headers['content-type'], 'application/problem+json; charset=utf-8');
  assert.equal(late.json().code, 'record-conflict');
  assert.equal(late.json().fault, 'store/revision-conflict');
  const page = (await app.inject(`${root}/records/people`)).json();
  assert.equal(page.rows[0].body.role, 'first');
});

const refusals: readonly (readonly [string, string, object, number, string])[] = [
  [
    'a row that does not fit its table',
    `${root}/records`,
    { rows: { people: [{ ...person, name: '' }] }, who: 'g' },
    422,
    'entry-refused',
  ],
  [
    'a column that is none',
    `${root}/records`,
    { rows: { people: [{ ...person, shoe: 44 }] }, who: 'g' },
    400,
    'body-malformed',
  ],
  ['nobody named as who', `${root}/records`, { rows: {}, who: '' }, 400, 'body-malformed'],
  [
    'an unknown campaign',
    '/api/campaigns/NONE/records',
    { rows: { people: [person] }, who: 'g' },
    404,
    'campaign-unknown',
  ],
  [
    'a correction of nothing',
    `${root}/corrections`,
    { kind: 'people', id: 'none', revision: 1, body: { ...person, person: 'none' }, who: 'g', why: 'x' },
    404,
    'record-unknown',
  ],
  [
    'a correction without a reason',
    `${root}/corrections`,
    { kind: 'people', id: 'reader', revision: 2, body: { ...person, person: 'reader' }, who: 'g', why: ' ' },
    422,
    'entry-refused',
  ],
  ['a campaign code that is taken', '/api/campaigns', { campaign, who: 'g' }, 422, 'entry-refused'],
  ['a plan that is not complete', `${root}/plan/freeze`, { who: 'g', why: 'x' }, 422, 'entry-refused'],
];
for (const [what, url, payload, status, code] of refusals)
  test(`${what} is refused with ${status} ${code}, and no entry is written`, async () => {
    const before = (await app.inject(`${root}/ledger/state`)).json().head;
    const reply = await post(url, payload);
    assert.equal(reply.statusCode, status);
    assert.equal(reply.json().code, code);
    assert.equal((await app.inject(`${root}/ledger/state`)).json().head, before);
    assert.deepEqual(faults, []);
  });

test('a page of another site may not write', async () => {
  const reply = await post('/api/campaigns', { campaign, who: 'g' }, { origin: 'http://elsewhere.example' });
  assert.equal(reply.json().code, 'origin-refused');
});

test('bytes of a file come back as they were sent; what a browser might run is only offered to be kept', async () => {
  const bytes = Buffer.from('<script>alert(1)</script>');
  const path = 'photographs/one.svg';
  const photograph = rowWith('photographs', { file: path });
  const request = {
    rows: { photographs: [photograph] },
    files: [{ path, sha256: await sendFile(bytes) }],
    who: 'gauger',
  };
  assert.equal((await post(`${root}/records`, request)).statusCode, 200);
  const reply = await app.inject(`${root}/files/${path}`);
  assert.equal(reply.headers['content-type'], 'application/octet-stream');
  assert.match(String(reply.headers['content-disposition']), /^attachment/);
  assert.deepEqual(reply.rawPayload, bytes);
});

test('the bench has its own book, which no campaign can reach', async () => {
  assert.equal((await post('/api/bench/records', { rows: { people: [person] }, who: 'gauger' })).statusCode, 200);
  assert.equal((await app.inject('/api/bench/records/people')).json().rows.length, 1);
  assert.equal((await app.inject('/api/campaigns/_bench/records/people')).json().code, 'address-malformed');
  const codes = (await app.inject('/api/campaigns')).json().campaigns.map((one: { campaign: string }) => one.campaign);
  assert.deepEqual(codes, ['QUAY-1']);
});

test('files of a campaign and of the bench are listed by path, in pages, those under a folder alone where it is named', async () => {
  const send = async (words: string) => {
    const headers = { 'content-type': 'application/octet-stream' };
    return (await app.inject({ method: 'PUT', url: '/api/files', payload: Buffer.from(words), headers })).json();
  };
  const paths = ['specifications/b.json', 'specifications/a.json', 'notes/c.txt'];
  const files = await Promise.all(paths.map(async (path) => ({ path, sha256: (await send(path)).sha256 })));
  for (const root of ['/api/campaigns/QUAY-1', '/api/bench']) {
    assert.equal((await post(`${root}/records`, { rows: {}, files, who: 'gauger' })).statusCode, 200);
    const list = async (query: string) => {
      const page = (await app.inject(`${root}/files?${query}`)).json();
      return [page.files.map(({ path }: { path: string }) => path), page.next];
    };
    const [a, b] = ['specifications/a.json', 'specifications/b.json'];
    assert.equal((await list(''))[0][0], 'notes/c.txt');
    assert.deepEqual(await list('under=specifications/'), [[a, b], null]);
    assert.deepEqual(await list('under=specifications/&limit=1'), [[a], a]);
    assert.deepEqual(await list(`under=specifications/&limit=1&after=${a}`), [[b], null]);
  }
  const unknown = await app.inject('/api/campaigns/NONE/files');
  assert.deepEqual([unknown.statusCode, unknown.json().code], [404, 'campaign-unknown']);
});
