import assert from 'node:assert/strict';
import { test } from 'node:test';
import fc from 'fast-check';
import type { LineFormat } from '../../src/source/line-reader.ts';
import { lineReader, openLineFormat } from '../../src/source/line-reader.ts';
import { heard } from './heard.ts';

const plain: LineFormat = { pattern: 'F {force[kN]} T {table[mm]} {time[s]}', decimal: '.', channels: [] };

function fed(format: LineFormat, chunks: readonly (string | Uint8Array)[], every_s = 0.01) {
  const all = heard();
  const reader = lineReader(openLineFormat(format), all.sink);
  for (const [i, chunk] of chunks.entries())
    reader.push(typeof chunk === 'string' ? Buffer.from(chunk, 'latin1') : chunk, i * every_s);
  reader.cut();
  return all;
}

/** A pull at 100 Hz as a panel sends it; `value` says what stands where the force should. */
function pull(value: (force: number, i: number) => string | number, count = 500): string[] {
  return Array.from({ length: count }, (_, i) => {
    const force = Math.round(100 * (0.1 * i + 0.02 * Math.sin(i))) / 100;
    return `F ${value(force, i)} T ${i * 0.02} ${(i * 0.01).toFixed(2)}\n`;
  });
}

test('good, late, corrupt and missing lines: whatever the chunks, the same readings, every other byte kept', () => {
  const text = [
    'F 1 T 2 0.1\n',
    'F 1 T\n',
    'F 2 T 3 0.3\r\n',
    '\x00\xff garbage\n',
    'F NaN T 1 0.4\n',
    'F 3 T 4 0.5\n',
    'F 4 T',
  ].join('');
  const whole = fed(plain, [text]);
  assert.deepEqual(whole.values('force'), [1, 2, 3]);
  assert.deepEqual(
    whole.rejected.map(({ text: bytes }) => bytes),
    ['F 1 T', '\x00\xff garbage', 'F NaN T 1 0.4', 'F 4 T'],
  );
  assert.equal(whole.rejected[2]?.why, 'force is no number: "NaN"');
  const property = fc.property(fc.array(fc.nat(text.length), { maxLength: text.length }), (cuts) => {
    const at = [0, ...cuts.toSorted((a, b) => a - b), text.length];
    const parts = at.slice(1).map((end, i) => text.slice(at[i], end));
    const found = fed(plain, parts);
    assert.deepEqual(found.rejected, whole.rejected);
    assert.deepEqual(
      found.readings.map(({ value, time_s }) => [value, time_s]),
      whole.readings.map(({ value, time_s }) => [value, time_s]),
    );
  });
  fc.assert(property, { seed: 7, numRuns: 200 });
  assert.deepEqual(fed(plain, [...text]).rejected, whole.rejected);
});

test('units on the wire become bench units, and a reversed channel is turned', () => {
  const format = { ...plain, pattern: '{force[lbf]} {table[in]}', channels: [{ name: 'force', isReversed: true }] };
  const found = fed(format, ['-1000 2\n']);
  assert.deepEqual(found.values('force'), [4.4482216152605]);
  assert.deepEqual(found.values('table'), [50.8]);
});

test('a pattern that fits nothing is said, with a line that came', () => {
  const found = fed(
    { ...plain, pattern: 'L {force[kN]}' },
    pull((force) => force, 30),
  );
  assert.equal(found.readings.length, 0);
  assert.equal(found.rejected.length, 30);
  assert.equal(found.troubles.length, 1);
  assert.match(found.troubles[0] ?? '', /could not be read with "L \{force\[kN\]\}".*"F [\d.]+ T 0\.38 0\.19"/);
});

test('bytes that are no text are taken for a wrong baud rate, line ends or not', () => {
  let state = 1;
  const noise = Uint8Array.from({ length: 20_000 }, () => {
    state = (state * 1103515245 + 12345) % 2147483648;
    return 128 + ((state >> 16) % 128);
  });
  const found = fed(
    plain,
    [noise.subarray(0, 6000), noise.subarray(6000, 12_000), noise.subarray(12_000)].flatMap((part) => [
      part.subarray(0, 2000),
      part.subarray(2000, 4000),
      part.subarray(4000),
    ]),
  );
  assert.equal(found.readings.length, 0);
  assert.ok(
    found.troubles.some((words) => words.includes('baud')),
    found.troubles.join(),
  );
  assert.equal(
    found.rejected.reduce((sum, { text }) => sum + text.length, 0),
    noise.length,
  );
});

test('a plain pull raises no doubt', () => {
  assert.deepEqual(
    fed(
      plain,
      pull((force) => force),
    ).troubles,
    [],
  );
});

test('a force that falls to nothing at parting raises no doubt', () => {
  const parted = pull((force, i) => (i < 400 ? force : (0.05 + 0.01 * (i % 3)).toFixed(2)), 800);
  assert.deepEqual(fed(plain, parted).troubles, []);
});

test('a force with the wrong sign is doubted, and so is one whose sign turns over', () => {
  assert.match(
    fed(
      plain,
      pull((force) => -force),
    ).troubles.join(),
    /stays below zero/,
  );
  const turned = fed(
    plain,
    pull((force, i) => (i < 300 ? force : -force)),
  ).troubles;
  assert.match(turned[0] ?? '', /sign turned over/);
});

for (const [to, factor] of [
  ['N', 1000],
  ['lbf', 224.80894309971],
  ['tf', 0.10197162129779],
  ['kgf', 101.97162129779],
] as const)
  test(`a panel switched from kN to ${to} in mid-pull is doubted by name`, () => {
    const found = fed(
      plain,
      pull((force, i) => (i < 300 ? force : (force * factor).toFixed(3))),
    );
    assert.equal(found.troubles.length, 1, found.troubles.join());
    assert.ok(found.troubles[0]?.includes(`from kN to ${to}?`), found.troubles[0]);
  });

test('a unit switched while the force climbs by a twentieth a reading is doubted all the same, and a parting there is not', () => {
  const climbing = (after: (force: number) => number) =>
    fed(
      plain,
      pull((force, i) => (i < 200 ? force : after(force)).toFixed(2), 400).filter((_, i) => i % 10 === 0),
      0.1,
    );
  assert.match(climbing((force) => force * 101.971621).troubles.join(), /switched from kN to kgf/);
  assert.deepEqual(climbing((force) => 0.0098 * force).troubles, []);
});

test('a value that freezes is marked stuck and said once; one that stands still from the start is not', () => {
  const found = fed(
    plain,
    pull((force, i) => (i < 200 ? force : 20), 600),
  );
  assert.equal(found.troubles.length, 1);
  assert.match(found.troubles[0] ?? '', /force has stood at exactly 20 kN.*stuck/);
  assert.equal(found.readings.filter(({ channel, quality }) => channel === 'force' && quality === 'stuck').length, 200);
  assert.deepEqual(
    fed(
      plain,
      pull(() => 0, 600),
    ).troubles,
    [],
  );
});

test('a reading outside the range is marked, not left out', () => {
  const format: LineFormat = { ...plain, channels: [{ name: 'force', range: [0, 30] }] };
  const found = fed(
    format,
    pull((force) => force),
  );
  const beyond = found.readings.filter(({ quality }) => quality === 'out of range');
  assert.ok(beyond.length > 100 && beyond.every(({ value }) => value > 30));
  assert.equal(found.values('force').length, 500);
});

test('what says of itself that it is practice is taken at its word and kept', () => {
  const found = fed(plain, ['# PRACTICE seed 3: simulated\n', 'F 1 T 2 0.1\n']);
  assert.equal(found.state.practice, 1);
  assert.equal(found.rejected.length, 1);
});
