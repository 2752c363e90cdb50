import type { ReadingQuality } from '@provinghouse/contract';
import type { RawReading } from '../source/source.ts';
import type { SpoolContent, SpoolHeader } from './spool-entry.ts';

const KINDS: readonly SpoolContent['kind'][] = [
  'header',
  'readings',
  'rejected',
  'mark',
  'trouble',
  'lost',
  'resumed',
  'closed',
  'practice',
];
const QUALITIES: readonly ReadingQuality[] = ['good', 'late', 'out of range', 'stuck', 'unreadable'];
const GROUP_HEAD = 12;
const READING = 18;

/** Names of the channels of each source, in the order of the header. */
export type ChannelNames = readonly (readonly string[])[];

export function channelNames(header: SpoolHeader): ChannelNames {
  return header.sources.map((source) => source.channels.map((channel) => channel.name));
}

/** Number of a kind in a frame, counted from 1. */
export function kindNumber(kind: SpoolContent['kind']): number {
  return KINDS.indexOf(kind) + 1;
}

/** Runs of readings that came at one moment. */
function runs(readings: readonly RawReading[]): readonly { readonly from: number; readonly end: number }[] {
  const found: { from: number; end: number }[] = [];
  readings.forEach((reading, i) => {
    const last = found.at(-1);
    const isSame = last && readings[last.from]?.arrival_s === reading.arrival_s && i - last.from < 0xffff;
    if (last && isSame) last.end = i + 1;
    else found.push({ from: i, end: i + 1 });
  });
  return found;
}

/** Source and, for each moment of arrival: the moment, a count, and channel, quality, time and value of each reading. */
function readingsPayload(source: number, readings: readonly RawReading[], names: ChannelNames): Uint8Array {
  const groups = runs(readings);
  const bytes = new Uint8Array(2 + groups.length * GROUP_HEAD + readings.length * READING);
  const view = new DataView(bytes.buffer);
  view.setUint16(0, source, true);
  let at = 2;
  for (const { from, end } of groups) {
    view.setFloat64(at, readings[from]?.arrival_s ?? 0, true);
    view.setUint32(at + 8, end - from, true);
    at += GROUP_HEAD;
    for (let i = from; i < end; i++) {
      const reading = readings[i];
      if (!reading) continue;
      view.setUint8(at, Math.max(names[source]?.indexOf(reading.channel) ?? 0, 0));
      view.setUint8(at + 1, QUALITIES.indexOf(reading.quality));
      view.setFloat64(at + 2, reading.time_s, true);
      view.setFloat64(at + 10, reading.value, true);
      at += READING;
    }
  }
  return bytes;
}

function readingsOf(payload: Uint8Array, names: ChannelNames): SpoolContent {
  const view = new DataView(payload.buffer, payload.byteOffset, payload.length);
  const source = view.getUint16(0, true);
  const readings: RawReading[] = [];
  let at = 2;
  while (at < payload.length) {
    const arrival_s = view.getFloat64(at, true);
    const count = view.getUint32(at + 8, true);
    at += GROUP_HEAD;
    for (let i = 0; i < count; i++, at += READING) {
      const channel = names[source]?.[view.getUint8(at)] ?? '';
      const quality = QUALITIES[view.getUint8(at + 1)] ?? 'unreadable';
      readings.push({
        channel,
        value: view.getFloat64(at + 10, true),
        time_s: view.getFloat64(at + 2, true),
        arrival_s,
        quality,
      });
    }
  }
  return { kind: 'readings', source, readings };
}

const encoder = new TextEncoder();
const decoder = new TextDecoder();

/** Source, length of the reason, the reason, the bytes as they came. */
function rejectedPayload(source: number, bytes: Uint8Array, why: string): Uint8Array {
  const reason = encoder.encode(why).subarray(0, 0xffff);
  const payload = new Uint8Array(4 + reason.length + bytes.length);
  const view = new DataView(payload.buffer);
  view.setUint16(0, source, true);
  view.setUint16(2, reason.length, true);
  payload.set(reason, 4);
  payload.set(bytes, 4 + reason.length);
  return payload;
}

function rejectedOf(payload: Uint8Array): SpoolContent {
  const view = new DataView(payload.buffer, payload.byteOffset, payload.length);
  const end = 4 + view.getUint16(2, true);
  const why = decoder.decode(payload.subarray(4, end));
  return { kind: 'rejected', source: view.getUint16(0, true), bytes: new Uint8Array(payload.subarray(end)), why };
}

/** The payload of an entry's frame. */
export function payloadOf(content: SpoolContent, names: ChannelNames): Uint8Array {
  if (content.kind === 'readings') return readingsPayload(content.source, content.readings, names);
  if (content.kind === 'rejected') return rejectedPayload(content.source, content.bytes, content.why);
  const { kind: _, ...plain } = content;
  return encoder.encode(JSON.stringify(plain));
}

/** What a frame holds; null for a kind that is not known or a payload that is not of its kind. */
export function contentOf(kind: number, payload: Uint8Array, names: ChannelNames): SpoolContent | null {
  const name = KINDS[kind - 1];
  try {
    if (name === undefined) return null;
    if (name === 'readings') return readingsOf(payload, names);
    if (name === 'rejected') return rejectedOf(payload);
    // The checksum held, so this is what payloadOf wrote.
    return { kind: name, ...JSON.parse(decoder.decode(payload)) } as SpoolContent;
  } catch {
    return null;
  }
}
