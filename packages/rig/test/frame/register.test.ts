import assert from 'node:assert/strict';
import { test } from 'node:test';
import fc from 'fast-check';
import { atPath, jsonPath, plainNumber } from '../../src/frame/json-path.ts';
import { registerValue } from '../../src/frame/register.ts';
import { type RegisterPlace, registerRequests } from '../../src/frame/register-map.ts';
import { type RegisterRing, ringRequests } from '../../src/frame/register-ring.ts';

test('a float32 of either word order comes back as it was laid', () => {
  const property = fc.property(fc.float({ noNaN: true, noDefaultInfinity: true }), (value) => {
    const high = Buffer.alloc(4);
    high.writeFloatBE(value);
    const low = Buffer.concat([high.subarray(2), high.subarray(0, 2)]);
    assert.equal(registerValue(high, 0, 'float32', 'high first'), value);
    assert.equal(registerValue(low, 0, 'float32', 'low first'), value);
  });
  fc.assert(property, { seed: 7, numRuns: 300 });
});

test('whole numbers keep their sign, NaN and missing bytes are no number', () => {
  const bytes = Uint8Array.from([0xff, 0xfe, 0x00, 0x01, 0x7f, 0xc0, 0, 0]);
  assert.equal(registerValue(bytes, 0, 'int16', 'high first'), -2);
  assert.equal(registerValue(bytes, 0, 'uint16', 'high first'), 65534);
  assert.equal(registerValue(bytes, 0, 'int32', 'high first'), -131071);
  assert.equal(registerValue(bytes, 0, 'uint32', 'low first'), 0x0001fffe);
  assert.equal(registerValue(bytes, 4, 'float32', 'high first'), null);
  assert.equal(registerValue(bytes, 6, 'float32', 'high first'), null);
});

const place = (channel: string, address: number, kind: 'holding' | 'input' = 'holding'): RegisterPlace => ({
  channel,
  address,
  kind,
  type: 'float32',
  wordOrder: 'high first',
  scale: 1,
  shift: 0,
});

test('neighbours are asked for together, what lies far apart or is of another kind is not', () => {
  const requests = registerRequests([place('b', 12), place('a', 10), place('c', 500), place('d', 11, 'input')]);
  assert.deepEqual(
    requests.map(({ kind, from, count }) => [kind, from, count]),
    [
      ['holding', 10, 4],
      ['holding', 500, 2],
      ['input', 11, 2],
    ],
  );
});

test('requests of a ring hold every new sample once, in order, none split and none past the end', () => {
  const property = fc.property(fc.nat(5000), fc.nat(99), fc.integer({ min: 1, max: 60 }), (seen, more, width) => {
    const ring: RegisterRing = {
      counter: { address: 0, type: 'uint32', wordOrder: 'high first' },
      from: 1000,
      length: 100,
      width,
    };
    const slots = ringRequests(ring, seen, seen + more).flatMap(({ from, samples }) => {
      assert.ok(samples * width <= 125 && from >= 1000 && from + samples * width <= 1000 + 100 * width);
      return Array.from({ length: samples }, (_, i) => (from - 1000) / width + i);
    });
    assert.deepEqual(
      slots,
      Array.from({ length: more }, (_, i) => (seen + i) % 100),
    );
  });
  fc.assert(property, { seed: 7, numRuns: 300 });
});

test('a path finds its own members only, and only whole numbers in text are numbers', () => {
  const value = JSON.parse('{"load":{"kN":[1,{"f":"2.5"}]}}');
  assert.equal(plainNumber(atPath(value, jsonPath('load.kN[1].f'))), 2.5);
  assert.equal(atPath(value, jsonPath('load.constructor')), undefined);
  assert.throws(() => jsonPath('a..b'), { code: 'source/json-path' });
  for (const text of ['', '12 kN', 'NaN', '0x10', 'Infinity', null, true, {}]) assert.equal(plainNumber(text), null);
  assert.equal(plainNumber('-3,5', ','), -3.5);
});
