import { spawn, spawnSync } from 'node:child_process';
import { mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { connect, createServer } from 'node:net';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { setTimeout } from 'node:timers/promises';

/** False when the program is there, fetched from Debian where that is allowed; else why the test is skipped. */
export function missing(program: 'socat' | 'mosquitto'): string | false {
  if (isThere(program)) return false;
  if (process.getuid?.() === 0)
    spawnSync('apt-get', ['install', '-y', '-q', program], { stdio: 'ignore', timeout: 120_000 });
  return isThere(program) ? false : `${program} is not installed (Debian: apt-get install ${program})`;
}

function isThere(program: string): boolean {
  const { error } = spawnSync(program, ['-h'], { stdio: 'ignore' });
  return error === undefined;
}

export async function freePort(): Promise<number> {
  const server = createServer().listen(0, '127.0.0.1');
  await new Promise((resolve) => server.once('listening', resolve));
  const address = server.address();
  await new Promise((resolve) => server.close(resolve));
  if (typeof address !== 'object' || address === null) throw new Error('no port');
  return address.port;
}

export interface Broker {
  readonly url: string;
  readonly stop: () => Promise<void>;
}

/** A Mosquitto of the test's own, on a loopback port, by default a free one, told to drop nothing for slow subscribers. */
export async function startBroker(wanted?: number): Promise<Broker> {
  const folder = mkdtempSync(join(tmpdir(), 'broker-'));
  const port = wanted ?? (await freePort());
  const settings = `listener ${port} 127.0.0.1\nallow_anonymous true\npersistence false\nmax_queued_messages 0\nset_tcp_nodelay true\n`;
  writeFileSync(join(folder, 'settings'), settings);
  const child = spawn('mosquitto', ['-c', join(folder, 'settings')], { stdio: 'ignore' });
  const gone = new Promise<void>((resolve) => child.once('exit', () => resolve()));
  for (let i = 0; i < 100 && !(await answers(port)); i++) await setTimeout(50);
  return {
    url: `mqtt://127.0.0.1:${port}`,
    stop: async () => {
      child.kill();
      await gone;
      rmSync(folder, { recursive: true, force: true });
    },
  };
}

function answers(port: number): Promise<boolean> {
  return new Promise((resolve) => {
    const socket = connect(port, '127.0.0.1');
    socket.once('connect', () => {
      socket.destroy();
      resolve(true);
    });
    socket.once('error', () => resolve(false));
  });
}
