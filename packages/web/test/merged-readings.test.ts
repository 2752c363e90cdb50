import assert from 'node:assert/strict';
import { test } from 'node:test';
import { type Row, type RowHeld, rowWith } from '@provinghouse/contract';
import { gaugingId, lastReading, mergedReadings, type ReadingEntry } from '../src/features/gauging/merged-readings.ts';

const row = (link: number, value_mm: number): Row<'gauging'> =>
  rowWith('gauging', {
    piece: 'P-1',
    link,
    position: 'link',
    quantity: 'pitch',
    direction: 1,
    repeat: 1,
    value_mm,
    instrument: 'CAL-1',
    by: 'wren',
  });
const held = (body: Row<'gauging'>): RowHeld<'gauging'> => ({
  id: gaugingId(body),
  revision: 1,
  at: '2026-03-09T10:00:00Z',
  who: 'wren',
  body,
});
const entry = (
  what: ReadingEntry['what'],
  of: Row<'gauging'>,
  state: ReadingEntry['state'],
  settledAt: number | null,
): ReadingEntry => ({ what, rows: [of], state, settledAt });
const sources = { held: [], asOf: 100, entries: [], waiting: [] };
const shown = (of: Parameters<typeof mergedReadings>[0]) =>
  mergedReadings(of).map((seen) => [seen.row.value_mm, seen.state]);

test('a reading is on its way until its answer, and kept from then on, before the record was read again', () => {
  assert.deepEqual(shown({ ...sources, entries: [entry('readings', row(1, 24), 'on the way', null)] }), [
    [24, 'on the way'],
  ]);
  assert.deepEqual(shown({ ...sources, entries: [entry('readings', row(1, 24), 'kept', 120)] }), [[24, 'kept']]);
});

test('a reading that was refused is none', () => {
  assert.deepEqual(shown({ ...sources, entries: [entry('readings', row(1, 24), 'refused', 120)] }), []);
  const waiting = [
    { url: '/x/records', body: { rows: { gauging: [row(1, 24)] } }, refused: { code: 'entry-refused' } },
  ];
  assert.deepEqual(shown({ ...sources, waiting }), []);
});

test('what the record shows wins over what this window kept: another may have corrected it', () => {
  const kept = entry('readings', row(1, 24), 'kept', 101);
  assert.deepEqual(shown({ ...sources, held: [held(row(1, 24.2))], entries: [kept] }), [[24.2, 'kept']]);
});

test('taken back and read anew, the new reading stands, whichever the record shows yet', () => {
  const entries = [
    entry('readings', row(1, 24), 'kept', 50),
    entry('taken back', row(1, 24), 'kept', 110),
    entry('readings', row(1, 24.1), 'on the way', null),
  ];
  assert.deepEqual(shown({ ...sources, held: [held(row(1, 24))], entries }), [[24.1, 'on the way']]);
  assert.deepEqual(shown({ ...sources, held: [held(row(1, 24))], entries: entries.slice(0, 2) }), []);
});

test('after a reload the outbox alone tells what is on its way, readings and withdrawals in order', () => {
  const waiting = [
    { url: '/x/records', body: { rows: { gauging: [row(1, 24)] } }, refused: null },
    { url: '/x/records', body: { rows: { gauging: [row(2, 24.3)] } }, refused: null },
    { url: '/x/withdrawals', body: { kind: 'gauging', id: gaugingId(row(1, 24)) }, refused: null },
    { url: '/x/records', body: { rows: { pieces: [] } }, refused: null },
  ];
  assert.deepEqual(shown({ ...sources, waiting }), [[24.3, 'on the way']]);
});

test('the last reading is the last that was neither refused nor taken back', () => {
  const [one, two, three] = [row(1, 24), row(2, 24.1), row(3, 24.2)];
  const entries = [
    entry('readings', one, 'kept', 1),
    entry('readings', two, 'kept', 2),
    entry('readings', three, 'refused', 3),
  ];
  assert.equal(lastReading(entries), two);
  assert.equal(lastReading([...entries, entry('taken back', two, 'on the way', null)]), one);
  assert.equal(lastReading([]), null);
});
