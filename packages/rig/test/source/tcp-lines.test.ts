import assert from 'node:assert/strict';
import { once } from 'node:events';
import { createServer, type Server, type Socket } from 'node:net';
import { after, test } from 'node:test';
import { setTimeout } from 'node:timers/promises';
import { type Source, tcpLines, testWires } from '../../src/index.ts';
import { freePort } from '../practice/program.ts';
import { heard, until } from './heard.ts';

const servers: Server[] = [];
const started: Source[] = [];
after(async () => {
  for (const source of started) await source.stop();
  for (const server of servers) server.close();
});

async function serve(talk: (socket: Socket, nth: number) => void, port = 0): Promise<number> {
  let nth = 0;
  const server = createServer((socket) => {
    socket.on('error', () => {});
    socket.resume();
    talk(socket, nth++);
  });
  server.listen(port, '127.0.0.1');
  await once(server, 'listening');
  servers.push(server);
  const address = server.address();
  return typeof address === 'object' && address ? address.port : 0;
}

function lines(port: number, silence_s?: number): Source {
  const source = tcpLines({ host: '127.0.0.1', port, pattern: 'F {force[kN]}', decimal: '.', channels: [], silence_s });
  started.push(source);
  return source;
}

test('lines sent a byte at a time come whole', async () => {
  const port = await serve(async (socket) => {
    for (const byte of 'F 1.25\r\nF 2.5\r\nF 3.75\r\n') {
      socket.write(byte);
      await setTimeout(1);
    }
  });
  const all = heard();
  const source = lines(port);
  await source.start(all.sink);
  await until(() => all.readings.length === 3);
  await source.stop();
  assert.deepEqual(all.values('force'), [1.25, 2.5, 3.75]);
  assert.deepEqual(all.rejected, []);
});

test('a connection that is lost is had again, said so, and the cut line is kept', async () => {
  const port = await serve((socket, nth) => {
    socket.write(`F ${nth}\nF ${nth}.5\nF ${nth}.`);
    if (nth < 2) void setTimeout(30).then(() => socket.destroy());
  });
  const all = heard();
  const source = lines(port);
  await source.start(all.sink);
  await until(() => all.values('force').length === 6);
  await source.stop();
  assert.deepEqual(all.values('force'), [0, 0.5, 1, 1.5, 2, 2.5]);
  assert.deepEqual(
    all.rejected.slice(0, 2).map(({ text }) => text),
    ['F 0.', 'F 1.'],
  );
  assert.equal(all.troubles.filter((words) => words.includes('the connection was lost')).length, 2);
  assert.equal(all.troubles.filter((words) => /is back after \d/.test(words)).length, 2);
});

test('a rig that is switched on later is found then', async () => {
  const port = await freePort();
  const all = heard();
  const source = lines(port);
  await source.start(all.sink);
  await until(() => all.troubles.length > 0);
  assert.match(all.troubles[0] ?? '', /cannot be reached \(.*ECONNREFUSED/);
  await serve((socket) => void socket.write('F 7\n'), port);
  await until(() => all.readings.length > 0);
  await source.stop();
  assert.deepEqual(all.values('force'), [7]);
});

test('a connection gone dead without a word is opened anew', async () => {
  const port = await serve((socket, nth) => void socket.write(`F ${nth}\n`));
  const all = heard();
  const source = lines(port, 0.2);
  await source.start(all.sink);
  await until(() => all.values('force').length >= 2);
  await source.stop();
  assert.deepEqual(all.values('force').slice(0, 2), [0, 1]);
  assert.match(all.troubles[0] ?? '', /silent for 0.2 s/);
});

test('testing the wires shows bytes, readings, rate, jitter and what could not be read', async () => {
  const port = await serve(async (socket) => {
    for (let i = 0; !socket.destroyed; i++) {
      socket.write(i % 10 === 9 ? 'Q ?\x01\n' : `F ${i}\n`);
      await setTimeout(10);
    }
  });
  const report = await testWires(lines(port), 0.6);
  const [force] = report.channels;
  assert.ok(force && force.readings > 20);
  assert.ok(force.rate_Hz !== null && force.rate_Hz > 30 && force.rate_Hz < 100, String(force.rate_Hz));
  assert.ok(force.arrivalSpread_ms !== null && force.arrivalSpread_ms >= 0);
  assert.ok(report.lines.some(({ text }) => /^F \d+$/.test(text)));
  assert.deepEqual(
    report.reasons.map(({ why, example }) => [why, example]),
    [['another shape', 'Q ?\\x01']],
  );
  assert.equal(report.isOpen, true);
  assert.ok(report.rejected > 1 && report.rejectedBytes === 4 * report.rejected);
});
