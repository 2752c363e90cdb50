import assert from 'node:assert/strict';
import { test } from 'node:test';
import { type Row, type RowHeld, rowWith, type TableName, tables } from '@provinghouse/contract';
import { isInputError } from '@provinghouse/core';
import { isStoreError } from '@provinghouse/store';
import fc from 'fast-check';
import {
  correctRow,
  enterRows,
  filesHeld,
  freezePlan,
  holdFile,
  rowsHeld,
  rowsOf,
  unblind,
  withdrawRow,
} from '../../src/entry/index.ts';
import { type Effects, judgeCampaign, ledgerPage, ledgerState } from '../../src/index.ts';
import { code, piece, prepared, product, sample, who } from './desk.ts';

const page = { after: -1, limit: 1000 };
const why = 'misread (invented)';
const mask = 'Product A, sample 1';
const coded = (wanted: string) => (error: unknown) =>
  (isInputError(error) || isStoreError(error)) && error.code === wanted;

const move = (of: string, number: number, cells: Partial<Row<'custody'>> = {}) =>
  rowWith('custody', { sample: of, move: number, moved_at: '2026-03-09T09:30:00Z', place: 'saw', ...cells });

/** A blind campaign with its sample received, a piece cut and its plan frozen. */
async function blinded(t: Parameters<typeof prepared>[0]): Promise<Effects> {
  const effects = await prepared(t, { blinding: 'blind' });
  const note = 'brought by Ash in person';
  const rows = { custody: [move(sample.sample, 1, { place: 'shelf 2', note })], pieces: [piece('K7P')] };
  await enterRows(code, { rows, who }, effects);
  await freezePlan(code, { who, why: 'agreed' }, effects);
  return effects;
}

async function photograph(path: string, cells: Partial<Row<'photographs'>>, effects: Effects) {
  const { sha256 } = await holdFile(new TextEncoder().encode(path), effects);
  return { rows: { photographs: [rowWith('photographs', { file: path, ...cells })] }, files: [{ path, sha256 }], who };
}

async function shown<T extends TableName>(kind: T, effects: Effects): Promise<RowHeld<T>[]> {
  // Rows of the table asked for.
  return [...(await rowsHeld(code, kind, page, effects)).rows] as RowHeld<T>[];
}

async function first<T extends TableName>(kind: T, effects: Effects): Promise<RowHeld<T>> {
  const [row] = await shown(kind, effects);
  assert.ok(row);
  return row;
}

const entries = async (effects: Effects) => (await ledgerState(code, effects))?.entries;

test('a sample named as a blind screen names it is moved, photographed and cut under its real code; sent again, nothing is kept twice', async (t) => {
  const effects = await blinded(t);
  const taken = await photograph('photographs/sample-1.png', { sample: mask }, effects);
  const request = {
    ...taken,
    rows: { ...taken.rows, custody: [move(mask, 2)], pieces: [{ ...piece('M4T'), sample: mask }] },
  };
  const kept = await enterRows(code, request, effects);
  const length = await entries(effects);
  assert.deepEqual(await enterRows(code, request, effects), kept);
  assert.equal(await entries(effects), length);
  const { store } = effects;
  for (const kind of ['custody', 'photographs', 'pieces'] as const)
    for (const row of await rowsOf(store, code, kind)) assert.equal(row.sample, sample.sample, kind);
});

test('the code on the label of a sample works while the campaign is blind, and is answered with its neutral name', async (t) => {
  const effects = await blinded(t);
  const request = { rows: { custody: [move(sample.sample, 2)] }, who };
  await enterRows(code, request, effects);
  await enterRows(code, { rows: { custody: [move(mask, 2)] }, who }, effects);
  assert.deepEqual(
    (await shown('custody', effects)).map(({ id }) => id),
    [`${mask}/1`, `${mask}/2`],
  );
});

test('rows that name a sample are corrected and taken out as a blind screen shows them, and an answer that was lost is given again', async (t) => {
  const effects = await blinded(t);
  await enterRows(code, await photograph('photographs/sample-1.png', { sample: mask }, effects), effects);
  for (const [kind, cells] of [
    ['custody', { place: 'shelf 3' }],
    ['pieces', { links: 7 }],
    ['photographs', { caption: 'the saw cut' }],
  ] as const) {
    const { id, revision, body } = await first(kind, effects);
    const request = { kind, id, revision, body: { ...body, ...cells }, who, why };
    const kept = await correctRow(code, request, effects);
    assert.deepEqual(await correctRow(code, request, effects), kept, kind);
    const [held] = await rowsOf(effects.store, code, kind);
    assert.deepEqual({ ...held, note: null }, { ...body, ...cells, sample: sample.sample, note: null }, kind);
    const withdrawal = { kind, id, revision: revision + 1, who, why };
    const gone = await withdrawRow(code, withdrawal, effects);
    assert.deepEqual(await withdrawRow(code, withdrawal, effects), gone, kind);
  }
});

test('a note that names somebody is not shown, is left as it is by a correction of the rest, and is not written over', async (t) => {
  const effects = await blinded(t);
  const { id, revision, body } = await first('custody', effects);
  assert.equal(body.note, 'not shown while the campaign is blind');
  const request = { kind: 'custody', id, revision, who, why } as const;
  const over = { ...request, body: { ...body, note: 'receipt' } };
  await assert.rejects(correctRow(code, over, effects), coded('entry/blind'));
  await assert.rejects(correctRow(code, { ...request, body: { ...body, note: null } }, effects), coded('entry/blind'));
  await correctRow(code, { ...request, body: { ...body, place: 'shelf 3' } }, effects);
  const [held] = await rowsOf(effects.store, code, 'custody');
  assert.deepEqual([held?.place, held?.note], ['shelf 3', 'brought by Ash in person']);
});

test('what a blind screen showed in place of a cell is not kept as that cell after the unblinding', async (t) => {
  const effects = await blinded(t);
  const { body } = await first('custody', effects);
  await unblind(code, { who, why: 'done' }, effects);
  const { id, revision } = await first('custody', effects);
  const late = { kind: 'custody', id, revision, body: { ...body, sample: sample.sample }, who, why } as const;
  await assert.rejects(correctRow(code, late, effects), coded('entry/blind'));
  await assert.rejects(enterRows(code, { rows: { custody: [move(mask, 2)] }, who }, effects), coded('store/bad-row'));
});

test('products and samples are not corrected or taken out while a campaign is blind', async (t) => {
  const effects = await blinded(t);
  for (const kind of ['products', 'samples'] as const) {
    const { id, revision, body } = await first(kind, effects);
    const request = { kind, id, revision, who, why };
    await assert.rejects(correctRow(code, { ...request, body }, effects), coded('entry/blind'));
    await assert.rejects(withdrawRow(code, request, effects), coded('entry/blind'));
  }
});

test('photographs of a sample from before the freezing, and any whose file tells, are shown again after the unblinding', async (t) => {
  const effects = await prepared(t, { blinding: 'blind' });
  await enterRows(code, await photograph('photographs/sample-0.png', { sample: sample.sample }, effects), effects);
  const later = { ...effects, now: () => new Date('2026-03-10T10:00:00.000Z') };
  await freezePlan(code, { who, why: 'agreed' }, later);
  await enterRows(code, await photograph('photographs/sample-1.png', { sample: mask }, later), later);
  await enterRows(code, await photograph('photographs/ASH-8-S1.png', { sample: mask }, later), later);
  const files = async () => (await shown('photographs', later)).map(({ id }) => id);
  assert.deepEqual(await files(), ['photographs/sample-1.png']);
  const finding = await judgeCampaign({ campaign: code }, later);
  assert.doesNotMatch(JSON.stringify(finding), /ash/i);
  await unblind(code, { who, why: 'done' }, later);
  assert.equal((await files()).length, 3);
});

test('what is refused while a campaign is blind names the sample as the screen does', async (t) => {
  const effects = await blinded(t);
  const enter = (row: Row<'custody'>) => enterRows(code, { rows: { custody: [row] }, who }, effects);
  await assert.rejects(enter(move(mask, 1)), { message: `campaign ${code} holds custody ${mask}/1 already` });
  await assert.rejects(enter(move(sample.sample, 0)), new RegExp(`^StoreError: custody ${mask}/0: `));
  const { id, body } = await first('custody', effects);
  const stale = { kind: 'custody', id, revision: 4, who, why } as const;
  await assert.rejects(
    correctRow(code, { ...stale, body }, effects),
    new RegExp(`custody ${mask}/1 has been corrected`),
  );
  await assert.rejects(withdrawRow(code, stale, effects), new RegExp(`custody ${mask}/1 has been corrected`));
  const telling = { rows: { pieces: [{ ...piece('x-ash-8-s1'), sample: mask }] }, who };
  await assert.rejects(enterRows(code, telling, effects), /^InputError: Code 1 of those sent tells/);
});

/** Names that no other text of the record holds, among them such as are written otherwise in an id, in JSON or in a regular expression. */
const names = fc.uniqueArray(
  fc
    .string({ unit: fc.constantFrom('/', '~', '"', ' ', '(', '.', '$', 'é', '7'), maxLength: 4 })
    .map((middle) => `Zq${middle}k`),
  { minLength: 6, maxLength: 6 },
);
const deeds = fc.array(fc.record({ deed: fc.nat(6), at: fc.nat(1), isMasked: fc.boolean(), number: fc.nat(3) }), {
  minLength: 1,
  maxLength: 6,
});

test('whatever is done while a campaign is blind, no answer, row, refusal or ledger page holds a real name', async (t) => {
  const law = fc.asyncProperty(names, deeds, async (drawn, done) => {
    const effects = await prepared(t, { campaign: code, blinding: 'blind' });
    const [p0 = '', p1 = '', s0 = '', s1 = '', own0 = '', own1 = ''] = drawn;
    await received({ products: [p0, p1], suppliers: [s0, s1], samples: [own0, own1] }, effects);
    await freezePlan(code, { who, why: 'agreed' }, effects);
    const told: unknown[] = [];
    for (const { deed, at, isMasked, number } of done) {
      const { id } = (await shown('samples', effects))[at] ?? { id: '' };
      const named = isMasked ? id : [own0, own1][at];
      try {
        told.push(await doOne(deed, { named: named ?? '', number }, effects));
      } catch (error) {
        if (!isInputError(error) && !isStoreError(error)) throw error;
        told.push(error.message, error.context);
      }
    }
    for (const kind of Object.keys(tables) as TableName[]) told.push(await rowsHeld(code, kind, page, effects));
    told.push(await filesHeld(code, { under: '', after: '', limit: 1000 }, effects));
    told.push(await ledgerPage(code, { before: null, limit: 1000, search: '', kinds: [] }, effects));
    for (const text of textsIn(told))
      for (const name of [
        product.product,
        product.supplier,
        sample.sample,
        ...drawn,
        ...drawn.map((one) => one.replaceAll('~', '~0').replaceAll('/', '~1')),
      ])
        assert.ok(!text.includes(name), `${text} holds ${name}`);
  });
  await fc.assert(law, { seed: 7, numRuns: 25 });
});

interface Claims {
  readonly products: readonly string[];
  readonly suppliers: readonly string[];
  readonly samples: readonly string[];
}

/** Received before the freezing, by somebody who writes names into everything. */
async function received({ products, suppliers, samples }: Claims, effects: Effects): Promise<void> {
  const claims = products.map((name, at) => ({ ...product, product: name, supplier: suppliers[at] ?? '' }));
  const lengths = samples.map((name, at) => ({ ...sample, sample: name, product: products[at] ?? '' }));
  const note = `${suppliers.join(' and ')}: ${products.join(', ')}; ${samples.join()}`;
  const rows = {
    products: claims,
    samples: [...lengths, { ...sample, sample: 'Zq-gone', product: products[0] ?? '' }],
    custody: samples.map((name) => move(name, 1, { place: `beside ${suppliers[1]}`, note })),
    pieces: samples.map((name, at) => ({ ...piece(`K7P${at}`), sample: name, note })),
  };
  await enterRows(code, { rows, who, why: note }, effects);
  await withdrawRow(code, { kind: 'samples', id: 'Zq-gone', revision: 1, who, why }, effects);
  await enterRows(code, await photograph('photographs/a.png', { piece: 'K7P0', caption: note }, effects), effects);
  const before = await photograph('photographs/b.png', { sample: samples[0] ?? '' }, effects);
  await enterRows(code, before, { ...effects, now: () => new Date('2026-03-08T10:00:00.000Z') });
}

interface Deed {
  readonly named: string;
  readonly number: number;
}

async function doOne(deed: number, { named, number }: Deed, effects: Effects): Promise<unknown> {
  const [custody, cut] = [(await shown('custody', effects))[number], (await shown('pieces', effects))[number % 2]];
  switch (deed) {
    case 0:
      return enterRows(code, { rows: { custody: [move(named, number)] }, who }, effects);
    case 1:
      return enterRows(code, await photograph(`photographs/c${number}.png`, { sample: named }, effects), effects);
    case 2:
      return enterRows(
        code,
        { rows: { pieces: [{ ...piece(`${number === 0 ? named : 'M4T'}${number}`), sample: named }] }, who },
        effects,
      );
    case 3: {
      if (!cut) return null;
      const body = { ...cut.body, sample: named };
      return correctRow(code, { kind: 'pieces', id: cut.id, revision: cut.revision, body, who, why }, effects);
    }
    case 4: {
      if (!custody) return null;
      const body = { ...custody.body, place: 'shelf 9' };
      return correctRow(code, { kind: 'custody', id: custody.id, revision: number, body, who, why }, effects);
    }
    case 5:
      return withdrawRow(code, { kind: 'custody', id: `${named}/${number}`, revision: 1, who, why }, effects);
    default:
      return enterRows(code, { rows: { custody: [move(named, 9, { by: 'nobody' })] }, who }, effects);
  }
}

function textsIn(value: unknown): string[] {
  if (typeof value === 'string') return [value];
  return typeof value === 'object' && value !== null ? Object.values(value).flatMap(textsIn) : [];
}
