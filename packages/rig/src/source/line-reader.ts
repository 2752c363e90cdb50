import type { Unit } from '@provinghouse/core';
import { toBench } from '@provinghouse/core';
import type { Channel, ChannelConfiguration } from '../channel/channel.ts';
import { benchValue, openChannel, unitOf } from '../channel/channel.ts';
import { type ChannelGuard, channelGuard } from '../channel/channel-guard.ts';
import { arrivalSpread } from '../clock/arrival-spread.ts';
import { lineFramer } from '../frame/line-framer.ts';
import { type LinePattern, linePattern, matchLine, timeUnit } from '../frame/line-pattern.ts';
import { isPracticeLine } from '../practice/mark.ts';
import { garbledShare, printable } from './printable.ts';
import type { RawReading, SourceSink } from './source.ts';

/** How lines are to be read. */
export interface LineFormat {
  readonly pattern: string;
  readonly decimal: '.' | ',';
  /** More about the fields: range, resolution, calibration, and units the pattern leaves out. */
  readonly channels: readonly ChannelConfiguration[];
}

/** A format made ready. */
export interface OpenLineFormat {
  readonly pattern: LinePattern;
  readonly channels: readonly Channel[];
  readonly hasOwnClock: boolean;
}

/** Bytes in, readings out; one for each connection-keeping source. */
export interface LineReader {
  push(chunk: Uint8Array, arrival_s: number): void;
  /** The connection is gone: what was left of a line is rejected. */
  cut(): void;
}

/**
 * Compiles the pattern and its channels.
 * @throws InputError source/pattern, source/unit-*, source/range
 */
export function openLineFormat(format: LineFormat): OpenLineFormat {
  const pattern = linePattern(format.pattern, format.decimal);
  const fields = pattern.fields.filter((field) => field.name !== 'time');
  const channels = fields.map((field) =>
    openChannel(format.channels.find((channel) => channel.name === field.name) ?? { name: field.name }, field.unit),
  );
  return { pattern, channels, hasOwnClock: fields.length < pattern.fields.length };
}

const LINES_BEFORE_TROUBLE = 20;

/** Says, once an occasion, that lines come but none can be read, or that what comes is no text at all. */
function shapeWatch(pattern: LinePattern, trouble: (words: string) => void) {
  let bad = 0;
  let said = false;
  return {
    good() {
      bad = 0;
      said = false;
    },
    bad(bytes: Uint8Array, why: string) {
      bad++;
      const isGarbled = garbledShare(bytes) > 0.3;
      if (said || bad < (isGarbled ? 5 : LINES_BEFORE_TROUBLE)) return;
      said = true;
      const example = printable(bytes);
      if (isGarbled) trouble(`What comes is no plain text ("${example}"): is the speed (baud) or the parity wrong?`);
      else
        trouble(`The last ${bad} lines could not be read with "${pattern.text}" (${why}). Such a line: "${example}".`);
    },
  };
}

const OVERLONG = 'no line end within 1024 bytes';

interface Field {
  readonly channel: Channel;
  readonly unit: Unit;
  readonly guard: ChannelGuard;
  readonly at: number;
}

function fieldsOf(format: OpenLineFormat, trouble: (words: string) => void): readonly Field[] {
  return format.channels.map((channel) => ({
    channel,
    unit: unitOf(channel.unit, `Channel ${channel.name}`),
    guard: channelGuard(channel, trouble),
    at: format.pattern.fields.findIndex((field) => field.name === channel.name),
  }));
}

/** Reads lines into readings, whatever way the bytes are chunked; lines that cannot be read go to `rejected` as they came. */
export function lineReader(format: OpenLineFormat, sink: SourceSink): LineReader {
  const { pattern } = format;
  const framer = lineFramer();
  const spread = arrivalSpread();
  const shape = shapeWatch(pattern, (words) => sink.trouble(words));
  const fields = fieldsOf(format, (words) => sink.trouble(words));
  const width = pattern.fields.length;
  const timeAt = pattern.fields.findIndex((field) => field.name === 'time');
  const clock = timeAt < 0 ? null : timeUnit(pattern.fields[timeAt] ?? { name: 'time', unit: 's' });
  const values = new Float64Array(width);
  let lines: Float64Array[] = [];

  function reject(bytes: Uint8Array, why: string): void {
    sink.rejected(new Uint8Array(bytes), why);
    if (isPracticeLine(printable(bytes))) sink.practice?.();
    else shape.bad(bytes, why);
  }
  const lineSink = {
    line(bytes: Uint8Array) {
      const found = matchLine(pattern, bytes, values);
      if (found === 'read') {
        shape.good();
        lines.push(values.slice());
      } else reject(bytes, found === 'other shape' ? 'another shape' : found.unreadable);
    },
    overlong(bytes: Uint8Array) {
      reject(bytes, OVERLONG);
    },
  };
  function batchOf(arrival_s: number): RawReading[] {
    const times = clock ? null : spread.times(lines.length, arrival_s);
    const batch: RawReading[] = [];
    lines.forEach((line, i) => {
      const time_s = clock ? toBench(line[timeAt] ?? 0, clock) : (times?.[i] ?? arrival_s);
      for (const { channel, unit, guard, at } of fields) {
        const value = benchValue(channel, unit, line[at] ?? 0);
        batch.push({ channel: channel.name, value, time_s, arrival_s, quality: guard.quality(value, time_s) });
      }
    });
    return batch;
  }
  return {
    push(chunk, arrival_s) {
      sink.bytes?.(chunk, arrival_s);
      lines = [];
      framer.push(chunk, lineSink);
      if (lines.length > 0) sink.readings(batchOf(arrival_s));
    },
    cut() {
      const rest = framer.takeRest();
      if (rest) sink.rejected(rest, 'the connection ended in the middle of a line');
    },
  };
}
