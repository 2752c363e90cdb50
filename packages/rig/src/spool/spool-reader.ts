import { open } from 'node:fs/promises';
import { InputError } from '@provinghouse/core';
import type { SpoolEntry } from './spool-entry.ts';
import { FRAME_MAGIC, frameAt, type SpoolFrame } from './spool-frame.ts';
import { type ChannelNames, channelNames, contentOf } from './spool-payload.ts';

/** What is found in a spool, in order. Damage has whole frames after it; a torn tail has none. */
export type SpoolFinding =
  | {
      readonly kind: 'entry';
      readonly entry: SpoolEntry;
      readonly sequence: number;
      readonly end: number;
      readonly salt: number;
    }
  | { readonly kind: 'damage'; readonly bytes: number; readonly lostFrames: number; readonly time_s: number }
  | { readonly kind: 'torn'; readonly tail: Uint8Array; readonly bytes: number };

const CHUNK = 1 << 20;
/** Bytes of a torn tail that are handed on. */
const TAIL_KEPT = 1 << 16;

interface State {
  names: ChannelNames;
  salt: number | null;
  sequence: number;
}

/** Next place at or after `from` where a frame could begin, or where too few bytes are left to tell. */
function nextMagic(bytes: Uint8Array, from: number): number {
  const first = FRAME_MAGIC & 0xff;
  for (let i = bytes.indexOf(first, from); i >= 0; i = bytes.indexOf(first, i + 1)) {
    if (i + 4 > bytes.length) return i;
    const view = new DataView(bytes.buffer, bytes.byteOffset + i, 4);
    if (view.getUint32(0, true) === FRAME_MAGIC) return i;
  }
  return bytes.length;
}

/** A frame belongs here when its salt is this spool's and its number comes after the last. */
function belongs(frame: SpoolFrame, state: State): boolean {
  return (state.salt === null || frame.salt === state.salt) && frame.sequence > state.sequence;
}

function findingOf(frame: SpoolFrame, end: number, state: State): SpoolFinding | null {
  const content = contentOf(frame.kind, frame.payload, state.names);
  if (content?.kind === 'header') state.names = channelNames(content.header);
  if (!content) return null;
  const entry = { ...content, time_s: frame.time_s };
  return { kind: 'entry', entry, sequence: frame.sequence, end, salt: frame.salt };
}

async function openToRead(path: string) {
  try {
    return await open(path, 'r');
  } catch (error) {
    const why = error instanceof Error ? error.message : String(error);
    throw new InputError('spool/unreadable', `There is no record to be read at ${path}: ${why}`, { path });
  }
}

function* damageBefore(bad: number, frame: SpoolFrame, state: State): Generator<SpoolFinding> {
  const lostFrames = frame.sequence - state.sequence - 1;
  if (bad > 0 || lostFrames > 0) yield { kind: 'damage', bytes: bad, lostFrames, time_s: frame.time_s };
}

/**
 * Reads a spool from the start, a megabyte at a time. Damaged stretches are passed over to the next whole frame; whatever the bytes are, it does
 * not throw.
 * @throws InputError spool/unreadable when the file cannot be opened
 */
export async function* readSpool(path: string): AsyncGenerator<SpoolFinding> {
  const file = await openToRead(path);
  const state: State = { names: [], salt: null, sequence: -1 };
  let buffer: Uint8Array = new Uint8Array(0);
  let base = 0;
  let at = 0;
  let badFrom: number | null = null;
  let isEnd = false;
  try {
    while (true) {
      const found = at < buffer.length ? frameAt(buffer, at) : 'short';
      if (found === 'short' && !isEnd) {
        const chunk = new Uint8Array(CHUNK);
        const { bytesRead } = await file.read(chunk, 0, CHUNK, base + buffer.length);
        isEnd = bytesRead === 0;
        buffer = Buffer.concat([buffer.subarray(at), chunk.subarray(0, bytesRead)]);
        base += at;
        at = 0;
        continue;
      }
      if (typeof found === 'object' && belongs(found.frame, state)) {
        yield* damageBefore(badFrom === null ? 0 : base + at - badFrom, found.frame, state);
        badFrom = null;
        state.salt = found.frame.salt;
        state.sequence = found.frame.sequence;
        const finding = findingOf(found.frame, base + found.end, state);
        if (finding) yield finding;
        at = found.end;
        continue;
      }
      if (at >= buffer.length) break;
      badFrom ??= base + at;
      at = nextMagic(buffer, at + 1);
    }
    if (badFrom !== null) {
      const bytes = base + buffer.length - badFrom;
      const tail = new Uint8Array(Math.min(bytes, TAIL_KEPT));
      await file.read(tail, 0, tail.length, badFrom);
      yield { kind: 'torn', tail, bytes };
    }
  } finally {
    await file.close();
  }
}
