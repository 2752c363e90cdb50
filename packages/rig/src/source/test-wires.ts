import type { WireReport } from '@provinghouse/contract';
import { plainChannel } from '../channel/channel.ts';
import { benchNow_s } from '../clock/bench-clock.ts';
import { isPracticeLine } from '../practice/mark.ts';
import { channelTally } from './channel-tally.ts';
import { garbledShare, printable } from './printable.ts';
import { rawLines } from './raw-lines.ts';
import { rejectTally } from './reject-tally.ts';
import type { RawReading, Source, SourceSink } from './source.ts';

/** A source that is listened to without being recorded. */
export interface WireListener {
  /** @throws InputError from the source when its configuration cannot work */
  start(): Promise<void>;
  /** What came so far; costs nothing to ask often. */
  report(): WireReport;
  stop(): Promise<void>;
}

const TROUBLES_KEPT = 10;

/** Seconds of the source's own clock for each of ours, from first to last; null before it can be told. */
function clockWatch() {
  let first: RawReading | null = null;
  let last: RawReading | null = null;
  return {
    add(reading: RawReading) {
      first ??= reading;
      last = reading;
    },
    ratio() {
      if (!first || !last || last.arrival_s - first.arrival_s < 2) return null;
      return (last.time_s - first.time_s) / (last.arrival_s - first.arrival_s);
    },
  };
}

/** Listens to a source and keeps account of what comes: raw lines, readings, rate and spread, what could not be read and why. Nothing is recorded. */
export function listenToWire(source: Source): WireListener {
  const began_s = benchNow_s();
  const channels = source.channels ?? ['force', 'table', 'extension'].map(plainChannel);
  const tallies = new Map(channels.map((channel) => [channel.name, channelTally(channel, began_s)]));
  const raw = rawLines();
  const rejects = rejectTally();
  const clock = clockWatch();
  const troubles: string[] = [];
  const state = { bytes: 0, isOpen: null as boolean | null, isPractice: false };
  const trouble = (words: string) => {
    troubles.push(words);
    if (troubles.length > TROUBLES_KEPT) troubles.shift();
  };
  const sink: SourceSink = {
    readings(batch) {
      for (const [name, tally] of tallies) tally.add(batch.filter(({ channel }) => channel === name));
      const last = batch.at(-1);
      if (last) clock.add(last);
    },
    rejected(bytes, why) {
      if (isPracticeLine(printable(bytes))) state.isPractice = true;
      else rejects.add({ bytes: bytes.length, example: printable(bytes), why, isGarbled: garbledShare(bytes) > 0.3 });
    },
    trouble,
    ended: (why) => trouble(`The source is over: ${why}.`),
    practice() {
      state.isPractice = true;
    },
    bytes(bytes, arrival_s, piece) {
      state.bytes += bytes.length;
      raw.push(bytes, arrival_s - began_s, piece);
    },
    connection(isOpen) {
      state.isOpen = isOpen;
    },
  };
  return {
    start: () => source.start(sink),
    report() {
      const now_s = benchNow_s();
      const reports = [...tallies.values()].map((tally) => tally.report(now_s));
      const doubts = new Set(reports.flatMap((report) => report.doubts.map(({ words }) => words)));
      return {
        ...state,
        describe: source.describe,
        pattern: source.pattern ?? null,
        seconds: now_s - began_s,
        lines: raw.lines(),
        channels: reports,
        ...rejects.report(),
        // A source tells of its doubts as troubles; they stand with their channel already.
        troubles: troubles.filter((words) => !doubts.has(words)),
        clockRatio: source.clock === 'own' ? clock.ratio() : null,
      };
    },
    stop: () => source.stop(),
  };
}

/**
 * Listens to a source for some seconds and says what came.
 * @throws InputError from the source when its configuration cannot work
 */
export async function testWires(source: Source, seconds: number): Promise<WireReport> {
  const listener = listenToWire(source);
  await listener.start();
  await new Promise((resolve) => setTimeout(resolve, seconds * 1000));
  const report = listener.report();
  await listener.stop();
  return report;
}
