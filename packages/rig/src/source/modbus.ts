import { InputError } from '@provinghouse/core';
import modbus from 'modbus-serial';
import type { Channel, ChannelConfiguration } from '../channel/channel.ts';
import { type RegisterPlace, registerRequests } from '../frame/register-map.ts';
import { fitsRing, type RegisterRing } from '../frame/register-ring.ts';
import type { Wire } from './keep-open.ts';
import { clockOf, keptSource } from './kept-source.ts';
import {
  isSilence,
  latestRound,
  poll,
  type RingPlace,
  ringRound,
  SILENT_ROUNDS,
  saysPractice,
  swallowAnswers,
} from './modbus-poll.ts';
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

/** How long an answer is waited for, and how long what comes after its time is thrown away. */
const ANSWER_S = 1;

function describeWire({ wire, device }: ModbusOptions): string {
  if ('host' in wire) return `Modbus TCP ${wire.host}:${wire.port} device ${device}`;
  const frame = `${wire.dataBits}${wire.parity.charAt(0).toUpperCase()}${wire.stopBits}`;
  return `Modbus RTU ${wire.path} ${wire.baud} ${frame} device ${device}`;
}

async function connected(client: Client, { wire, device }: ModbusOptions): Promise<void> {
  client.on('error', () => {});
  client.setID(device);
  client.setTimeout(ANSWER_S * 1000);
  if ('host' in wire) return client.connectTCP(wire.host, { port: wire.port });
  const { path, baud: baudRate, dataBits, parity, stopBits } = wire;
  return client.connectRTUBuffered(path, { baudRate, dataBits, parity, stopBits });
}

/** Of a port that never opened modbus-serial may not tell that it is closed. */
async function closed(client: Client): Promise<void> {
  if (client.isOpen) return new Promise((resolve) => client.close(() => resolve()));
  client.close(() => {});
}

/** What is known of a device from one connection to the next. */
interface Line {
  readonly ring: RingPlace;
  /**
   * An answer did not come in its time. By Modbus RTU an answer does not say which request it is for, so it would pass for that to the next one, and
   * each later answer for that to the request after it: values of one channel under the name of another, for good.
   */
  owesAnswer: boolean;
  /** How often the device gave no answer when it was asked whether it is a practice rig. */
  silentMarks: number;
}

/** Once a device answers again, what it owes comes along; it goes with the connection, whose buffer is not used again. */
async function clearLine(options: ModbusOptions): Promise<void> {
  const client = new ModbusRTU();
  try {
    await connected(client, options);
    const address = options.ring?.counter.address ?? options.registers[0]?.address ?? 0;
    await swallowAnswers(client, { kind: options.registers[0]?.kind ?? 'holding', address, answer_s: ANSWER_S });
  } finally {
    await closed(client);
  }
}

/** A practice rig that is taken for a real one would be the worse mistake, so a silent device is asked again; some are silent for good where they have no register. */
async function markOf(client: Client, line: Line): Promise<boolean> {
  if (line.silentMarks >= SILENT_ROUNDS) return false;
  try {
    const isPractice = await saysPractice(client);
    line.silentMarks = 0;
    return isPractice;
  } catch (error) {
    line.silentMarks++;
    throw error;
  }
}

async function openWire(
  options: ModbusOptions,
  channels: readonly Channel[],
  sink: SourceSink,
  line: Line,
): Promise<Wire> {
  const isSerial = !('host' in options.wire);
  if (isSerial && line.owesAnswer) await clearLine(options);
  line.owesAnswer = false;
  const client = new ModbusRTU();
  try {
    await connected(client, options);
    if (await markOf(client, line)) sink.practice?.();
  } catch (error) {
    line.owesAnswer = isSilence(error);
    await closed(client);
    throw error;
  }
  const { promise: gone, resolve: lose } = Promise.withResolvers<string>();
  client.on('close', () => lose('closed by the other side'));
  const reader = registerReader(channels, options.clock ?? null, sink);
  const rounds = { client, places: options.registers, reader, sink, clock: options.clock };
  let isOver = false;
  const polled = poll({
    client,
    // Over TCP an answer carries the number of its request, and a late one is dropped.
    isSilenceTheEnd: isSerial,
    round: options.ring ? ringRound(rounds, options.ring, line.ring) : latestRound(rounds),
    every_s: options.every_s,
    isOver: () => isOver,
    trouble: (words) => sink.trouble(words),
  });
  const ended = Promise.race([polled, gone]).then(async (why) => {
    isOver = true;
    line.owesAnswer = true;
    await closed(client);
    await polled;
    return why;
  });
  return {
    closed: ended,
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
    const line: Line = { ring: { seen: null }, owesAnswer: false, silentMarks: 0 };
    return () => openWire(options, channels, sink, line);
  });
}
