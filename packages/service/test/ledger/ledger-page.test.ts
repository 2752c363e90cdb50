import assert from 'node:assert/strict';
import { test } from 'node:test';
import { rowWith } from '@provinghouse/contract';
import fc from 'fast-check';
import { correctRow, enterRows, freezePlan, unblind, withdrawRow } from '../../src/entry/index.ts';
import { ledgerPage, ledgerState } from '../../src/index.ts';
import { code, person, piece, prepared, product, sample, who } from '../entry/desk.ts';

const all = { before: null, limit: 100, search: '', kinds: [] };

test('pages give every entry once, the newest first', async (t) => {
  const effects = await prepared(t);
  const whole = await ledgerPage(code, all, effects);
  const seen: number[] = [];
  for (let before: number | null = null, more = true; more; ) {
    const page = await ledgerPage(code, { ...all, before, limit: 3 }, effects);
    seen.push(...(page?.entries ?? []).map(({ seq }) => seq));
    before = page?.next ?? null;
    more = before !== null;
  }
  assert.deepEqual(
    seen,
    whole?.entries.map(({ seq }) => seq),
  );
  assert.deepEqual(
    seen,
    seen.toSorted((a, b) => b - a),
  );
  const people = await ledgerPage(code, { ...all, kinds: ['people', 'samples'], limit: 1 }, effects);
  assert.deepEqual([people?.entries.map(({ kind }) => kind), people?.found], [['samples'], 2]);
});

test('a correction shows the cells it changed, before and after, and is found by its reason and by its old value', async (t) => {
  const effects = await prepared(t);
  const body = { ...product, grade: '3' };
  await correctRow(code, { kind: 'products', id: 'ASH-8', revision: 1, body, who, why: 'misread tag' }, effects);
  const [entry] = (await ledgerPage(code, { ...all, search: 'MISREAD' }, effects))?.entries ?? [];
  assert.deepEqual(entry?.changes, [{ cell: 'grade', before: '4', after: '3' }]);
  assert.equal((await ledgerPage(code, { ...all, search: 'grade 3 misread' }, effects))?.found, 1);
  assert.equal((await ledgerPage(code, { ...all, search: 'no such words' }, effects))?.found, 0);
});

test('while a campaign is blind, its ledger names no product, supplier or sample, and cannot be searched for one', async (t) => {
  const effects = await prepared(t, { blinding: 'blind' });
  await enterRows(code, { rows: { pieces: [piece('K7P')] }, who, why: 'cut from the chain of Ash' }, effects);
  await freezePlan(code, { who, why: 'agreed' }, effects);
  const page = await ledgerPage(code, all, effects);
  assert.doesNotMatch(JSON.stringify(page), /\bash/i);
  assert.equal((await ledgerPage(code, { ...all, search: 'ash' }, effects))?.found, 0);
  await unblind(code, { who, why: 'done' }, effects);
  assert.match(JSON.stringify(await ledgerPage(code, all, effects)), /Ash/);
});

test('while a campaign is blind, a search for a hidden name is answered as one for nonsense', async (t) => {
  const effects = await prepared(t, { blinding: 'blind' });
  await enterRows(code, { rows: { pieces: [piece('K7P')] }, who, why: 'cut from the chain of Ash' }, effects);
  await freezePlan(code, { who, why: 'agreed' }, effects);
  const nonsense = await ledgerPage(code, { ...all, search: 'qqqq' }, effects);
  for (const hidden of ['Ash', 'ash-8', 'ASH-8-S1', 'chain of Ash', 'short-link', '6.437', 'EUR', '2026-03-05'])
    for (const kinds of [[], ['products'], ['samples', 'pieces']])
      assert.deepEqual(await ledgerPage(code, { ...all, search: hidden, kinds }, effects), nonsense, hidden);
  // What is shown in the place of a name is found, although it stands nowhere in the record.
  assert.equal((await ledgerPage(code, { ...all, search: 'HIDDEN while', kinds: ['pieces'] }, effects))?.found, 1);
  await unblind(code, { who, why: 'done' }, effects);
  assert.notEqual((await ledgerPage(code, { ...all, search: 'ash' }, effects))?.found, 0);
});

test('whatever is written, each piece of a line finds it', async (t) => {
  const effects = await prepared(t);
  const odd = fc.constantFrom('\u212a', '\u0130', 'İx', 'É', 'ß', '"', '\\', '\n', '\u0000', '%', '_', 'k', 'I', '.5');
  const words = fc.array(fc.oneof(odd, fc.string({ unit: 'grapheme', maxLength: 3 })), { minLength: 1 });
  let times = 0;
  const law = fc.asyncProperty(words, words, fc.nat(), fc.nat(), async (why, name, from, length) => {
    times += 1;
    const person = rowWith('people', { person: `p${times}`, name: `a${name.join('').replace(/\p{Cc}/gu, '')}` });
    await enterRows(code, { rows: { people: [person] }, who, why: `b${why.join('')}` }, effects);
    const line = (await ledgerPage(code, { ...all, limit: 1 }, effects))?.entries[0];
    const told = [line?.why ?? '', line?.changes?.find(({ cell }) => cell === 'name')?.after ?? ''];
    for (const text of told.map((one) => one.toLowerCase())) {
      const start = from % text.length;
      const page = await ledgerPage(code, { ...all, search: text.slice(start, start + 1 + (length % 8)) }, effects);
      assert.ok(page?.entries.some(({ seq }) => seq === line?.seq));
    }
  });
  await fc.assert(law, { seed: 7, numRuns: 60 });
});

test('an unknown campaign has no ledger; a bench at which nothing was entered has an empty one', async (t) => {
  const effects = await prepared(t);
  assert.equal(await ledgerPage('NONE', all, effects), null);
  assert.equal(await ledgerState('NONE', effects), null);
  assert.deepEqual(await ledgerPage('_bench', all, effects), { entries: [], found: 0, next: null });
  assert.equal((await ledgerState(code, effects))?.verified, true);
});

test('while a campaign is blind, its ledger does not tell a name as it stands in an id, in a cell or in what was taken out', async (t) => {
  const effects = await prepared(t, { blinding: 'blind' });
  const named = { ...sample, sample: 'quay/7' };
  const gone = { ...sample, sample: 'S0' };
  const custody = rowWith('custody', {
    sample: named.sample,
    move: 1,
    moved_at: '2026-03-05T14:00:00Z',
    place: 'shelf 2',
  });
  const other = { ...product, product: 'B "8"' };
  await enterRows(code, { rows: { samples: [named, gone], custody: [custody], products: [other] }, who }, effects);
  await withdrawRow(code, { kind: 'samples', id: 'S0', revision: 1, who, why: 'entered twice' }, effects);
  await freezePlan(code, { who, why: 'agreed' }, effects);
  const guess = { ...person, person: 'reader', name: 'Reader of B "8" (invented)' };
  await enterRows(code, { rows: { people: [guess] }, who }, effects);
  const page = await ledgerPage(code, all, effects);
  const records = page?.entries.map(({ record }) => record) ?? [];
  assert.deepEqual(
    records.filter((record) => /quay.*7|S0/.test(record)),
    [],
  );
  assert.ok(records.some((record) => /^Product [AB], sample \d\/1$/.test(record)));
  assert.equal(page?.entries[0]?.changes, null);
});
