import { type ChildProcess, spawn } from 'node:child_process';
import { once } from 'node:events';
import { existsSync } from 'node:fs';
import { mkdtemp, rm } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { dirname, join } from 'node:path';
import { setTimeout } from 'node:timers/promises';
import { laidWire } from './laid-wire.ts';
import { lineText } from './line-text.ts';
import type { LineOptions } from './line-writer.ts';
import { checkWireOptions, type PracticeWire, type WireOptions, wireFault } from './wire.ts';

export interface PtyWireOptions extends WireOptions, LineOptions {
  readonly over: 'pty';
  /** Where the serial port is to appear; in a folder of its own among the temporary files unless said. */
  readonly path?: string;
}

/**
 * A practice rig at the far end of a serial line: a pseudo-terminal made by the program socat. One reader. A
 * pseudo-terminal has no baud rate, so any will do. After the closing mark the line stays silent until `stop`, as
 * hanging up would throw away what the reader has not yet taken.
 */
export async function servePty(options: PtyWireOptions): Promise<PracticeWire> {
  checkWireOptions(options);
  const text = lineText(options);
  const folder = options.path === undefined ? await mkdtemp(join(tmpdir(), 'practice-rig-')) : null;
  const path = options.path ?? join(folder ?? tmpdir(), 'serial');
  const line: Line = { path, child: null, isRead: false, isDown: false, waiting: [], opening: text.opening };
  await lay(line);
  return laidWire(options, {
    address: path,
    port: null,
    over: `lines on the pseudo-terminal ${path}`,
    outlet: {
      send: (samples) => put(line, text.lines(samples)),
      readers: () => (line.isRead ? 1 : 0),
      whenRead: () => (line.isRead ? Promise.resolve() : new Promise((resolve) => line.waiting.push(resolve))),
      finish: (truth) => put(line, text.closing(truth)),
    },
    takeDown: async () => {
      await takeDown(line);
      if (folder && dirname(path) === folder) await rm(folder, { recursive: true, force: true });
    },
  });
}

interface Line {
  readonly path: string;
  readonly opening: string;
  readonly waiting: (() => void)[];
  child: ChildProcess | null;
  isRead: boolean;
  isDown: boolean;
}

/** Starts socat and resolves once the port is there. When its reader leaves, socat ends and a new one takes its place. */
async function lay(line: Line): Promise<void> {
  const child = spawn('socat', ['-d', '-d', 'STDIO', `PTY,link=${line.path},rawer,wait-slave,pty-interval=0.02`], {
    stdio: ['pipe', 'ignore', 'pipe'],
  });
  line.child = child;
  child.stdin.on('error', () => {});
  const ready = Promise.withResolvers<void>();
  let said = '';
  let wasRead = false;
  child.stderr.setEncoding('utf8').on('data', (words: string) => {
    said = (said + words).slice(-2000);
    if (said.includes('PTY is ')) ready.resolve();
    // It would go on until the terminal's own buffer is full; what it took by then would be lost.
    if (said.includes('is at EOF')) {
      line.isRead = false;
      child.kill();
    } else if (!line.isRead && said.includes('starting data transfer loop')) {
      wasRead = true;
      line.isRead = true;
      child.stdin.write(line.opening);
      for (const wake of line.waiting.splice(0)) wake();
    }
  });
  child.on('error', ready.reject);
  child.on('exit', () => {
    ready.reject(new Error(said.trim().split('\n').at(-1) ?? 'socat ended'));
    line.isRead = false;
    if (!line.isDown && wasRead) lay(line).catch(() => {});
  });
  try {
    await ready.promise;
    // socat tells of the terminal a moment before it lays the link to it.
    for (let i = 0; i < 200 && !existsSync(line.path); i++) await setTimeout(5);
  } catch (error) {
    const isMissing = error instanceof Error && 'code' in error && error.code === 'ENOENT';
    throw wireFault(line.path, isMissing ? 'the program socat is not installed' : error);
  }
}

function put(line: Line, words: string): Promise<void> {
  const { child } = line;
  const pipe = child?.stdin;
  if (!child || !pipe?.writable || pipe.write(words)) return Promise.resolve();
  return new Promise((resolve) => {
    const done = () => {
      pipe.off('drain', done);
      child.off('exit', done);
      resolve();
    };
    pipe.on('drain', done);
    child.on('exit', done);
  });
}

async function takeDown(line: Line): Promise<void> {
  line.isDown = true;
  const { child } = line;
  if (!child || child.exitCode !== null || child.signalCode !== null) return;
  const gone = once(child, 'exit');
  child.kill();
  await gone;
}
