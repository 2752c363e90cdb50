import assert from 'node:assert/strict';
import { test } from 'node:test';
import { joinRows } from '../src/lib/entry/join-rows.ts';
import type { RowsState } from '../src/lib/entry/use-rows.ts';

const again = () => undefined;
const read: RowsState<'pieces'> = { state: 'read', rows: [], again, asOf: 0 };
const reading: RowsState<'pulls'> = { state: 'reading' };
const atFault: RowsState<'pulls'> = { state: 'at fault', fault: { code: 'no-answer', detail: 'none' }, again };

test('tables together are read when all are, and at fault when one is, whatever the others do', () => {
  assert.deepEqual(joinRows({ pieces: read, pulls: reading }), { state: 'reading' });
  assert.equal(joinRows({ pieces: reading as never, pulls: atFault }).state, 'at fault');
  assert.deepEqual(joinRows({ pieces: read }), { state: 'read', rows: { pieces: [] } });
});
