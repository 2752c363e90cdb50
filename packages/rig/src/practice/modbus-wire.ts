import type { WatchSample } from '@provinghouse/core';
import type { IServiceVector, ServerTCP } from 'modbus-serial';
import type { WordOrder } from '../frame/register.ts';
import { laidWire } from './laid-wire.ts';
import { practiceRegisters, type RegisterBank, registerBank } from './modbus-map.ts';
import type { Outlet } from './pace.ts';
import { checkWireOptions, type PracticeWire, type WireOptions, wireFault } from './wire.ts';

export interface ModbusWireOptions extends WireOptions {
  readonly over: 'modbus';
  readonly host?: string;
  /** A free one unless said. */
  readonly port?: number;
  /** Unit identifier answered to, 1 to 247; every one unless said. */
  readonly unit?: number;
  readonly wordOrder?: WordOrder;
}

/** Samples a reader may be behind when it sets the pace itself: half the ring. */
const mostUnread = practiceRegisters.ringLength / 2;

/**
 * A practice rig that answers Modbus TCP by the map of `practiceRegisters`. A reader that polls the ring at least every
 * `ringLength` samples misses none; one that polls the latest sample sees what it happens to see, as with a real rig.
 * The state stays readable until `stop`.
 */
export async function serveModbus(options: ModbusWireOptions): Promise<PracticeWire> {
  checkWireOptions(options);
  const host = options.host ?? '127.0.0.1';
  const bank = registerBank(options.wordOrder ?? 'high first');
  const desk = registerDesk(bank, options.speed === 'as fast as it is read');
  const server = await listen(desk.vector, { ...options, host });
  return laidWire(options, {
    address: `modbus://${host}:${server.port}`,
    port: server.port,
    over: `Modbus TCP on ${host}:${server.port}`,
    outlet: desk.outlet,
    takeDown: () => new Promise<void>((resolve) => server.modbus.close(() => resolve())),
  });
}

export interface RegisterDesk {
  readonly vector: IServiceVector;
  readonly outlet: Outlet;
}

/** Between the registers and those who ask for them. */
export function registerDesk(bank: RegisterBank, isReaderPaced: boolean): RegisterDesk {
  const waiting: (() => void)[] = [];
  let isAsked = false;
  let made = 0;
  let seen = 0;
  const wake = () => {
    for (const resolve of waiting.splice(0)) resolve();
  };
  const read = (address: number, length: number): number[] => {
    const values = bank.read(address, length);
    if (values === null) throw Object.assign(new Error('no such register'), { modbusErrorCode: 2 });
    isAsked = true;
    if (address <= practiceRegisters.samples && address + length > practiceRegisters.samples) seen = made;
    wake();
    return values;
  };
  const change = () => new Promise<void>((resolve) => waiting.push(resolve));
  const single = (address: number) => read(address, 1)[0] ?? 0;
  return {
    vector: {
      getMultipleHoldingRegisters: (address: number, length: number, _unit: number) => read(address, length),
      getMultipleInputRegisters: (address: number, length: number, _unit: number) => read(address, length),
      getHoldingRegister: (address: number, _unit: number) => single(address),
      getInputRegister: (address: number, _unit: number) => single(address),
    },
    outlet: {
      send: async (samples: readonly WatchSample[], hasParted: boolean) => {
        bank.setState(hasParted ? 2 : 1);
        for (const sample of samples) {
          while (isReaderPaced && made - seen >= mostUnread) await change();
          bank.put(sample);
          made++;
        }
      },
      readers: () => (isAsked ? 1 : 0),
      whenRead: () => (isAsked ? Promise.resolve() : change()),
      finish: async () => bank.setState(3),
    },
  };
}

interface Listening {
  readonly modbus: ServerTCP;
  readonly port: number;
}

async function listen(
  vector: IServiceVector,
  options: ModbusWireOptions & { readonly host: string },
): Promise<Listening> {
  const { ServerTCP } = await import('modbus-serial');
  const { host, port = 0, unit = 255 } = options;
  // The server takes the number 0 for "not given" and would listen on 502; the text is taken as written.
  const anyPort = '0' as unknown as number;
  const modbus = new ServerTCP(vector, { host, port: port === 0 ? anyPort : port, unitID: unit, debug: false });
  modbus.on('socketError', () => {});
  try {
    await new Promise<void>((resolve, reject) => {
      modbus.on('initialized', () => resolve());
      modbus.on('serverError', reject);
      modbus.on('error', reject);
    });
  } catch (error) {
    throw wireFault(`modbus://${host}:${port}`, error);
  }
  return { modbus, port: boundPort(modbus) ?? port };
}

/** The server keeps its listening socket to itself, though it is needed to learn which free port was taken. */
function boundPort(modbus: ServerTCP): number | null {
  const inner: unknown = Reflect.get(modbus, '_server');
  if (typeof inner !== 'object' || inner === null || !('address' in inner) || typeof inner.address !== 'function')
    return null;
  const address: unknown = inner.address();
  return typeof address === 'object' && address !== null && 'port' in address ? Number(address.port) : null;
}
