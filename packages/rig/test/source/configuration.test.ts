import assert from 'node:assert/strict';
import { test } from 'node:test';
import { isInputError, parseTrace } from '@provinghouse/core';
import { configurationOfAddress, keyedReadings, openSource, replay, sourceConfiguration } from '../../src/index.ts';
import { heard, until } from './heard.ts';

test('a configuration survives being written as JSON, with what is usual filled in', () => {
  const given = { kind: 'serial lines', path: '/dev/ttyUSB0', pattern: '{force[kN]}' };
  const found = sourceConfiguration(JSON.parse(JSON.stringify(sourceConfiguration(given))));
  assert.deepEqual(found, {
    ...given,
    baud: 9600,
    dataBits: 8,
    parity: 'none',
    stopBits: 1,
    decimal: '.',
    channels: [],
  });
  assert.equal(openSource(found).describe, 'serial /dev/ttyUSB0 9600 8N1');
});

const FAULTS: readonly [unknown, string][] = [
  [null, 'source/configuration'],
  [{ kind: 'telepathy' }, 'source/configuration'],
  [{ kind: 'tcp lines', host: 'a', port: 0, pattern: '{force[kN]}' }, 'source/configuration'],
  [{ kind: 'tcp lines', host: 'a', port: 1, pattern: '{force[kN]}', password: 'x' }, 'source/configuration'],
  [{ kind: 'tcp lines', host: 'a', port: 1, pattern: '{force' }, 'source/pattern'],
  [{ kind: 'tcp lines', host: 'a', port: 1, pattern: '{force}' }, 'source/unit-missing'],
  [{ kind: 'tcp lines', host: 'a', port: 1, pattern: '{force[ton]}' }, 'source/unit-ambiguous'],
  [{ kind: 'tcp lines', host: 'a', port: 1, pattern: '{force[furlong]}' }, 'source/unit-unknown'],
  [{ kind: 'tcp lines', host: 'a', port: 1, pattern: '{force[mm]}' }, 'source/unit-unfit'],
  [
    { kind: 'tcp lines', host: 'a', port: 1, pattern: '{force[kN]}', channels: [{ name: 'force', range: [5, 5] }] },
    'source/range',
  ],
  [
    {
      kind: 'mqtt',
      broker: 'mqtt://a',
      topics: [{ topic: 'rig/#', channel: 'force' }],
      channels: [{ name: 'force', unit: 'kN' }],
    },
    'source/topic',
  ],
  [
    {
      kind: 'modbus tcp',
      host: 'a',
      registers: [{ channel: 'force', address: 0, type: 'int16' }],
      channels: [{ name: 'force', unit: 'kN' }],
      clock: { address: 900, type: 'uint32', unit: 'ms' },
    },
    'source/registers',
  ],
];
for (const [value, code] of FAULTS)
  test(`${JSON.stringify(value)?.slice(0, 90)} is refused as ${code}`, () => {
    assert.throws(
      () => openSource(sourceConfiguration(value)),
      (error) => isInputError(error) && error.code === code,
    );
  });

test('an address on a command line becomes a configuration, or is refused', () => {
  const options = { pattern: '{force[kN]}' };
  const serial = configurationOfAddress('serial:/dev/ttyS1?baud=115200&parity=even', options);
  assert.equal(openSource(serial).describe, 'serial /dev/ttyS1 115200 8E1');
  assert.equal(openSource(configurationOfAddress('tcp://[::1]:4001', options)).describe, 'tcp://::1:4001');
  for (const address of ['', 'rig', 'tcp://host', 'http://host:80'])
    assert.throws(() => configurationOfAddress(address, options), { code: 'source/address' });
});

test("keyed readings take a point or a comma in the channel's unit, and keep what is no number", async () => {
  const source = keyedReadings([{ name: 'force', unit: 'N' }]);
  const all = heard();
  assert.throws(() => source.key('force', '1'), { code: 'source/not-started' });
  await source.start(all.sink);
  assert.equal(source.key('force', '12500'), 12.5);
  assert.equal(source.key('force', ' 12500,5 '), 12.5005);
  assert.equal(source.key('force', 'abt 12'), null);
  assert.throws(() => source.key('table', '1'), { code: 'source/unknown-channel' });
  await source.stop();
  assert.deepEqual(all.values('force'), [12.5, 12.5005]);
  assert.deepEqual(
    all.rejected.map(({ text }) => text),
    ['abt 12'],
  );
  assert.deepEqual(all.ends, ['stopped']);
});

const recording = parseTrace(
  new TextEncoder().encode(
    `Time[s],Load[kN],Travel[mm]\n${Array.from({ length: 2000 }, (_, i) => `${i / 100},${i / 50},${i === 7 ? '' : i}`).join('\n')}\n`,
  ),
);

test('a replayed file gives its own rows, at once or paced', async () => {
  for (const pace of ['at once', 200] as const) {
    const all = heard();
    const source = replay({ name: 'pull.csv', signals: recording, pace });
    await source.start(all.sink);
    await until(() => all.ends.length > 0);
    assert.deepEqual(all.ends, ['the end of the file']);
    assert.deepEqual(all.values('force'), [...recording.force_kN]);
    assert.equal(all.values('table').length, 1999);
    await source.stop();
  }
  assert.throws(() => replay({ name: 'a', signals: { ...recording, time_s: null }, pace: 1 }), {
    code: 'source/replay-no-time',
  });
});
