import { connect, type Socket } from 'node:net';
import { benchNow_s } from '../clock/bench-clock.ts';
import type { Wire } from './keep-open.ts';
import { keptLines } from './kept-source.ts';
import type { LineFormat, LineReader } from './line-reader.ts';
import type { Source } from './source.ts';

export interface TcpLinesOptions extends LineFormat {
  readonly host: string;
  readonly port: number;
  /** True where the source's clock may run faster or slower than ours, as in practice in a hurry. */
  readonly isClockFree?: boolean | undefined;
  /** Seconds without a byte after which a connection that spoke before is taken for dead and opened anew; 5 unless said. */
  readonly silence_s?: number | undefined;
}

const CONNECT_S = 5;

function opened(socket: Socket): Promise<void> {
  const { promise, resolve, reject } = Promise.withResolvers<void>();
  socket.setTimeout(CONNECT_S * 1000, () => reject(new Error(`no answer within ${CONNECT_S} s`)));
  socket.once('connect', resolve);
  socket.once('error', reject);
  return promise;
}

async function openWire(options: TcpLinesOptions, reader: LineReader): Promise<Wire> {
  const socket = connect({ host: options.host, port: options.port, noDelay: true, keepAlive: true });
  try {
    await opened(socket);
  } catch (error) {
    socket.on('error', () => {});
    socket.destroy();
    throw error;
  }
  const { promise: closed, resolve } = Promise.withResolvers<string>();
  const silence_s = options.silence_s ?? 5;
  let why = 'closed by the other side';
  socket.setTimeout(0);
  socket.removeAllListeners('timeout');
  socket.on('timeout', () => {
    why = `silent for ${silence_s} s`;
    socket.destroy();
  });
  socket.on('data', (chunk) => {
    if (socket.timeout === 0 || socket.timeout === undefined) socket.setTimeout(silence_s * 1000);
    reader.push(chunk, benchNow_s());
  });
  socket.on('error', (error) => {
    why = error.message;
  });
  socket.on('close', () => {
    reader.cut();
    resolve(why);
  });
  return { closed, close: () => void socket.destroy() };
}

/**
 * ASCII lines over TCP, as a serial server or a networked panel sends them. Connects anew when the connection is lost; the time away shows
 * as a gap in the record.
 * @throws InputError source/pattern, source/unit-*, source/range
 */
export function tcpLines(options: TcpLinesOptions): Source {
  return keptLines(`tcp://${options.host}:${options.port}`, options, (reader) => openWire(options, reader));
}
