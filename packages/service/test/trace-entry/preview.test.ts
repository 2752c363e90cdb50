import assert from 'node:assert/strict';
import { readdirSync, readFileSync } from 'node:fs';
import { type TestContext, test } from 'node:test';
import { type Row, rowWith, type TracePreviewRequest } from '@provinghouse/contract';
import { isStoreError } from '@provinghouse/store';
import { enterRows, freezePlan, holdFile } from '../../src/entry/index.ts';
import { type Effects, judgeCampaign, readTraceFile } from '../../src/index.ts';
import { previewTrace } from '../../src/trace-entry/index.ts';
import { code, piece, prepared, who } from '../entry/desk.ts';

/** Real recordings, whose origin stands in the README beside them, and the invented ones of the demo. */
const open = new URL('../../../core/test/reference/open-traces/', import.meta.url);
const demo = new URL('../../../../examples/sallow-reach/traces/', import.meta.url);
const openTraces = readdirSync(open).filter((name) => /^46.*\.csv$/.test(name));

const text = (words: string) => new TextEncoder().encode(words);

async function bench(t: TestContext): Promise<Effects> {
  const effects = await prepared(t);
  await enterRows(code, { rows: { pieces: [piece('A-1'), piece('A-2'), piece('A-3')] }, who }, effects);
  await freezePlan(code, { who, why: 'planned' }, effects);
  return effects;
}

async function preview(effects: Effects, bytes: Uint8Array, asked: Partial<TracePreviewRequest> = {}) {
  const { sha256 } = await holdFile(bytes, effects);
  const request = { sha256, name: 'pull.csv', rig: 'RIG-1', piece: 'A-1', pulledAt: '2026-03-09T10:00:00Z', ...asked };
  return previewTrace(code, request, effects);
}

async function accept(effects: Effects, bytes: Uint8Array, cells: Partial<Row<'pulls'>>) {
  const { sha256 } = await holdFile(bytes, effects);
  const path = `traces/${cells.pull}.csv`;
  const row = rowWith('pulls', {
    piece: 'A-1',
    rig: 'RIG-1',
    pulled_at: '2026-03-09T10:00:00Z',
    trace: path,
    valid: true,
    ...cells,
  });
  return enterRows(code, { rows: { pulls: [row] }, files: [{ path, sha256 }], who }, effects);
}

const ramp = (head: string, row: (t: number, force_kN: number) => string) =>
  text(
    `${head}\n${Array.from({ length: 60 }, (_, i) => row(i / 10, i < 5 ? 0 : i < 55 ? (i - 5) * 0.8 : 0)).join('\n')}\n`,
  );

test('a real recording previews with the maximum that the reading of the same file gives', async (t) => {
  const effects = await bench(t);
  assert.ok(openTraces.length > 20);
  for (const name of openTraces.slice(0, 3)) {
    const bytes = readFileSync(new URL(name, open));
    const found = await preview(effects, bytes, { name });
    const read = await readTraceFile({ file: new URL(name, open).pathname, options: {} });
    assert.equal(found.fault, null, name);
    assert.deepEqual(found.questions, [], name);
    assert.equal(found.maximum?.value, read.maximumForce_kN, name);
    assert.equal(found.taken.force?.name, read.columns.force.name);
    assert.ok((found.maximum?.expandedUncertainty ?? 0) > 0);
    const highest = Math.max(...(found.curve?.force_kN ?? []));
    assert.ok(Math.abs(highest - (read.maximumForce_kN ?? 0)) < 0.2, 'the thinned curve keeps its top');
  }
});

test('what is accepted is judged with the very maximum and uncertainty of its preview', async (t) => {
  const effects = await bench(t);
  const bytes = readFileSync(new URL('ash-8-1.csv', demo));
  const before = await preview(effects, bytes);
  await accept(effects, bytes, { pull: 'P-001' });
  const finding = await judgeCampaign({ campaign: code }, effects);
  const judged = finding.pieces.find(({ piece: name }) => name === 'A-1')?.pull;
  assert.equal(judged?.maximum?.value, before.maximum?.value);
  assert.equal(judged?.maximum?.expandedUncertainty, before.maximum?.expandedUncertainty);
  assert.deepEqual(judged?.reading, before.reading);
});

test('a file nobody has given a piece yet tells its maximum all the same, and the same one', async (t) => {
  const effects = await bench(t);
  const bytes = readFileSync(new URL('ash-8-1.csv', demo));
  const [without, withPiece] = [await preview(effects, bytes, { piece: null }), await preview(effects, bytes)];
  assert.equal(without.maximum?.value, withPiece.maximum?.value);
  assert.equal(without.maximum?.expandedUncertainty, withPiece.maximum?.expandedUncertainty);
  assert.equal(without.reading?.totalUltimateElongation_pct, null);
});

test('two columns that could be the force are both named, and the choice reads the file', async (t) => {
  const effects = await bench(t);
  const bytes = ramp(
    'time_s,Force [kN],Load [kN]',
    (at, force) => `${at},${force.toFixed(2)},${(force / 2).toFixed(2)}`,
  );
  const found = await preview(effects, bytes);
  assert.deepEqual(
    found.questions.map(({ signal, asks, columns }) => ({ signal, asks, columns })),
    [{ signal: 'force', asks: 'column', columns: [2, 3] }],
  );
  assert.equal(found.reading, null);
  assert.equal(found.taken.force, null);
  assert.equal(found.taken.time?.column, 1);
  const columns = { time: null, force: 'Load', table: null, extension: null };
  const chosen = await preview(effects, bytes, { columns });
  assert.deepEqual(chosen.questions, []);
  const top = Math.max(...(chosen.curve?.force_kN ?? []));
  assert.ok(top > 15 && top < 25);
});

test('units that are missing are asked for all at once, and none is guessed', async (t) => {
  const effects = await bench(t);
  const bytes = ramp('t,F,x', (at, force) => `${at},${force.toFixed(2)},${(force / 10).toFixed(3)}`);
  const found = await preview(effects, bytes);
  const asked = found.questions.map(({ signal, asks, code: of }) => `${signal} ${asks} ${of}`).sort();
  assert.deepEqual(asked, ['force unit trace/unit-missing', 'time unit trace/unit-missing']);
  assert.equal(found.maximum, null);
  const columns = { time: 't[s]', force: 'F[kN]', table: 'x[mm]', extension: null };
  assert.deepEqual((await preview(effects, bytes, { columns })).questions, []);
});

test('a bare ton is asked about, whatever else is plain', async (t) => {
  const effects = await bench(t);
  const bytes = ramp('time_s,Load [ton]', (at, force) => `${at},${(force / 10).toFixed(3)}`);
  const [question] = (await preview(effects, bytes)).questions;
  assert.equal(question?.code, 'trace/unit-ambiguous');
  assert.ok(question?.units.includes('long tonf'));
});

test('a file without anything like a force offers every column', async (t) => {
  const effects = await bench(t);
  const bytes = ramp('a,b', (at, force) => `${at},${force.toFixed(2)}`);
  const [question] = (await preview(effects, bytes)).questions;
  assert.deepEqual(question?.columns, [1, 2]);
});

const picture = Uint8Array.from([0x89, 0x50, 0x4e, 0x47, 13, 10, 26, 10, 0, 0, 0, 13, 73, 72, 68, 82, 0, 0, 1, 0]);
const unreadable: readonly (readonly [string, Uint8Array, string])[] = [
  ['an empty file', new Uint8Array(), 'trace/empty'],
  ['a picture', picture, 'trace/not-text'],
  ['a letter', text('Dear engineer,\nplease find the chain attached.\n'), 'trace/no-readings'],
  ['a flat line', ramp('time_s,force_kN', (at) => `${at},0.01`), 'trace/nothing-loaded'],
  [
    'a row with a word in it',
    ramp('time_s,force_kN', (at, force) => `${at},${at === 3 ? 'lost' : force}`),
    'trace/text-in-number',
  ],
];

for (const [what, bytes, wanted] of unreadable)
  test(`${what} is no recording, and its fault says why`, async (t) => {
    const found = await preview(await bench(t), bytes);
    assert.equal(found.fault?.code, wanted);
    assert.equal(found.reading, null);
    assert.ok((found.fault?.words.length ?? 0) > 20);
  });

test('the next file of the rig with the same header begins with the columns of the newest recording, and says whose', async (t) => {
  const effects = await bench(t);
  const file = (scale: number) =>
    ramp('t,F,x', (at, force) => `${at},${(force * scale).toFixed(2)},${(force / 10).toFixed(3)}`);
  const columns = { time_column: 't[s]', force_column: 'F[kN]', table_column: 'x[mm]' };
  await accept(effects, file(1), { pull: 'P-001', ...columns });
  const found = await preview(effects, file(1.1), { piece: 'A-2' });
  assert.deepEqual(found.profile, { campaign: code, pull: 'P-001' });
  assert.deepEqual(found.questions, []);
  assert.deepEqual(found.asked, { time: 't[s]', force: 'F[kN]', table: 'x[mm]', extension: null });
  const other = ramp('t,F', (at, force) => `${at},${force.toFixed(2)}`);
  assert.equal((await preview(effects, other)).profile, null, 'another header is another matter');
  assert.equal((await preview(effects, file(1.2), { rig: null })).profile, null, 'and so is another rig');
  const own = { time: 't[ms]', force: 'F[kN]', table: 'none', extension: null };
  assert.equal((await preview(effects, file(1.3), { columns: own })).profile, null, 'and what somebody chose stands');
});

test('bytes that are kept already are told with their pull', async (t) => {
  const effects = await bench(t);
  const bytes = readFileSync(new URL('ash-8-1.csv', demo));
  assert.deepEqual((await preview(effects, bytes)).keptAs, []);
  await accept(effects, bytes, { pull: 'P-001' });
  const again = await preview(effects, bytes, { piece: 'A-2' });
  assert.deepEqual(again.keptAs, [{ campaign: code, pull: 'P-001', piece: 'A-1' }]);
  assert.deepEqual(again.pathsTaken, ['traces/P-001.csv']);
});

test('a long file is read beside the server and says the same as a short one would', async (t) => {
  const effects = await bench(t);
  const rows = Array.from(
    { length: 90_000 },
    (_, i) => `${(i / 1000).toFixed(3)},${(i < 89_000 ? i / 2000 : 0).toFixed(3)}`,
  );
  const bytes = text(`time_s,force_kN\n${rows.join('\n')}\n`);
  assert.ok(bytes.length > 1024 * 1024);
  let ticks = 0;
  const beat = setInterval(() => ticks++, 5);
  const found = await preview(effects, bytes);
  clearInterval(beat);
  assert.ok(Math.abs((found.maximum?.value ?? 0) - 44.5) < 0.01);
  assert.ok(ticks > 3, `the clock went on ${ticks} times`);
});

test('a rig without a certificate in force on the day is doubted before anything is kept', async (t) => {
  const effects = await bench(t);
  const bytes = readFileSync(new URL('ash-8-1.csv', demo));
  const found = await preview(effects, bytes, { pulledAt: '2028-01-01T10:00:00Z' });
  assert.ok(found.doubts.some((doubt) => /no certificate in force on 2028-01-01/.test(doubt)));
});

test('newtons taken for kilonewtons are doubted', async (t) => {
  const effects = await bench(t);
  const bytes = ramp('time_s,F', (at, force) => `${at},${(force * 1000).toFixed(0)}`);
  const columns = { time: null, force: 'F[kN]', table: null, extension: null };
  const { doubts } = await preview(effects, bytes, { columns });
  assert.ok(
    doubts.some((doubt) => /see whether the unit of the force is right/.test(doubt)),
    doubts.join(),
  );
});

test('a file that was never sent is not previewed', async (t) => {
  const effects = await bench(t);
  const request = { sha256: '0'.repeat(64), name: 'x.csv', rig: null, piece: null, pulledAt: null };
  await assert.rejects(
    previewTrace(code, request, effects),
    (error) => isStoreError(error) && error.code === 'store/unknown-blob',
  );
});
