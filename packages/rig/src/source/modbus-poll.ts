import { setTimeout } from 'node:timers/promises';
import type modbus from 'modbus-serial';
import { benchNow_s } from '../clock/bench-clock.ts';
import { registerValue, registerWidth } from '../frame/register.ts';
import { type RegisterPlace, registerRequests } from '../frame/register-map.ts';
import { type RegisterNumber, type RegisterRing, ringRequests } from '../frame/register-ring.ts';
import { practiceWord } from '../practice/mark.ts';
import type { RegisterReader } from './modbus-reader.ts';
import type { SourceSink } from './source.ts';

type Client = InstanceType<typeof modbus.default>;

/** Reads whatever is new, once. */
export type Round = () => Promise<void>;

export interface RoundOptions {
  readonly client: Client;
  readonly places: readonly RegisterPlace[];
  readonly reader: RegisterReader;
  readonly sink: SourceSink;
  readonly clock?: RegisterNumber | undefined;
}

async function registersOf(client: Client, kind: 'holding' | 'input', from: number, count: number) {
  const { buffer } =
    kind === 'holding' ? await client.readHoldingRegisters(from, count) : await client.readInputRegisters(from, count);
  return { from, bytes: buffer, arrival_s: benchNow_s() };
}

/** The registers as they are at this moment. */
export function latestRound({ client, places, reader, sink, clock }: RoundOptions): Round {
  const requests = registerRequests(places, clock);
  return async () => {
    for (const { kind, from, count, places: inside } of requests) {
      const stretch = await registersOf(client, kind, from, count);
      sink.bytes?.(stretch.bytes, stretch.arrival_s, { place: `${kind} ${from}`, isText: false });
      const batch = reader.take(inside, stretch);
      if (batch.length > 0) sink.readings(batch);
    }
  };
}

/** Samples of the device's count that were read; kept over a lost connection, as the buffer still holds what came meanwhile. */
export interface RingPlace {
  seen: number | null;
}

/** Every sample the device has put into its buffer since the round before; says so when it ran over. */
export function ringRound(options: RoundOptions, ring: RegisterRing, place: RingPlace): Round {
  const { client, places, reader, sink } = options;
  const kind = places[0]?.kind ?? 'holding';
  const { counter } = ring;

  async function countMade(): Promise<number> {
    const { bytes } = await registersOf(client, kind, counter.address, registerWidth(counter.type));
    return registerValue(bytes, 0, counter.type, counter.wordOrder) ?? 0;
  }
  function startOf(made: number): number {
    const { seen } = place;
    // A device that counts anew was switched off and on; what its buffer holds from before is not ours.
    if (seen === null || made < seen) return Math.max(0, made - ring.length + 1, seen === null ? made - 1 : 0);
    // The slot that is being written now may be half old, half new, so one is left alone.
    const oldest = made - ring.length + 1;
    if (oldest > seen)
      sink.trouble(`${oldest - seen} samples were written over in the device before they were asked for.`);
    return Math.max(seen, oldest);
  }
  return async () => {
    const made = await countMade();
    let at = startOf(made);
    place.seen = at;
    for (const request of ringRequests(ring, at, made)) {
      const { bytes, arrival_s } = await registersOf(client, kind, request.from, request.samples * ring.width);
      sink.bytes?.(bytes, arrival_s, { place: `${kind} ${request.from}`, isText: false });
      const slots = Array.from({ length: request.samples }, (_, i) =>
        bytes.subarray(2 * i * ring.width, 2 * (i + 1) * ring.width),
      );
      sink.readings(slots.flatMap((slot) => reader.take(places, { from: 0, bytes: slot, arrival_s })));
      at += request.samples;
      place.seen = at;
    }
  };
}

/** Whether a device says of itself that it is a practice rig; a device that has no such registers refuses, and is none. Rejects when it is silent. */
export async function saysPractice(client: Client): Promise<boolean> {
  try {
    const { bytes } = await registersOf(client, 'holding', 0, practiceWord.length / 2);
    return new TextDecoder().decode(bytes) === practiceWord;
  } catch (error) {
    if (isSilence(error)) throw error;
    return false;
  }
}

export interface Swallowing {
  readonly kind: 'holding' | 'input';
  /** A register that the device has: some give no answer for one that they have not. */
  readonly address: number;
  readonly answer_s: number;
}

/** Asks for a register, throws the answer away and all that comes in the time of one more. Rejects when the device is silent. */
export async function swallowAnswers(client: Client, { kind, address, answer_s }: Swallowing): Promise<void> {
  await registersOf(client, kind, address, 1).catch((error: unknown) => {
    if (isSilence(error)) throw error;
  });
  await setTimeout(1000 * answer_s);
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

/** No answer within the time for one. */
export function isSilence(error: unknown): boolean {
  return typeof error === 'object' && error !== null && 'errno' in error && error.errno === 'ETIMEDOUT';
}

/** Rounds without an answer after which a device is given up for this connection. */
export const SILENT_ROUNDS = 3;

export interface PollOptions {
  readonly client: Client;
  /** One answer that does not come ends it; else several in a row. */
  readonly isSilenceTheEnd: boolean;
  readonly round: Round;
  readonly every_s: number;
  readonly isOver: () => boolean;
  readonly trouble: (words: string) => void;
}

/** Round after round at fixed times until the device is silent or the source stops; the reason. */
export async function poll({ client, isSilenceTheEnd, round, every_s, isOver, trouble }: PollOptions): Promise<string> {
  let silent = 0;
  let said = '';
  let next_s = benchNow_s();
  while (!isOver()) {
    try {
      await round();
      silent = 0;
      said = '';
    } catch (error) {
      const words = wordsOf(error);
      if (isRefusal(error) && words !== said) trouble(`The device refuses: ${words}`);
      if (!isRefusal(error)) silent++;
      if (silent >= SILENT_ROUNDS || (isSilenceTheEnd && isSilence(error)) || !client.isOpen) return words;
      said = words;
    }
    next_s = Math.max(next_s + every_s, benchNow_s());
    await setTimeout(Math.max(0, next_s - benchNow_s()) * 1000);
  }
  return 'stopped';
}
