import { InputError } from '@provinghouse/core';
import modbus from 'modbus-serial';
import type { Channel, ChannelConfiguration } from '../channel/channel.ts';
import { type RegisterPlace, registerRequests } from '../frame/register-map.ts';
import { fitsRing, type RegisterRing } from '../frame/register-ring.ts';
import type { Wire } from './keep-open.ts';
import { clockOf, keptSource } from './kept-source.ts';
import { latestRound, poll, type RingPlace, ringRound, saysPractice } from './modbus-poll.ts';
import { type RegisterClock, registerChannels, registerReader } from './modbus-reader.ts';
import type { SerialSettings } from './serial-lines.ts';
import type { Source, SourceSink } from './source.ts';

const ModbusRTU = modbus.default;
type Client = InstanceType<typeof ModbusRTU>;

export interface ModbusOptions {
  readonly wire: { readonly host: string; readonly port: number } | SerialSettings;
  readonly device: number;
  readonly registers: readonly RegisterPlace[];
  readonly channels: readonly ChannelConfiguration[];
  /** Seconds from one round of requests to the next. */
  readonly every_s: number;
  /** Without it the time of a reading is when its answer came. */
  readonly clock?: RegisterClock | undefined;
  readonly ring?: RegisterRing | undefined;
  readonly isClockFree?: boolean | undefined;
}

const ANSWER_S = 1;

function describeWire({ wire, device }: ModbusOptions): string {
  if ('host' in wire) return `Modbus TCP ${wire.host}:${wire.port} device ${device}`;
  const frame = `${wire.dataBits}${wire.parity.charAt(0).toUpperCase()}${wire.stopBits}`;
  return `Modbus RTU ${wire.path} ${wire.baud} ${frame} device ${device}`;
}

function connected(client: Client, wire: ModbusOptions['wire']): Promise<void> {
  if ('host' in wire) return client.connectTCP(wire.host, { port: wire.port });
  const { path, baud: baudRate, dataBits, parity, stopBits } = wire;
  return client.connectRTUBuffered(path, { baudRate, dataBits, parity, stopBits });
}

async function openWire(
  options: ModbusOptions,
  channels: readonly Channel[],
  sink: SourceSink,
  place: RingPlace,
): Promise<Wire> {
  const client = new ModbusRTU();
  client.on('error', () => {});
  try {
    await connected(client, options.wire);
  } catch (error) {
    client.close(() => {});
    throw error;
  }
  client.setID(options.device);
  client.setTimeout(ANSWER_S * 1000);
  const { promise: gone, resolve: lose } = Promise.withResolvers<string>();
  client.on('close', () => lose('closed by the other side'));
  if (await saysPractice(client)) sink.practice?.();
  const reader = registerReader(channels, options.clock ?? null, sink);
  const rounds = { client, places: options.registers, reader, sink, clock: options.clock };
  let isOver = false;
  const polled = poll({
    round: options.ring ? ringRound(rounds, options.ring, place) : latestRound(rounds),
    every_s: options.every_s,
    isOpen: () => client.isOpen,
    isOver: () => isOver,
    trouble: (words) => sink.trouble(words),
  });
  const closed = Promise.race([polled, gone]).then(async (why) => {
    isOver = true;
    if (client.isOpen) await new Promise<void>((resolve) => client.close(() => resolve()));
    await polled;
    return why;
  });
  return {
    closed,
    close() {
      isOver = true;
    },
  };
}

function checkMap({ registers, clock, ring }: ModbusOptions): void {
  const fault = (words: string) => new InputError('source/registers', `Register map: ${words}`, {});
  const kinds = new Set(registers.map((place) => place.kind));
  if ((ring || clock) && kinds.size > 1)
    throw fault('with a clock or a ring all registers must be of one kind, holding or input.');
  if (clock && !ring && registerRequests(registers, clock).length === 0)
    throw fault('the clock lies further from the channels than one request reaches (125 registers).');
  if (!ring) return;
  const outside = [...registers, ...(clock ? [clock] : [])].find((place) => !fitsRing(place, ring));
  if (outside) throw fault(`address ${outside.address} lies outside a sample of ${ring.width} registers.`);
}

/**
 * Registers of a Modbus device, by TCP or a serial line, asked for at a steady rate. Only reads (functions 3 and 4). With a ring every sample of
 * the device is had, however seldom it is asked; without, what is there at the moment.
 * @throws InputError source/registers, source/unit-*, source/range
 */
export function modbusRegisters(options: ModbusOptions): Source {
  checkMap(options);
  const channels = registerChannels(options.registers, options.channels);
  const clock = clockOf(options.clock !== undefined, options.isClockFree);
  return keptSource({ describe: describeWire(options), channels, clock }, (sink) => {
    const place: RingPlace = { seen: null };
    return () => openWire(options, channels, sink, place);
  });
}
