import { SerialPort } from 'serialport';
import { benchNow_s } from '../clock/bench-clock.ts';
import type { Wire } from './keep-open.ts';
import { keptLines } from './kept-source.ts';
import type { LineFormat, LineReader } from './line-reader.ts';
import type { Source } from './source.ts';

/** How a serial line is set. */
export interface SerialSettings {
  /** /dev/ttyUSB0, COM3 */
  readonly path: string;
  readonly baud: number;
  readonly dataBits: 7 | 8;
  readonly parity: 'none' | 'even' | 'odd';
  readonly stopBits: 1 | 2;
}

export interface SerialLinesOptions extends LineFormat, SerialSettings {
  readonly isClockFree?: boolean | undefined;
}

function openPort(settings: SerialSettings): Promise<SerialPort> {
  const { path, baud: baudRate, dataBits, parity, stopBits } = settings;
  const { promise, resolve, reject } = Promise.withResolvers<SerialPort>();
  const port = new SerialPort({ path, baudRate, dataBits, parity, stopBits, autoOpen: false });
  port.open((error) => (error ? reject(error) : resolve(port)));
  return promise;
}

async function openWire(settings: SerialSettings, reader: LineReader): Promise<Wire> {
  const port = await openPort(settings);
  const { promise: closed, resolve } = Promise.withResolvers<string>();
  port.on('data', (chunk: Uint8Array) => reader.push(chunk, benchNow_s()));
  port.on('error', (error: Error) => {
    reader.cut();
    resolve(error.message);
    if (port.isOpen) port.close(() => {});
  });
  port.on('close', (error: Error | null) => {
    reader.cut();
    resolve(error?.message ?? 'closed');
  });
  return {
    closed,
    close() {
      if (port.isOpen) port.close(() => {});
      else resolve('closed');
    },
  };
}

/**
 * ASCII lines over a serial line. Opens the port anew when it is pulled out. Only listens: nothing is ever sent to the panel.
 * @throws InputError source/pattern, source/unit-*, source/range
 */
export function serialLines(options: SerialLinesOptions): Source {
  const frame = `${options.dataBits}${options.parity.charAt(0).toUpperCase()}${options.stopBits}`;
  const describe = `serial ${options.path} ${options.baud} ${frame}`;
  return keptLines(describe, options, (reader) => openWire(options, reader));
}
