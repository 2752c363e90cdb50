import assert from 'node:assert/strict';
import { test } from 'node:test';
import { startServer } from '../src/main.ts';
import { memoryPorts, summary } from './memory-ports.ts';

test('the server listens on the loopback, names its address, and stops', async (t) => {
  const server = await startServer({ ports: memoryPorts, port: 0 });
  t.after(() => server.close());
  assert.match(server.address, /^http:\/\/127\.0\.0\.1:\d+$/);
  const reply = await fetch(`${server.address}/api/campaigns`);
  assert.deepEqual(await reply.json(), { campaigns: [summary], next: null });
  await server.close();
  await assert.rejects(fetch(`${server.address}/api/campaigns`));
});

test('a port that is taken is said so, with the cure', async () => {
  const first = await startServer({ ports: memoryPorts, port: 0 });
  const port = Number(new URL(first.address).port);
  await assert.rejects(startServer({ ports: memoryPorts, port }), (error: Error & { code?: string }) => {
    assert.equal(error.name, 'InputError');
    assert.equal(error.code, 'server/port-taken');
    assert.match(error.message, new RegExp(`Port ${port} on 127\\.0\\.0\\.1 is taken\\. .*choose another port`));
    return true;
  });
  await first.close();
});

test('an address that is not of this machine is said so', async () => {
  await assert.rejects(startServer({ ports: memoryPorts, port: 0, host: '203.0.113.1' }), {
    code: 'server/host-unknown',
  });
});
