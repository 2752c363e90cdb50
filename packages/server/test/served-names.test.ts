import assert from 'node:assert/strict';
import { test } from 'node:test';
import { loopbackNames } from '../src/host-check.ts';
import { servedNames } from '../src/served-names.ts';

test('a server on the loopback answers to loopback names alone', () => {
  for (const host of ['127.0.0.1', 'localhost', '::1']) assert.deepEqual(servedNames(host), loopbackNames);
});

test('a server on one address answers to it, IPv6 in brackets', () => {
  assert.deepEqual(servedNames('192.0.2.7'), [...loopbackNames, '192.0.2.7']);
  assert.deepEqual(servedNames('2001:DB8::7'), [...loopbackNames, '[2001:db8::7]']);
});

test('a server on every address answers to those of this machine, and to no pattern', () => {
  const names = servedNames('0.0.0.0');
  for (const name of loopbackNames) assert.ok(names.includes(name));
  assert.ok(!names.includes('0.0.0.0') && !names.some((name) => name.includes('*')));
});
