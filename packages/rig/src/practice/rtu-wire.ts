import { type ChildProcess, spawn } from 'node:child_process';
import { once } from 'node:events';
import { existsSync } from 'node:fs';
import { mkdtemp, rm } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { setTimeout } from 'node:timers/promises';
import type { IServiceVector, ServerSerial } from 'modbus-serial';
import type { WordOrder } from '../frame/register.ts';
import { laidWire } from './laid-wire.ts';
import { registerBank } from './modbus-map.ts';
import { registerDesk } from './modbus-wire.ts';
import { checkWireOptions, type PracticeWire, type WireOptions, wireFault } from './wire.ts';

export interface RtuWireOptions extends WireOptions {
  readonly over: 'rtu';
  /** Where the serial port is to appear; in a folder of its own among the temporary files unless said. */
  readonly path?: string;
  /** Unit identifier answered to, 1 to 247; 1. */
  readonly unit?: number;
  readonly wordOrder?: WordOrder;
}

/**
 * A practice rig that answers Modbus RTU by the map of `practiceRegisters`, at the far end of a pair of pseudo-terminals made by the
 * program socat. A pseudo-terminal has no baud rate, so any will do. The state stays readable until `stop`.
 */
export async function serveRtu(options: RtuWireOptions): Promise<PracticeWire> {
  checkWireOptions(options);
  const folder = await mkdtemp(join(tmpdir(), 'practice-rig-'));
  const near = options.path ?? join(folder, 'serial');
  const far = join(folder, 'far');
  const desk = registerDesk(registerBank(options.wordOrder ?? 'high first'), options.speed === 'as fast as it is read');
  const pair = await layPair(near, far);
  const server = await answer(desk.vector, { far, unit: options.unit ?? 1 });
  return laidWire(options, {
    address: near,
    port: null,
    over: `Modbus RTU on the pseudo-terminal ${near}`,
    outlet: desk.outlet,
    takeDown: async () => {
      await new Promise<void>((resolve) => server.close(() => resolve()));
      pair.kill();
      if (pair.exitCode === null && pair.signalCode === null) await once(pair, 'exit');
      await rm(folder, { recursive: true, force: true });
    },
  });
}

/** Two ends of a serial line. */
async function layPair(near: string, far: string): Promise<ChildProcess> {
  const child = spawn('socat', [`PTY,link=${near},rawer`, `PTY,link=${far},rawer`], { stdio: 'ignore' });
  const failed = Promise.withResolvers<never>();
  child.on('error', failed.reject);
  child.on('exit', () => failed.reject(new Error('socat ended')));
  // Whoever takes the wire down ends it as well.
  failed.promise.catch(() => {});
  const laid = async () => {
    while (!existsSync(near) || !existsSync(far)) await setTimeout(5);
  };
  try {
    await Promise.race([laid(), failed.promise]);
    return child;
  } catch (error) {
    const isMissing = error instanceof Error && 'code' in error && error.code === 'ENOENT';
    throw wireFault(near, isMissing ? 'the program socat is not installed' : error);
  }
}

interface FarEnd {
  readonly far: string;
  readonly unit: number;
}

async function answer(vector: IServiceVector, { far, unit }: FarEnd): Promise<ServerSerial> {
  const { ServerSerial } = await import('modbus-serial');
  // Its types ask for the options of the port's stream as well, which it fills in itself.
  const server = new ServerSerial(vector, { port: far, baudRate: 115200, unitID: unit } as never);
  await new Promise<void>((resolve, reject) => {
    server.on('initialized', () => resolve());
    server.on('error', (error) => reject(wireFault(far, error)));
  });
  return server;
}
