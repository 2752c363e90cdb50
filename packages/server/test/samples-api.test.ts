import assert from 'node:assert/strict';
import { before, test } from 'node:test';
import { rowWith } from '@provinghouse/contract';
import { campaignBench } from './bench.ts';

const root = '/api/campaigns/QUAY-1';
const who = 'gauger';
const cutting = { sample: 'ASH-8-S1', count: 2, links: 5, gaugedOver: null, note: null, piecesBefore: 0, who };
const claim = { product: 'ASH-8', supplier: 'Ash', nominal_size_mm: 8, specification: 'en-818-3', grade: '4' };
const products = [rowWith('products', claim)];
const samples = [rowWith('samples', { sample: 'ASH-8-S1', product: 'ASH-8', received_on: '2026-03-05' })];

const { app, post } = await campaignBench();
before(() => post(`${root}/records`, { rows: { products, samples }, who }));

const cut = (payload: object, headers = {}) => post(`${root}/samples/cut`, payload, headers);

test('a cutting is answered with the codes and the word of the ledger, and with the same when it is sent again', async () => {
  const first = await cut(cutting);
  assert.deepEqual(first.json(), { ledgerSeq: 5, pieces: ['ASH-8-S1-1', 'ASH-8-S1-2'] });
  assert.deepEqual((await cut(cutting)).json(), first.json());
});

test('a cutting that cannot be made is a problem with its code', async () => {
  const unknown = await cut({ ...cutting, sample: 'S9' });
  assert.equal(unknown.statusCode, 422);
  assert.equal(unknown.json().fault, 'entry/sample-unknown');
  assert.equal((await cut({ ...cutting, count: 5, who: 'other' })).json().fault, 'entry/cut-meanwhile');
  assert.equal((await cut({ ...cutting, count: 0 })).json().code, 'body-malformed');
  assert.equal((await cut({ ...cutting, count: '2' })).json().code, 'body-malformed');
});

test('labels are a PDF of the pieces asked for, on either sheet; an unknown piece or sheet is refused', async () => {
  for (const query of ['', '?pieces=ASH-8-S1-2&sheet=single-62x29', '?sheet=a4-3x8&used=5&marks=true']) {
    const reply = await app.inject(`${root}/labels.pdf${query}`);
    assert.equal(reply.headers['content-type'], 'application/pdf', query);
    assert.match(String(reply.headers['content-disposition']), /^inline/);
    assert.equal(reply.rawPayload.subarray(0, 5).toString(), '%PDF-');
  }
  const unknown = await app.inject(`${root}/labels.pdf?pieces=NONE`);
  assert.equal(unknown.statusCode, 422);
  assert.equal(unknown.json().fault, 'entry/piece-unknown');
  assert.equal((await app.inject(`${root}/labels.pdf?sheet=folio`)).statusCode, 400);
  assert.equal((await app.inject('/api/campaigns/NONE/labels.pdf')).json().code, 'campaign-unknown');
});

test('another site cannot cut a sample', async () => {
  assert.equal((await cut(cutting, { origin: 'http://elsewhere.example' })).statusCode, 403);
});
