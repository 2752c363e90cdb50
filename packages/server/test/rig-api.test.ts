import assert from 'node:assert/strict';
import { once } from 'node:events';
import type { AddressInfo } from 'node:net';
import { before, describe, test } from 'node:test';
import { setTimeout } from 'node:timers/promises';
import { cautions, type LiveMessage, type RigDesk } from '@provinghouse/contract';
import { InputError } from '@provinghouse/core';
import { audience } from '@provinghouse/service/pull';
import { type ClientOptions, WebSocket } from 'ws';
import type { RigPorts, WireTestViewer } from '../src/rig-ports.ts';
import { serverBench } from './bench.ts';
import { memoryPorts } from './memory-ports.ts';

const desk: RigDesk = {
  rig: 'RIG-1',
  source: 'tcp://127.0.0.1:4001',
  isPractice: false,
  fixtureLimit_kN: null,
  agreedDrop: null,
  campaigns: [],
  pull: null,
  unfinished: [],
};
const armed: LiveMessage = {
  kind: 'armed',
  pull: 'P-001',
  piece: 'ASH-8-1',
  rig: 'RIG-1',
  isPractice: false,
  at: '2026-03-10T08:00:00Z',
};
const viewers = audience();
const lookingOn = new Set<WireTestViewer>();
let isPulling = false;
const heard: unknown[] = [];
const known = (rig: string, ...said: unknown[]) => {
  if (rig !== 'RIG-1') return null;
  heard.push(said);
  return desk;
};
const rigs: RigPorts = {
  rigs: async () => [desk],
  desk: async (rig) => known(rig),
  arm: async (rig, input) => {
    if (input.piece === 'PULLED') throw new InputError('pull/piece-pulled', 'Piece PULLED has been pulled already.');
    return known(rig, 'arm', input);
  },
  start: async (rig) => known(rig, 'start'),
  mark: async (rig, words) => known(rig, 'mark', words),
  stop: async (rig) => known(rig, 'stop'),
  recover: async (rig, spool) => known(rig, 'recover', spool),
  goOn: async (rig, input) => known(rig, 'goOn', input),
  testWires: async (rig, viewer) => {
    if (rig !== 'RIG-1') return null;
    if (isPulling) throw new InputError('pull/wires-taken', 'The wires of RIG-1 are taken by pull P-001.');
    lookingOn.add(viewer);
    viewer.send({ kind: 'report', seconds: 1, left_s: 299, reports: [], findings: [] });
    return () => void lookingOn.delete(viewer);
  },
  follow: async (rig, viewer) => (rig === 'RIG-1' ? viewers.join(viewer, [armed]) : null),
};

const { app, post } = serverBench(memoryPorts, { rigs });
let address = '';

before(async () => {
  await app.listen({ port: 0, host: '127.0.0.1' });
  address = `127.0.0.1:${(app.server.address() as AddressInfo).port}`; // a listening TCP server has one
});

/** Opens the live view of a rig, or the test of its wires. */
const open = (place: string, options: ClientOptions = {}) =>
  new WebSocket(`ws://${address}/api/rigs/${place}`, options);

const firstMessage = async (socket: WebSocket) => JSON.parse(String((await once(socket, 'message'))[0]));

/** The status with which a connection was refused. */
async function refusalOf(socket: WebSocket): Promise<number> {
  const [, reply] = await once(socket, 'unexpected-response');
  socket.on('error', () => undefined);
  socket.terminate();
  return reply.statusCode;
}

/** Leaves, and waits until the server has noticed. */
async function leave(socket: WebSocket): Promise<void> {
  socket.close();
  await once(socket, 'close');
  await setTimeout(50);
}

const goingOnBlindly = { spool: 'QUAY-1.P-001', confirmed: 'ASH-8-1' };
const goingOn = { ...goingOnBlindly, cautions: [...cautions] };
const arming = { campaign: 'QUAY-1', piece: 'ASH-8-1', confirmed: 'ASH-8-1', operator: null, cautions: [...cautions] };

describe('what an operator says reaches the rig', () => {
  const orders = [
    ['arm', arming, ['arm', arming]],
    ['start', {}, ['start']],
    ['mark', { words: 'bang' }, ['mark', 'bang']],
    ['stop', {}, ['stop']],
    ['recover', { spool: 'QUAY-1.P-001' }, ['recover', 'QUAY-1.P-001']],
    ['go-on', goingOn, ['goOn', goingOn]],
  ] as const;
  for (const [order, body, expected] of orders) {
    test(`POST ${order} hands it on and answers with the desk`, async () => {
      const reply = await post(`/api/rigs/RIG-1/${order}`, body);
      assert.equal(reply.statusCode, 200, reply.body);
      assert.deepEqual(reply.json(), desk);
      assert.deepEqual(heard.at(-1), expected);
    });
  }

  test('the rigs are listed, and one is read', async () => {
    assert.deepEqual((await app.inject('/api/rigs')).json(), [desk]);
    assert.deepEqual((await app.inject('/api/rigs/RIG-1')).json(), desk);
  });
});

describe('what is refused is a problem with a stable code', () => {
  const cases = [
    ['an unknown rig', '/api/rigs/NONE/start', {}, 404, 'rig-unknown'],
    ['a refusal of the rig', '/api/rigs/RIG-1/arm', { ...arming, piece: 'PULLED' }, 409, 'pull-refused'],
    ['a body with a part missing', '/api/rigs/RIG-1/arm', { campaign: 'QUAY-1' }, 400, 'body-malformed'],
    ['a caution nobody knows', '/api/rigs/RIG-1/arm', { ...arming, cautions: ['luck'] }, 400, 'body-malformed'],
    ['going on without the cautions', '/api/rigs/RIG-1/go-on', goingOnBlindly, 400, 'body-malformed'],
    ['a mark without words', '/api/rigs/RIG-1/mark', { words: '' }, 400, 'body-malformed'],
    ['a mark that never ends', '/api/rigs/RIG-1/mark', { words: 'x'.repeat(20_000) }, 400, 'body-malformed'],
    ['what is no JSON', '/api/rigs/RIG-1/mark', '{"words":', 400, 'body-malformed'],
  ] as const;
  for (const [what, url, body, status, code] of cases) {
    test(`${what} is ${code}`, async () => {
      const reply = await post(url, body);
      assert.equal(reply.statusCode, status, reply.body);
      assert.equal(reply.json().code, code);
      assert.match(String(reply.headers['content-type']), /^application\/problem\+json/);
    });
  }

  test('the code of a refusal goes with it', async () => {
    assert.equal((await post('/api/rigs/RIG-1/arm', { ...arming, piece: 'PULLED' })).json().fault, 'pull/piece-pulled');
  });

  test('what a form of another site can send without being asked, plain text, is not read', async () => {
    const reply = await post('/api/rigs/RIG-1/start', '{}', { 'content-type': 'text/plain' });
    assert.equal(reply.json().code, 'body-malformed');
  });
});

describe('no page of another site reaches the rig', () => {
  for (const origin of ['http://evil.example', 'null', 'http://localhost.evil.example', 'http://localhost:1']) {
    test(`a POST from ${origin} is refused before it is read`, async () => {
      const before = heard.length;
      const reply = await post('/api/rigs/RIG-1/start', {}, { origin });
      assert.equal(reply.statusCode, 403);
      assert.equal(reply.json().code, 'origin-refused');
      assert.equal(heard.length, before);
    });

    test(`a WebSocket from ${origin} is refused`, async () => {
      assert.equal(await refusalOf(open('RIG-1/live', { origin })), 403);
    });
  }

  test('the own screens reach it', async () => {
    assert.equal((await post('/api/rigs/RIG-1/start', {}, { origin: 'http://localhost' })).statusCode, 200);
    const socket = open('RIG-1/live', { origin: `http://${address}` });
    assert.deepEqual(await firstMessage(socket), armed);
    await leave(socket);
  });

  test('a WebSocket under a foreign host name is refused', async () => {
    assert.equal(await refusalOf(open('RIG-1/live', { headers: { host: 'evil.example' } })), 421);
  });
});

describe('a test of the wires', () => {
  test('goes on for as long as its connection stands', async () => {
    const socket = open('RIG-1/wires');
    assert.equal((await firstMessage(socket)).kind, 'report');
    assert.equal(lookingOn.size, 1);
    await leave(socket);
    assert.equal(lookingOn.size, 0);
  });

  test('that is over closes the connection', async () => {
    const socket = open('RIG-1/wires');
    await once(socket, 'message');
    for (const viewer of lookingOn) viewer.drop();
    assert.equal((await once(socket, 'close'))[0], 1000);
  });

  test('is refused in words while a pull has the wires', async () => {
    isPulling = true;
    const socket = open('RIG-1/wires');
    assert.deepEqual(await firstMessage(socket), {
      kind: 'refused',
      code: 'pull/wires-taken',
      words: 'The wires of RIG-1 are taken by pull P-001.',
    });
    await once(socket, 'close');
    isPulling = false;
  });

  test('of a rig that is not there is told by the closing, and no page of another site may begin one', async () => {
    assert.equal((await once(open('NONE/wires'), 'close'))[0], 1008);
    assert.equal(await refusalOf(open('RIG-1/wires', { origin: 'http://evil.example' })), 403);
  });
});

describe('viewers', () => {
  test('a rig that is not there is told by the closing', async () => {
    assert.equal((await once(open('NONE/live'), 'close'))[0], 1008);
  });

  test('who leaves is told nothing more', async () => {
    const socket = open('RIG-1/live');
    await once(socket, 'message');
    const before = viewers.size();
    await leave(socket);
    assert.equal(viewers.size(), before - 1);
  });

  test('a viewer that does not read holds nobody up, and has the newest state once it reads again', async () => {
    const quick = open('RIG-1/live');
    const slow = open('RIG-1/live');
    await Promise.all([once(quick, 'message'), once(slow, 'message')]);
    const got = { quick: [] as number[], slow: [] as number[] };
    const take = (list: number[]) => (data: unknown) => {
      const message = JSON.parse(String(data)) as LiveMessage;
      if (message.kind === 'samples') list.push(message.received);
    };
    quick.on('message', take(got.quick));
    slow.on('message', take(got.slow));
    slow.pause();
    const sample = { time_s: 1.2345, force_kN: 12.345, table_mm: 1.23, extension_mm: null };
    const samples = Array.from({ length: 100 }, () => sample);
    const rounds = 3000;
    for (let received = 1; received <= rounds; received++) {
      viewers.tell({ kind: 'samples', samples, received, rejected: 0 });
      if (received % 10 === 0) await new Promise((resolve) => setImmediate(resolve));
    }
    while (got.quick.at(-1) !== rounds) await setTimeout(5);
    slow.resume();
    await setTimeout(100);
    viewers.tell({ kind: 'mark', time_s: 2, words: 'bang' });
    while (got.slow.at(-1) !== rounds) await setTimeout(5);
    assert.ok(got.slow.length < rounds / 2, `${got.slow.length} messages went to the slow one`);
    assert.ok(viewers.left().behind >= 1);
    quick.terminate();
    slow.terminate();
  });
});
