import assert from 'node:assert/strict';
import { test } from 'node:test';
import { hostName, isHostAllowed, isLoopback, loopbackNames } from '../src/host-check.ts';

test('a request that names no host, or none that can be read, is not allowed', () => {
  for (const header of [undefined, '', ' ', ':80', 'localhost:port', 'localhost:80:80', 'localhost/', '[::1', 'a b']) {
    assert.equal(isHostAllowed(header, loopbackNames), false, String(header));
  }
});

test('the name of a host is what stands before its port', () => {
  assert.equal(hostName('LocalHost:8480'), 'localhost');
  assert.equal(hostName('[::1]:8480'), '[::1]');
  assert.equal(hostName('192.0.2.7'), '192.0.2.7');
});

test('loopback is 127.0.0.0/8, ::1 and localhost, nothing that only begins like one', () => {
  for (const host of ['127.0.0.1', '127.8.0.1', '::1', 'localhost']) assert.equal(isLoopback(host), true, host);
  for (const host of ['0.0.0.0', '127.evil.example', '128.0.0.1', 'localhost.evil.example'])
    assert.equal(isLoopback(host), false, host);
});
