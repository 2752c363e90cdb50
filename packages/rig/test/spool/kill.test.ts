import assert from 'node:assert/strict';
import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { after, test } from 'node:test';
import { killTrial } from './kill-trial.ts';
import type { Mishap } from './trial-rig.ts';

const folder = mkdtempSync(join(tmpdir(), 'kill-'));
after(() => rmSync(folder, { recursive: true, force: true }));

const MISHAPS: readonly Mishap[] = [
  'none',
  'none',
  'none',
  'none',
  'none',
  'none',
  'stall',
  'garbled',
  'clock jump',
  'disconnect',
];

test('a recorder killed at ten random moments loses the last 100 ms at most, nothing shown, nothing corrupt', async () => {
  const trial = (mishap: Mishap, i: number) => killTrial({ seed: 100 + i, mishap, folder, longest_ms: 300 });
  const results = await Promise.all(
    [0, 1].map(async (half) => {
      const done = [];
      for (const [i, mishap] of MISHAPS.entries()) if (i % 2 === half) done.push(await trial(mishap, i));
      return done;
    }),
  );
  for (const result of results.flat()) {
    const { mishap } = result;
    const told = JSON.stringify(result);
    assert.ok(result.kept > 20, told);
    assert.equal(result.corrupt, 0, told);
    assert.equal(result.unmarked, 0, told);
    assert.equal(result.shownNotKept, 0, told);
    // While the wire itself is silent nothing can be lost, so the last reading may be older.
    if (mishap !== 'stall' && mishap !== 'disconnect') assert.ok(result.lostAtEnd_ms < 100, told);
  }
});
