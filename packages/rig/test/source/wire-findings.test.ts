import assert from 'node:assert/strict';
import { test } from 'node:test';
import type { WireFinding, WireReport } from '@provinghouse/contract';
import { lineReader, openLineFormat } from '../../src/source/line-reader.ts';
import type { Source, SourceSink } from '../../src/source/source.ts';
import { listenToWire } from '../../src/source/test-wires.ts';
import { wireFindings } from '../../src/source/wire-findings.ts';

interface Script {
  readonly pattern?: string;
  readonly chunks: readonly (string | Uint8Array)[];
  /** Seconds between chunks, and those the test is taken to have lasted. */
  readonly every_s?: number;
  readonly isOpen?: boolean;
  readonly clock?: 'own' | 'arrival';
}

/** What a test of the wires reports of lines that came at even steps. */
async function reported({ pattern = 'F {force[kN]}', chunks, every_s = 0.01, isOpen = true, clock }: Script) {
  const format = openLineFormat({ pattern, decimal: '.', channels: [] });
  const wire: { sink: SourceSink | null } = { sink: null };
  const source: Source = {
    describe: 'wire',
    pattern,
    channels: format.channels,
    clock: clock ?? (format.hasOwnClock ? 'own' : 'arrival'),
    start: async (sink) => {
      wire.sink = sink;
    },
    stop: async () => undefined,
  };
  const listener = listenToWire(source);
  await listener.start();
  assert.ok(wire.sink);
  wire.sink.connection?.(isOpen);
  const reader = lineReader(format, wire.sink);
  for (const [i, chunk] of chunks.entries())
    reader.push(typeof chunk === 'string' ? Buffer.from(chunk, 'latin1') : chunk, i * every_s);
  const seconds = every_s * chunks.length;
  const report = listener.report();
  // The lines carry times of their own making, so the age of the last is of no account here.
  return { ...report, seconds, channels: report.channels.map((one) => ({ ...one, sinceLast_s: 0 })) };
}

function kinds(findings: readonly WireFinding[]): string[] {
  return findings.map((finding) => (finding.kind === 'doubt' ? `doubt: ${finding.doubt}` : finding.kind));
}

/** A force that moves as a resting cell does, around a level that climbs. */
const forces = (count: number, value: (force: number, i: number) => string | number = (force) => force) =>
  Array.from({ length: count }, (_, i) => `F ${value(Math.round(100 * (0.05 * i + 0.02 * Math.sin(i))) / 100, i)}\n`);

let state = 1;
const noise = Uint8Array.from({ length: 5000 }, () => {
  state = (state * 1103515245 + 12345) % 2147483648;
  return 128 + ((state >> 16) % 128);
});

const cases: readonly [string, Script, readonly string[]][] = [
  ['good lines', { chunks: forces(500) }, []],
  ['a wrong pattern', { pattern: 'L {force[kN]}', chunks: forces(50) }, ['none read']],
  [
    'a wrong baud rate',
    { chunks: Array.from({ length: 50 }, (_, i) => noise.subarray(100 * i, 100 * i + 100)) },
    ['garbled'],
  ],
  ['NaN now and then', { chunks: forces(500, (force, i) => (i % 10 === 0 ? 'NaN' : force)) }, ['some unread']],
  ['a swapped sign', { chunks: forces(500, (force) => -force) }, ['doubt: below zero']],
  [
    'a sign that turns over',
    { chunks: forces(500, (force, i) => (i < 300 ? force : -force)) },
    ['doubt: sign turned', 'doubt: below zero'],
  ],
  [
    'a panel switched from kN to N',
    { chunks: forces(500, (force, i) => (i < 300 ? force : 1000 * force)) },
    ['doubt: unit switched'],
  ],
  ['a value that sticks', { chunks: forces(600, (force, i) => (i < 300 ? force : 15)) }, ['doubt: stuck']],
  ['a value that never moved', { chunks: forces(600, () => 0.25) }, ['still']],
  ['no bytes at all', { chunks: ['', ''], every_s: 2 }, ['silent']],
  ['no connection', { chunks: [], isOpen: false }, ['away']],
  ['no channel that is the force', { pattern: 'X {table[mm]}', chunks: ['X 1\n', 'X 2\n'] }, ['no force']],
  [
    'a clock that runs ten times as fast',
    {
      pattern: 'F {force[kN]} T {time[s]}',
      chunks: forces(500).map((line, i) => `${line.trim()} T ${(i / 10).toFixed(1)}\n`),
    },
    ['clock'],
  ],
];

for (const [what, script, expected] of cases)
  test(`${what}: ${expected.join(', ') || 'nothing to find'}`, async () => {
    assert.deepEqual(kinds(wireFindings([await reported(script)])), expected);
  });

test('a wrong pattern is told with a line that came and the pattern beside it', async () => {
  const [finding] = wireFindings([await reported({ pattern: 'L {force[kN]}', chunks: forces(50) })]);
  assert.ok(finding?.kind === 'none read');
  assert.equal(finding.pattern, 'L {force[kN]}');
  assert.match(finding.example, /^F [\d.]+$/);
});

test('two sources that both send the force are told before a recording would refuse them', async () => {
  const one: WireReport = await reported({ chunks: forces(50) });
  assert.deepEqual(kinds(wireFindings([one, one])), ['two of a kind']);
});

test('a wire that was heard and then says nothing has fallen silent', async () => {
  const report = await reported({ chunks: forces(500) });
  const quiet = { ...report, channels: report.channels.map((channel) => ({ ...channel, sinceLast_s: 3 })) };
  assert.deepEqual(kinds(wireFindings([quiet])), ['fell silent']);
});

test('lines are shown whole whatever the chunks, the last thirty, all but plain ASCII escaped', async () => {
  const text = Array.from({ length: 40 }, (_, i) => `F ${i}${i === 39 ? '\x80' : ''}\r\n`).join('');
  const { lines } = await reported({ chunks: [...text] });
  assert.deepEqual(
    lines.map((line) => line.text),
    Array.from({ length: 30 }, (_, i) => `F ${i + 10}${i === 29 ? '\\x80' : ''}`),
  );
});

test('rate and spread are those of the arrivals', async () => {
  const { channels } = await reported({ chunks: forces(201), every_s: 0.02 });
  assert.ok(Math.abs((channels[0]?.rate_Hz ?? 0) - 50) < 1e-6);
  assert.ok((channels[0]?.arrivalSpread_ms ?? 1) < 1e-3);
});
