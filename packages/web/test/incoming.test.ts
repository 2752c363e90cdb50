import assert from 'node:assert/strict';
import { test } from 'node:test';
import type { PreviewColumn, RowHeld } from '@provinghouse/contract';
import { rowWith } from '@provinghouse/contract';
import { columnWord, nextPull, pieceInName, tracePath } from '../src/features/pulls/incoming.ts';
import { plannedList } from '../src/features/pulls/planned-list.ts';

const pieces = ['ASH-8-1', 'ASH-8-10', 'ASH-8-11', 'BIRCH-8-1'];
const names: readonly (readonly [string, string | null])[] = [
  ['ash-8-1.csv', 'ASH-8-1'],
  ['ASH-8-10 second try.txt', 'ASH-8-10'],
  ['2026-03-24_BIRCH-8-1.dat', 'BIRCH-8-1'],
  ['ASH-8-111.csv', null],
  ['SPLASH-8-1.csv', null],
  ['ASH-8-1 and BIRCH-8-1.csv', null],
  ['pull7.csv', null],
];
for (const [name, piece] of names)
  test(`the name ${name} proposes ${piece ?? 'no piece'}`, () => assert.equal(pieceInName(name, pieces), piece));

test('of codes that hold one another the whole one is proposed', () => {
  assert.equal(pieceInName('A-1-2.csv', ['A-1', 'A-1-2']), 'A-1-2');
});

test('the next pull comes after the last, whatever other codes there are', () => {
  assert.equal(nextPull([]), 'P-001');
  assert.equal(nextPull(['P-002', 'P-010', 'proof-7']), 'P-011');
  assert.equal(nextPull(['P-999']), 'P-1000');
});

test('a recording lies under the code of its pull, and beside one that is there already', () => {
  assert.equal(tracePath('P-001', 'ash.CSV', []), 'traces/P-001.csv');
  assert.equal(tracePath('P-001', 'ash', []), 'traces/P-001.txt');
  assert.equal(tracePath('P-001', 'a.csv', ['traces/P-001.csv', 'traces/P-001-2.csv']), 'traces/P-001-3.csv');
  assert.equal(tracePath('P/../1', 'a.csv', []), 'traces/P-..-1.csv');
});

const column = (at: number, name: string): PreviewColumn => ({
  column: at,
  name,
  unitText: null,
  unit: null,
  first: [],
});

test('a column is named by its name, and by its number where the name does not tell it apart', () => {
  const columns = [column(1, 't'), column(2, 'F'), column(3, 'f'), column(4, '7'), column(5, 'a[b'), column(6, 'none')];
  assert.equal(columnWord(columns, 1, 's'), 't[s]');
  assert.equal(columnWord(columns, 1, null), 't');
  assert.equal(columnWord(columns, 2, 'kN'), '2[kN]');
  assert.equal(columnWord(columns, 4, null), '4');
  assert.equal(columnWord(columns, 5, 'mm'), '5[mm]');
  assert.equal(columnWord(columns, 6, null), '6');
});

const held = (pull: string, piece: string): RowHeld<'pulls'> => ({
  id: pull,
  revision: 1,
  at: '2026-03-24T09:00:00Z',
  who: 'gauger',
  body: rowWith('pulls', { pull, piece, rig: 'RIG-1', valid: true }),
});
const samples = [rowWith('samples', { sample: 'S1', product: 'ASH-8', received_on: '2026-03-01' })];
const rows = ['A', 'B', 'C'].map((piece) => rowWith('pieces', { piece, sample: 'S1', links: 5 }));
const order = ['C', 'A', 'B'].map((piece, at) => ({ piece, block: 1, position: at + 1 }));

test('pieces stand in the order drawn, pulled or not, and the first that is not is next', () => {
  const list = plannedList({
    planned: { order, seed: 7, sentence: null },
    pieces: rows,
    samples,
    pulls: [held('P-001', 'C')],
  });
  assert.deepEqual(
    list.map(({ piece }) => piece),
    ['C', 'A', 'B'],
  );
  assert.deepEqual(
    list.map(({ isNext }) => isNext),
    [false, true, false],
  );
  assert.deepEqual(
    list.map(({ place }) => place),
    [1, 2, 3],
  );
  assert.equal(list[0]?.product, 'ASH-8');
});

test('a second pull of a piece stands with the first', () => {
  const pulls = [held('P-001', 'A'), held('P-002', 'B'), held('P-003', 'A')];
  const list = plannedList({ planned: null, pieces: rows, samples, pulls });
  assert.deepEqual(
    list.map(({ piece, pulls: own }) => [piece, own.length]),
    [
      ['A', 2],
      ['B', 1],
      ['C', 0],
    ],
  );
});

test('without an order the pieces that were pulled come in the order of their pulls', () => {
  const list = plannedList({ planned: null, pieces: rows, samples, pulls: [held('P-001', 'C'), held('P-002', 'A')] });
  assert.deepEqual(
    list.map(({ piece, place }) => [piece, place]),
    [
      ['C', null],
      ['A', null],
      ['B', null],
    ],
  );
  assert.equal(list.find(({ isNext }) => isNext)?.piece, 'B');
});
