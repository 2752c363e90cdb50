import { once } from 'node:events';
import { createServer, type Server, type Socket } from 'node:net';
import { laidWire } from './laid-wire.ts';
import { type LineText, lineText } from './line-text.ts';
import type { LineOptions } from './line-writer.ts';
import type { Outlet } from './pace.ts';
import { checkWireOptions, type PracticeWire, type WireOptions, wireFault } from './wire.ts';

export interface TcpWireOptions extends WireOptions, LineOptions {
  readonly over: 'tcp';
  /** 127.0.0.1 unless said. */
  readonly host?: string;
  /** A free one unless said. */
  readonly port?: number;
}

/**
 * A practice rig that sends ASCII lines to whoever connects. Each reader gets every line from the moment it connected;
 * the slowest holds up the others, since no line is ever dropped. Connections are closed after the closing mark.
 */
export async function serveTcp(options: TcpWireOptions): Promise<PracticeWire> {
  checkWireOptions(options);
  const host = options.host ?? '127.0.0.1';
  const text = lineText(options);
  const readers = new Set<Socket>();
  const waiting: (() => void)[] = [];
  const server = createServer((socket) => {
    socket.setNoDelay(true);
    socket.on('error', () => socket.destroy());
    socket.on('close', () => readers.delete(socket));
    // What a reader says to a rig that only talks is read and let go, or its leaving would not be seen.
    socket.resume();
    socket.write(text.opening);
    readers.add(socket);
    for (const wake of waiting.splice(0)) wake();
  });
  const port = await listen(server, { host, port: options.port ?? 0 });
  return laidWire(options, {
    address: `tcp://${host}:${port}`,
    port,
    over: `lines over TCP on ${host}:${port}`,
    outlet: outletOf(readers, waiting, text),
    takeDown: async () => {
      for (const socket of readers) socket.destroy();
      if (server.listening) await new Promise<void>((resolve) => server.close(() => resolve()));
    },
  });
}

async function listen(server: Server, where: { readonly host: string; readonly port: number }): Promise<number> {
  try {
    server.listen(where.port, where.host);
    await once(server, 'listening');
  } catch (error) {
    throw wireFault(`tcp://${where.host}:${where.port}`, error);
  }
  const address = server.address();
  return typeof address === 'object' && address ? address.port : where.port;
}

function outletOf(readers: Set<Socket>, waiting: (() => void)[], text: LineText): Outlet {
  const toAll = async (words: string) => {
    await Promise.all([...readers].map((socket) => written(socket, words)));
  };
  return {
    send: (samples) => toAll(text.lines(samples)),
    readers: () => readers.size,
    whenRead: () => (readers.size > 0 ? Promise.resolve() : new Promise((resolve) => waiting.push(resolve))),
    finish: async (truth) => {
      await toAll(text.closing(truth));
      for (const socket of readers) socket.end();
    },
  };
}

/** Resolves when the socket takes more, or is gone. */
function written(socket: Socket, words: string): Promise<void> {
  if (socket.destroyed || socket.write(words)) return Promise.resolve();
  return new Promise((resolve) => {
    const done = () => {
      socket.off('drain', done);
      socket.off('close', done);
      resolve();
    };
    socket.on('drain', done);
    socket.on('close', done);
  });
}
