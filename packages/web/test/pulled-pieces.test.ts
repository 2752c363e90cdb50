import assert from 'node:assert/strict';
import { test } from 'node:test';
import { type Row, type RowHeld, rowWith, type TableName } from '@provinghouse/contract';
import { nextToRead, pulledPieces } from '../src/features/breaks/pulled-pieces.ts';

function held<T extends TableName>(id: string, body: Row<T>): RowHeld<T> {
  return { id, revision: 1, at: '2026-03-01T10:00:00Z', who: 'plover', body };
}

function pull(code: string, piece: string, pulled_at: string | null): RowHeld<'pulls'> {
  return held<'pulls'>(code, rowWith('pulls', { pull: code, piece, rig: 'RIG-1', pulled_at, valid: true }));
}

function reading(code: string, examiner: string, link = 1): RowHeld<'breaks'> {
  const body = rowWith('breaks', { pull: code, link, examiner, position: 'crown', mode: 'shear' });
  return held<'breaks'>(`${code}/${link}/${examiner}`, body);
}

const rows = {
  pieces: ['A', 'B', 'C'].map((piece) => held<'pieces'>(piece, rowWith('pieces', { piece, sample: 'S', links: 5 }))),
  pulls: [
    pull('P-10', 'C', null),
    pull('P-2', 'B', '2026-03-02T10:00:00Z'),
    pull('P-1', 'A', '2026-03-02T11:00:00Z'),
    pull('P-9', 'NONE', null),
  ],
  breaks: [reading('P-2', 'plover'), reading('P-2', 'plover', 2), reading('P-2', 'teal'), reading('P-1', 'teal')],
};

test('pieces stand in the order in which they were pulled, those without a time last, none that is not in the campaign', () => {
  assert.deepEqual(
    pulledPieces(rows, null).map(({ pull: { pull: code } }) => code),
    ['P-2', 'P-1', 'P-10'],
  );
});

test('of another reader only the name is told', () => {
  const [second, first] = pulledPieces(rows, 'plover');
  assert.equal(second?.mine.length, 2);
  assert.deepEqual(second?.others, ['teal']);
  assert.deepEqual(first?.mine, []);
  assert.deepEqual(first?.others, ['teal']);
  assert.doesNotMatch(JSON.stringify(first), /crown|shear/);
});

test('the next to read is the next unread, going round, and none when all are read', () => {
  const list = pulledPieces(rows, 'plover');
  assert.equal(nextToRead(list, 'P-2')?.pull.pull, 'P-1');
  assert.equal(nextToRead(list, 'P-10')?.pull.pull, 'P-1');
  assert.equal(nextToRead(list, 'not there')?.pull.pull, 'P-1');
  assert.equal(
    nextToRead(
      list.filter(({ mine }) => mine.length > 0),
      'P-2',
    ),
    null,
  );
});
