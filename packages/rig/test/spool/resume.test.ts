import assert from 'node:assert/strict';
import { mkdtempSync, readFileSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { after, test } from 'node:test';
import type { WatchSample } from '@provinghouse/core';
import fc from 'fast-check';
import {
  benchNow_s,
  type Gap,
  recover,
  type Source,
  type SourceClock,
  type SourceSink,
  sealSpool,
  startRecord,
} from '../../src/index.ts';

const folder = mkdtempSync(join(tmpdir(), 'resume-'));
after(() => rmSync(folder, { recursive: true, force: true }));
let count = 0;

const head = { pull: 'P7', piece: 'S2-3', rig: 'bench', isPractice: false, startedAt: '2026-03-14T10:00:00.000Z' };

interface Stretch {
  /** Of the source's own clock at its first reading. */
  readonly from_s: number;
  readonly samples: number;
}

/** Records a stretch of readings a hundredth of a second apart. */
async function recorded(path: string, clock: SourceClock, { from_s, samples }: Stretch, resumeAt?: string) {
  let sink: SourceSink | null = null;
  const source: Source = {
    describe: 'a script',
    clock,
    start: async (given) => {
      sink = given;
    },
    stop: async () => {},
  };
  const earlier: WatchSample[] = [];
  const shown: WatchSample[] = [];
  const gaps: Gap[] = [];
  const record = await startRecord({
    path,
    header: head,
    sources: [source],
    listener: {
      samples: (batch) => void shown.push(...batch),
      earlier: (batch) => void earlier.push(...batch),
      trouble: () => {},
      gap: (gap) => void gaps.push(gap),
    },
    resumeAt,
  });
  const given = sink as SourceSink | null; // set by start
  for (let k = 0; k < samples; k++) {
    const arrival_s = benchNow_s();
    const time_s = clock === 'arrival' ? arrival_s : from_s + k / 100;
    given?.readings([{ channel: 'force', value: k, time_s, arrival_s, quality: 'good' }]);
  }
  await record.stop('stopped');
  return { earlier, shown, gaps };
}

const stretch = fc.record({
  from_s: fc.double({ min: 0, max: 1e4, noNaN: true }),
  samples: fc.integer({ min: 1, max: 40 }),
});
const clocks = fc.constantFrom<SourceClock>('own', 'free', 'arrival');

test('whatever clock a record is gone on with by, and however it was moved meanwhile, time never runs back and the break is one gap', async () => {
  const law = fc.asyncProperty(
    clocks,
    stretch,
    stretch,
    fc.integer({ min: 0, max: 90 }),
    async (clock, one, two, away_s) => {
      const path = join(folder, `${count++}.spool`);
      const first = await recorded(path, clock, one);
      const resumeAt = new Date(Date.parse(head.startedAt) + 1000 * away_s).toISOString();
      const second = await recorded(path, clock, two, resumeAt);
      assert.deepEqual(second.earlier, first.shown);
      const { columns, gaps, resumed } = await recover(path);
      const times = [...columns.time_s];
      assert.deepEqual(
        times,
        [...first.shown, ...second.shown].map(({ time_s }) => time_s),
      );
      assert.deepEqual(
        times,
        times.toSorted((a, b) => a - b),
      );
      const breaks = gaps.filter(({ why }) => why.includes('broke off'));
      const [last_s, next_s] = [first.shown.at(-1)?.time_s, second.shown[0]?.time_s];
      assert.deepEqual([resumed, breaks.map(({ from_s, to_s }) => [from_s, to_s])], [1, [[last_s, next_s]]]);
      assert.deepEqual(
        second.gaps.filter(({ why }) => why.includes('broke off')),
        breaks,
      );
    },
  );
  await fc.assert(law, { seed: 7, numRuns: 25 });
});

test('a clock that is taken as it comes runs on through a break, so that the gap is as long as it says', async () => {
  const path = join(folder, `${count++}.spool`);
  await recorded(path, 'free', { from_s: 0, samples: 20 });
  await recorded(path, 'free', { from_s: 50, samples: 20 }, head.startedAt);
  const [gap] = (await recover(path)).gaps;
  assert.ok(Math.abs((gap?.to_s ?? 0) - (gap?.from_s ?? 0) - 49.81) < 1e-9, JSON.stringify(gap));
});

test('sealing tells how far it is, and goes twice through a record that is not what its beginning promised', async () => {
  const path = join(folder, `${count++}.spool`);
  await recorded(path, 'own', { from_s: 0, samples: 30 });
  const told: number[] = [];
  await sealSpool(path, `${path}.csv`, (done, total) => void told.push(done / total));
  assert.equal(told.at(-1), 1);
  // Table and extension might have come and did not: the first way through learns that.
  assert.equal(told.filter((share) => share === 1).length, 2);
  assert.match(readFileSync(`${path}.csv`, 'utf8'), /^time_s,force_kN\n/);
});
