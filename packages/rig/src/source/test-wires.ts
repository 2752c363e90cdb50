import { benchNow_s } from '../clock/bench-clock.ts';
import { printable } from './printable.ts';
import type { RawReading, Source, SourceSink } from './source.ts';

/** What a channel did while the wires were tested. */
export interface ChannelReport {
  readonly channel: string;
  readonly readings: number;
  /** Readings a second; null with fewer than two. */
  readonly rate_Hz: number | null;
  /** Standard deviation of the time between readings, on the time the readings carry; null with fewer than three. */
  readonly jitter_ms: number | null;
  readonly longestWait_ms: number | null;
  /** Bench units. */
  readonly last: number;
  readonly least: number;
  readonly greatest: number;
}

export interface WireReport {
  readonly describe: string;
  readonly seconds: number;
  readonly bytes: number;
  /** The last raw bytes, up to 400, with everything but plain ASCII as \xNN. */
  readonly raw: string;
  readonly channels: readonly ChannelReport[];
  readonly lastReadings: readonly RawReading[];
  readonly rejected: number;
  readonly rejectedBytes: number;
  readonly rejectedExamples: readonly { readonly bytes: string; readonly why: string }[];
  readonly troubles: readonly string[];
}

const RAW_KEPT = 400;
const EXAMPLES = 5;
const READINGS_KEPT = 20;

/** Sums of one channel, so that a long test costs no memory. */
function tally(channel: string) {
  let readings = 0;
  let first_s = 0;
  let last_s = 0;
  let squares = 0;
  let longest_s = 0;
  let last = 0;
  let least = Number.POSITIVE_INFINITY;
  let greatest = Number.NEGATIVE_INFINITY;
  return {
    add({ value, time_s }: RawReading) {
      if (readings === 0) first_s = time_s;
      else {
        squares += (time_s - last_s) ** 2;
        longest_s = Math.max(longest_s, time_s - last_s);
      }
      readings++;
      last_s = time_s;
      last = value;
      least = Math.min(least, value);
      greatest = Math.max(greatest, value);
    },
    report(): ChannelReport {
      const steps = readings - 1;
      const span_s = last_s - first_s;
      const variance_s2 = steps > 1 ? Math.max(squares - span_s ** 2 / steps, 0) / (steps - 1) : null;
      return {
        channel,
        readings,
        rate_Hz: steps > 0 && span_s > 0 ? steps / span_s : null,
        jitter_ms: variance_s2 === null ? null : 1000 * Math.sqrt(variance_s2),
        longestWait_ms: steps > 0 ? 1000 * longest_s : null,
        last,
        least,
        greatest,
      };
    },
  };
}

function wireTally() {
  const channels = new Map<string, ReturnType<typeof tally>>();
  const troubles: string[] = [];
  const examples: { bytes: string; why: string }[] = [];
  const sums = { bytes: 0, rejected: 0, rejectedBytes: 0 };
  let raw = new Uint8Array(0);
  let lastReadings: readonly RawReading[] = [];
  const sink: SourceSink = {
    readings(batch) {
      for (const reading of batch) {
        const known = channels.get(reading.channel) ?? tally(reading.channel);
        channels.set(reading.channel, known);
        known.add(reading);
      }
      lastReadings = [...lastReadings, ...batch.slice(-READINGS_KEPT)].slice(-READINGS_KEPT);
    },
    rejected(bytes, why) {
      sums.rejected++;
      sums.rejectedBytes += bytes.length;
      if (examples.length < EXAMPLES) examples.push({ bytes: printable(bytes), why });
    },
    trouble: (words) => void troubles.push(words),
    ended: (why) => void troubles.push(`The source is over: ${why}.`),
    bytes(bytes) {
      sums.bytes += bytes.length;
      raw = new Uint8Array(Buffer.concat([raw, bytes]).subarray(-RAW_KEPT));
    },
  };
  return {
    sink,
    report: () => ({
      ...sums,
      raw: printable(raw, RAW_KEPT),
      channels: [...channels.values()].map((channel) => channel.report()),
      lastReadings,
      rejectedExamples: examples,
      troubles,
    }),
  };
}

/**
 * Listens to a source for a while and says what came: raw bytes, readings, rate and jitter, what could not be read and why. Nothing is recorded.
 * @throws InputError from the source when its configuration cannot work
 */
export async function testWires(source: Source, seconds: number): Promise<WireReport> {
  const seen = wireTally();
  const began_s = benchNow_s();
  await source.start(seen.sink);
  await new Promise((resolve) => setTimeout(resolve, seconds * 1000));
  await source.stop();
  return { describe: source.describe, seconds: benchNow_s() - began_s, ...seen.report() };
}
