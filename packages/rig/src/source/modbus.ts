import modbus from 'modbus-serial';
import type { Channel, ChannelConfiguration } from '../channel/channel.ts';
import { benchValue, openChannel, unitOf } from '../channel/channel.ts';
import { type ChannelGuard, channelGuard } from '../channel/channel-guard.ts';
import { benchNow_s } from '../clock/bench-clock.ts';
import { registerValue } from '../frame/register.ts';
import { type RegisterPlace, type RegisterRequest, registerRequests } from '../frame/register-map.ts';
import { keepOpen, type Wire } from './keep-open.ts';
import type { SerialSettings } from './serial-lines.ts';
import type { RawReading, Source, SourceSink } from './source.ts';

const ModbusRTU = modbus.default;
type ModbusRTU = InstanceType<typeof ModbusRTU>;

export interface ModbusOptions {
  readonly wire: { readonly host: string; readonly port: number } | SerialSettings;
  readonly device: number;
  readonly registers: readonly RegisterPlace[];
  readonly channels: readonly ChannelConfiguration[];
  /** Seconds from one round of requests to the next. */
  readonly every_s: number;
}

const ANSWER_S = 1;
const SILENT_ROUNDS = 3;

function describeWire({ wire, device }: ModbusOptions): string {
  if ('host' in wire) return `Modbus TCP ${wire.host}:${wire.port} device ${device}`;
  return `Modbus RTU ${wire.path} ${wire.baud} ${wire.dataBits}${wire.parity.charAt(0).toUpperCase()}${wire.stopBits} device ${device}`;
}

function connected(client: ModbusRTU, wire: ModbusOptions['wire']): Promise<void> {
  if ('host' in wire) return client.connectTCP(wire.host, { port: wire.port, timeout: 5000 });
  const { path, baud: baudRate, dataBits, parity, stopBits } = wire;
  return client.connectRTUBuffered(path, { baudRate, dataBits, parity, stopBits });
}

interface Reader {
  /** One answer to a request, read into the batch. */
  take(request: RegisterRequest, bytes: Uint8Array, arrival_s: number): RawReading[];
}

function registerReader(channels: readonly Channel[], sink: SourceSink): Reader {
  const guards = new Map<string, { channel: Channel; guard: ChannelGuard }>();
  for (const channel of channels)
    guards.set(channel.name, { channel, guard: channelGuard(channel, (words) => sink.trouble(words)) });
  return {
    take(request, bytes, arrival_s) {
      sink.bytes?.(bytes, arrival_s);
      return request.places.flatMap((place) => {
        const known = guards.get(place.channel);
        if (!known) return [];
        const wired = registerValue(bytes, 2 * (place.address - request.from), place.type, place.wordOrder);
        if (wired === null) {
          sink.rejected(bytes.slice(), `${place.channel} is no number`);
          return [];
        }
        const { channel, guard } = known;
        const value = benchValue(channel, unitOf(channel.unit, channel.name), wired * place.scale + place.shift);
        const quality = guard.quality(value, arrival_s);
        return [{ channel: channel.name, value, time_s: arrival_s, arrival_s, quality }];
      });
    },
  };
}

function wordsOf(error: unknown): string {
  if (error instanceof Error) return error.message;
  // modbus-serial rejects with plain objects for a port that is not open.
  return typeof error === 'object' && error !== null && 'message' in error ? String(error.message) : String(error);
}

/** An answer that refuses, as against no answer at all. */
function isRefusal(error: unknown): boolean {
  return typeof error === 'object' && error !== null && 'modbusCode' in error && error.modbusCode !== undefined;
}

interface Poll {
  readonly client: ModbusRTU;
  readonly requests: readonly RegisterRequest[];
  readonly every_s: number;
  readonly reader: Reader;
  readonly sink: SourceSink;
  isOver(): boolean;
}

async function round({ client, requests, reader, sink }: Poll): Promise<void> {
  for (const { kind, from, count, ...rest } of requests) {
    const answer =
      kind === 'holding'
        ? await client.readHoldingRegisters(from, count)
        : await client.readInputRegisters(from, count);
    const batch = reader.take({ kind, from, count, ...rest }, answer.buffer, benchNow_s());
    if (batch.length > 0) sink.readings(batch);
  }
}

/** Asks round after round at fixed times until the device is silent or the source stops; the reason. */
async function poll(options: Poll): Promise<string> {
  let silent = 0;
  let said = '';
  let next_s = benchNow_s();
  while (!options.isOver()) {
    try {
      await round(options);
      silent = 0;
    } catch (error) {
      const words = wordsOf(error);
      if (!isRefusal(error)) silent++;
      if (silent >= SILENT_ROUNDS || !options.client.isOpen) return words;
      if (isRefusal(error) && words !== said) options.sink.trouble(`The device refuses: ${words}`);
      said = words;
    }
    next_s = Math.max(next_s + options.every_s, benchNow_s());
    await new Promise((resolve) => setTimeout(resolve, (next_s - benchNow_s()) * 1000));
  }
  return 'stopped';
}

async function openWire(options: ModbusOptions, channels: readonly Channel[], sink: SourceSink): Promise<Wire> {
  const client = new ModbusRTU();
  client.on('error', () => {});
  let isOver = false;
  const shut = () => new Promise<void>((resolve) => client.close(() => resolve()));
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
  const requests = registerRequests(options.registers);
  const reader = registerReader(channels, sink);
  const polled = poll({ client, requests, every_s: options.every_s, reader, sink, isOver: () => isOver });
  const closed = Promise.race([polled, gone]).then(async (why) => {
    isOver = true;
    if (client.isOpen) await shut();
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

/**
 * Registers of a Modbus device, by TCP or a serial line, asked for at a steady rate. Only reads (functions 3 and 4). The time of a reading
 * is when its answer came.
 * @throws InputError source/unit-*, source/range
 */
export function modbusRegisters(options: ModbusOptions): Source {
  const channels = options.registers.map(({ channel: name }) =>
    openChannel(options.channels.find((channel) => channel.name === name) ?? { name }),
  );
  const describe = describeWire(options);
  let keeper: { stop(): Promise<void> } | null = null;
  return {
    describe,
    channels,
    clock: 'arrival',
    async start(sink) {
      const open = () => openWire(options, channels, sink);
      keeper = keepOpen({ describe, open, trouble: (words) => sink.trouble(words) });
    },
    async stop() {
      await keeper?.stop();
    },
  };
}
