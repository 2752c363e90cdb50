import assert from 'node:assert/strict';
import { createHash } from 'node:crypto';
import { mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { after, test } from 'node:test';
import { setTimeout } from 'node:timers/promises';
import { parseTrace, type WatchSample } from '@provinghouse/core';
import fc from 'fast-check';
import {
  benchNow_s,
  keyedReadings,
  openChannel,
  type RawReading,
  readSpool,
  recover,
  type Source,
  type SourceSink,
  type SpoolHeader,
  sealSpool,
  startRecord,
} from '../../src/index.ts';
import { beginSpool } from '../../src/spool/open-spool.ts';
import type { SpoolEntry } from '../../src/spool/spool-entry.ts';
import type { SpoolFile } from '../../src/spool/spool-file.ts';

const folder = mkdtempSync(join(tmpdir(), 'spool-'));
after(() => rmSync(folder, { recursive: true, force: true }));
let count = 0;
const newPath = () => join(folder, `${count++}.spool`);

const head = { pull: 'P7', piece: 'S2-3', rig: 'bench', isPractice: false, startedAt: '2026-03-14T10:00:00.000Z' };
const channels = [openChannel({ name: 'force', unit: 'kN' }), openChannel({ name: 'table', unit: 'mm' })];
const header: SpoolHeader = { ...head, sources: [{ describe: 'test', clock: 'own', channels }] };

function line(k: number): RawReading[] {
  const moment = { time_s: k / 100, arrival_s: k / 100 + 0.001, quality: 'good' } as const;
  return [
    { channel: 'force', value: k / 10, ...moment },
    { channel: 'table', value: -k / 7, ...moment },
  ];
}

/** A file in memory: takes up to `room` bytes, the last write in part as a full disc does. */
function memoryFile(state: { room: number }) {
  let bytes = Buffer.alloc(0);
  const file: SpoolFile = {
    async write(part, at) {
      const fits = Math.max(0, Math.min(part.length, state.room - at));
      bytes = Buffer.concat([bytes.subarray(0, at), part.subarray(0, fits)]);
      if (fits < part.length) throw Object.assign(new Error('no space left on device'), { code: 'ENOSPC' });
    },
    sync: async () => {},
    async truncate(length) {
      bytes = bytes.subarray(0, length);
    },
    close: async () => {},
  };
  return { file, bytes: () => bytes };
}

/** Spool bytes of a short pull, each line and each other entry a frame of its own. */
async function exampleBytes(): Promise<Buffer> {
  const memory = memoryFile({ room: 1e9 });
  const { writer } = await beginSpool('', header, { released: () => {}, trouble: () => {} }, memory.file);
  for (let k = 0; k < 12; k++) {
    writer.append({ kind: 'readings', source: 0, readings: line(k) });
    if (k === 5) writer.append({ kind: 'rejected', source: 0, bytes: Buffer.from([0, 255, 10]), why: 'garble' });
    if (k === 7) writer.append({ kind: 'mark', words: 'tapped' });
    await setTimeout(6);
  }
  await writer.close('parted');
  return memory.bytes();
}
const example = await exampleBytes();

async function recovered(bytes: Uint8Array) {
  const path = newPath();
  writeFileSync(path, bytes);
  const found = await recover(path);
  rmSync(path);
  return found;
}

const forces = Array.from({ length: 12 }, (_, k) => k / 10);

test('a whole record comes back as it went in', async () => {
  const found = await recovered(example);
  assert.deepEqual([...found.columns.force_kN], forces);
  assert.deepEqual(
    [...found.columns.table_mm].map((value) => value + 0),
    forces.map((_, k) => -k / 7 + 0),
  );
  assert.deepEqual([found.readings, found.rejected, found.rejectedBytes], [24, 1, 3]);
  assert.deepEqual(
    found.marks.map(({ words }) => words),
    ['tapped'],
  );
  assert.deepEqual([found.isClosed, found.closedWhy, found.tornBytes, found.damagedBytes], [true, 'parted', 0, 0]);
  assert.deepEqual(found.header, header);
});

test('cut at any byte, a record gives what lies before the cut, says it broke off, and never throws', async () => {
  let before = 0;
  // Every byte of the last frames, every fifth before: files take their time.
  for (let length = 0; length < example.length; length += length < example.length - 250 ? 5 : 1) {
    const found = await recovered(example.subarray(0, length));
    const kept = [...found.columns.force_kN];
    assert.deepEqual(kept, forces.slice(0, kept.length));
    assert.ok(kept.length >= before, 'more bytes never give less');
    assert.equal(found.isClosed, false);
    before = kept.length;
  }
  assert.equal(before, 12);
});

test('with any bytes damaged, nothing false comes back, the rest does, and the damage is said', async () => {
  const hit = fc.tuple(fc.nat(example.length - 1), fc.integer({ min: 1, max: 255 }));
  const property = fc.asyncProperty(fc.array(hit, { minLength: 1, maxLength: 4 }), async (hits) => {
    const bytes = Buffer.from(example);
    for (const [at, by] of hits) bytes[at] = (bytes[at] ?? 0) ^ by;
    if (bytes.equals(example)) return;
    const found = await recovered(bytes);
    const kept = [...found.columns.force_kN];
    assert.ok(kept.every((force, i) => forces.includes(force) && force > (kept[i - 1] ?? -1)));
    // Only when both copies of the header are hit is the rest of no use.
    assert.ok(found.header === null ? hits.length > 1 : kept.length >= 12 - hits.length);
    assert.ok(found.damagedBytes + found.tornBytes > 0);
    assert.ok(kept.length === 12 || !found.isClosed || found.gaps.length > 0);
  });
  await fc.assert(property, { seed: 7, numRuns: 300 });
});

test('bytes that are no record at all give nothing and no exception', async () => {
  const property = fc.asyncProperty(fc.uint8Array({ maxLength: 2000 }), async (bytes) => {
    const found = await recovered(bytes);
    assert.equal(found.header, null);
    assert.equal(found.samples, 0);
  });
  await fc.assert(property, { seed: 7, numRuns: 100 });
});

test('a record inside the rejected bytes of another is not taken for part of it', async () => {
  const memory = memoryFile({ room: 1e9 });
  const { writer } = await beginSpool('', header, { released: () => {}, trouble: () => {} }, memory.file);
  writer.append({ kind: 'readings', source: 0, readings: line(1) });
  writer.append({ kind: 'rejected', source: 0, bytes: example, why: 'a joke' });
  await writer.close('done');
  const bytes = Buffer.from(memory.bytes());
  const at = bytes.indexOf(example);
  // Break the outer frame, so that the reader has to look for the next one from inside it.
  bytes[at - 1] = (bytes[at - 1] ?? 0) ^ 1;
  const found = await recovered(bytes);
  assert.deepEqual([...found.columns.force_kN], [0.1]);
});

test('nothing is released before its frame is written', async () => {
  const written = { length: 0 };
  const file: SpoolFile = {
    async write(part, at) {
      await setTimeout(3);
      written.length = at + part.length;
    },
    sync: async () => {},
    truncate: async () => {},
    close: async () => {},
  };
  let appended = 0;
  let released = 0;
  let least = 0;
  const outlets = {
    released(entries: readonly SpoolEntry[]) {
      for (const entry of entries) if (entry.kind === 'readings') released += entry.readings.length;
      least = 18 * released;
      assert.ok(written.length > least);
      assert.ok(released <= appended);
    },
    trouble: () => {},
  };
  const { writer } = await beginSpool('', header, outlets, file);
  for (let k = 0; k < 100; k++) {
    writer.append({ kind: 'readings', source: 0, readings: line(k) });
    appended += 2;
    if (k % 5 === 0) await setTimeout(1);
  }
  await writer.close('done');
  assert.equal(released, 200);
});

test('a disc that fills up leaves whole frames, says so at once, and loses nothing that fits in memory once it is freed', async () => {
  const disc = { room: example.length - 500 };
  const memory = memoryFile(disc);
  const troubles: string[] = [];
  let released = 0;
  const outlets = {
    released(entries: readonly SpoolEntry[]) {
      for (const entry of entries) if (entry.kind === 'readings') released += entry.readings.length / 2;
    },
    trouble: (words: string) => void troubles.push(words),
  };
  const { writer } = await beginSpool('', header, outlets, memory.file);
  for (let k = 0; k < 30; k++) {
    writer.append({ kind: 'readings', source: 0, readings: line(k) });
    await setTimeout(6);
  }
  const full = await recovered(memory.bytes());
  assert.match(troubles[0] ?? '', /^The disc is full/);
  assert.equal(troubles.length, 1);
  assert.ok(writer.stats().isFull);
  assert.equal(full.tornBytes, 0);
  assert.ok(full.samples > 3 && full.samples < 30);
  assert.equal(full.samples, released);
  disc.room = 1e9;
  await setTimeout(300);
  await writer.close('done');
  const freed = await recovered(memory.bytes());
  assert.equal(freed.samples, 30);
  assert.ok(freed.isClosed);
  assert.match(troubles[1] ?? '', /takes readings again/);
});

test('readings that find no room in memory either are counted and the loss is a gap in the record', async () => {
  const disc = { room: 2000 };
  const memory = memoryFile(disc);
  const { writer } = await beginSpool('', header, { released: () => {}, trouble: () => {} }, memory.file);
  let k = 0;
  const append = (lines: number) => {
    const readings = Array.from({ length: lines }, () => line(k++)).flat();
    writer.append({ kind: 'readings', source: 0, readings });
  };
  append(1);
  await setTimeout(20);
  for (let i = 0; i < 120; i++) append(1000);
  await setTimeout(20);
  for (let i = 0; i < 20; i++) append(1000);
  assert.ok(writer.stats().isFull);
  disc.room = 1e9;
  await setTimeout(500);
  append(5);
  const stats = await writer.close('done');
  const found = await recovered(memory.bytes());
  assert.ok(stats.lost > 0);
  assert.equal(found.readings + stats.lost, 2 * k);
  assert.equal(found.gaps.filter(({ why }) => why.includes(`${stats.lost} readings lost`)).length, 1);
});

/** A source that is worked by the test. */
function puppet() {
  let sink: SourceSink | null = null;
  const source: Source = {
    describe: 'puppet',
    channels,
    clock: 'own',
    start: async (into) => {
      sink = into;
    },
    stop: async () => {},
  };
  let from_s: number | null = null;
  return {
    source,
    send(k: number) {
      from_s ??= benchNow_s() - k / 100;
      const arrival_s = from_s + k / 100 + 0.001;
      sink?.readings(line(k).map((reading) => ({ ...reading, arrival_s })));
    },
  };
}

test('a viewer that fails does not stop the record, and that it failed is said', async () => {
  const memory = memoryFile({ room: 1e9 });
  const troubles: string[] = [];
  const outlets = {
    released: () => {
      throw new Error('no screen');
    },
    trouble: (words: string) => void troubles.push(words),
  };
  const { writer } = await beginSpool('', header, outlets, memory.file);
  for (let k = 0; k < 12; k++) {
    writer.append({ kind: 'readings', source: 0, readings: line(k) });
    await setTimeout(2);
  }
  await writer.close('done');
  assert.equal((await recovered(memory.bytes())).samples, 12);
  assert.match(troubles[0] ?? '', /no screen/);
});

test('what was shown, what is recovered and what is sealed are the same, sample for sample', async () => {
  const path = newPath();
  const { source, send } = puppet();
  const shown: WatchSample[] = [];
  const listener = { samples: (batch: readonly WatchSample[]) => void shown.push(...batch), trouble: () => {} };
  const record = await startRecord({ path, header: { ...head, isPractice: true }, sources: [source], listener });
  for (let k = 0; k < 200; k++) {
    send(k);
    if (k % 9 === 0) await setTimeout(2);
  }
  record.mark('tapped');
  await record.stop('parted');
  const found = await recover(path);
  assert.deepEqual(
    [...found.columns.force_kN],
    shown.map(({ force_kN }) => force_kN),
  );
  assert.deepEqual(
    [...found.columns.time_s],
    shown.map(({ time_s }) => time_s),
  );
  assert.deepEqual(record.account().gaps, found.gaps);
  const sealed = await sealSpool(path, `${path}.csv`);
  const bytes = readFileSync(sealed.path);
  assert.equal(sealed.sha256, createHash('sha256').update(bytes).digest('hex'));
  assert.equal(sealed.bytes, bytes.length);
  const trace = parseTrace(bytes);
  assert.deepEqual([...trace.force_kN], [...found.columns.force_kN]);
  assert.equal(trace.extension_mm, null);
  assert.match(bytes.toString(), /^# practice/);
  assert.ok(sealed.notes[0]?.startsWith('Practice'));
  await assert.rejects(startRecord({ path, header: head, sources: [source], listener }), { code: 'spool/exists' });
});

test('a record that broke off in the middle of a frame is gone on with: the gap is marked, the torn bytes are kept', async () => {
  const path = newPath();
  writeFileSync(path, example.subarray(0, example.length - 100));
  const before = await recover(path);
  const { source, send } = puppet();
  const shown: WatchSample[] = [];
  const record = await startRecord({
    path,
    header: head,
    sources: [source],
    listener: { samples: (batch) => void shown.push(...batch), trouble: () => {} },
    resumeAt: '2026-03-14T10:02:00.000Z',
  });
  for (let k = 5000; k < 5020; k++) send(k);
  await record.stop('parted');
  const found = await recover(path);
  assert.ok(before.tornBytes > 0);
  assert.deepEqual([found.tornBytes, found.damagedBytes, found.resumed, found.isClosed], [0, 0, 1, true]);
  assert.equal(found.rejectedBytes, before.rejectedBytes + before.tornBytes);
  assert.equal(found.samples, before.samples + 20);
  assert.deepEqual(
    [...found.columns.time_s],
    shown.map(({ time_s }) => time_s),
  );
  const [gap] = found.gaps;
  assert.equal(found.gaps.length, 1);
  assert.equal(gap?.from_s, before.columns.time_s.at(-1));
  assert.ok((gap?.to_s ?? 0) > 119 && (gap?.to_s ?? 0) < 122);
});

test('a record cannot be gone on with by other channels, nor begun without a force or with two', async () => {
  const listener = { samples: () => {}, trouble: () => {} };
  const path = newPath();
  writeFileSync(path, example);
  const other = keyedReadings([{ name: 'force', unit: 'N' }]);
  await assert.rejects(startRecord({ path, header: head, sources: [other], listener, resumeAt: head.startedAt }), {
    code: 'record/other-wiring',
  });
  assert.deepEqual(readFileSync(path), example);
  const table = keyedReadings([{ name: 'table', unit: 'mm' }]);
  await assert.rejects(startRecord({ path: newPath(), header: head, sources: [table], listener }), {
    code: 'record/no-force',
  });
  await assert.rejects(startRecord({ path: newPath(), header: head, sources: [other, other], listener }), {
    code: 'record/signal-twice',
  });
});

test('a record without a force reading is not sealed, and nothing is left behind', async () => {
  const path = newPath();
  const listener = { samples: () => {}, trouble: () => {} };
  const record = await startRecord({ path, header: head, sources: [puppet().source], listener });
  await record.stop('given up');
  await assert.rejects(sealSpool(path, `${path}.csv`), { code: 'spool/nothing-recorded' });
  assert.throws(() => readFileSync(`${path}.csv.part`), { code: 'ENOENT' });
  await assert.rejects(recover(join(folder, 'none')), { code: 'spool/unreadable' });
});

test('a frame larger than a chunk of the reader is read whole', async () => {
  const path = newPath();
  const outlets = { released: () => {}, trouble: () => {} };
  const { writer } = await beginSpool(path, header, outlets);
  const readings = Array.from({ length: 60_000 }, (_, k) => line(k)).flat();
  writer.append({ kind: 'readings', source: 0, readings });
  writer.append({ kind: 'rejected', source: 0, bytes: new Uint8Array(3_000_000).fill(7), why: 'a flood' });
  await writer.close('done');
  const found = await recover(path);
  assert.equal(found.samples, 60_000);
  assert.equal(found.rejectedBytes, 3_000_000);
  assert.equal(found.damagedBytes, 0);
  let frames = 0;
  for await (const finding of readSpool(path)) if (finding.kind === 'entry') frames++;
  assert.ok(frames > 8);
});
