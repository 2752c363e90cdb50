import type { WatchSample } from '@provinghouse/core';
import type { ChannelSignal } from '../channel/channel.ts';
import type { RawReading, SourceClock } from '../source/source.ts';
import { arrivalClock, freeClock, type SourceClockTracker, sourceClock } from './source-clock.ts';

/** A source as far as its clock and what its channels stand for. */
export interface ClockedSource {
  readonly describe: string;
  readonly clock: SourceClock;
  readonly channels: readonly { readonly name: string; readonly signal: ChannelSignal | null }[];
}

/** Time without force readings, on the record's time. */
export interface Gap {
  readonly from_s: number;
  readonly to_s: number;
  readonly why: string;
}

/** Why there is a gap where nothing is known to be lost. */
export const noForceWords = 'no force came';

/** What the samples so far have to say. */
export interface SampleNews {
  gap(gap: Gap): void;
  /** A source moved its clock. */
  clockJump(source: string, jumped_s: number, time_s: number): void;
}

/** Many sources in, one row of samples out, in time order; the same readings always give the same samples. */
export interface SampleBuilder {
  add(source: number, batch: readonly RawReading[]): WatchSample[];
  /** What was still waited for, given out as it stands. */
  flush(): WatchSample[];
  /** One for each source. */
  readonly clocks: readonly SourceClockTracker[];
}

/** What a builder leaves to one that goes on after it. */
export interface BuiltBefore {
  readonly clocks: readonly SourceClockTracker[];
  /** Time of its last sample. */
  readonly last_s: number;
}

/** Seconds a force waits for the table or the extension of a slower source; then the value before is held. */
const WAIT_S = 0.25;
/** A value older than this is not held on to. */
const STALE_S = 1;
const LATE_GAP = 3;
const ARRIVAL_GAP_S = 0.1;
const SLOWER_AFTER = 5;

interface Point {
  readonly time_s: number;
  readonly value: number;
  /** Readings of one line have the same; it pairs them where two lines were laid at one time. */
  readonly line: number;
}

/** The value of a signal between its readings. */
interface Lane {
  add(point: Point): void;
  /** True once a reading at or past the time is in. */
  reaches(time_s: number): boolean;
  /** Seconds on the record of the last reading; null before the first. */
  last_s(): number | null;
  at(moment: Point): number | null;
}

function lane(): Lane {
  let points: Point[] = [];
  let from = 0;
  return {
    add(point) {
      points.push(point);
    },
    reaches(time_s) {
      const last = points.at(-1);
      return last !== undefined && last.time_s >= time_s;
    },
    last_s: () => points.at(-1)?.time_s ?? null,
    at({ time_s, line }) {
      while (from + 1 < points.length && points[from]?.line !== line && (points[from + 1]?.time_s ?? 0) <= time_s)
        from++;
      if (from > 1000) {
        points = points.slice(from);
        from = 0;
      }
      const before = points[from];
      const after = points[from + 1];
      if (!before || before.time_s > time_s || time_s - before.time_s > STALE_S) return null;
      if (!after || before.time_s === time_s) return before.value;
      const share = (time_s - before.time_s) / (after.time_s - before.time_s);
      return before.value + share * (after.value - before.value);
    },
  };
}

/** A clock taken as it comes runs on through a break; the others are followed anew. */
function trackerOf(clock: SourceClock, before: BuiltBefore | undefined, source: number): SourceClockTracker {
  if (clock === 'free') return before?.clocks[source] ?? freeClock();
  return clock === 'own' ? sourceClock(before?.last_s) : arrivalClock(before?.last_s);
}

/** Says where force readings are missing: three usual distances on a source's own clock, 0.1 s and ten distances on arrivals. */
function gapWatch(clock: SourceClock, news: SampleNews): (time_s: number) => void {
  let last_s: number | null = null;
  let period_s: number | null = null;
  let seen = 0;
  let inRow = 0;
  return (time_s) => {
    if (last_s !== null && time_s > last_s) {
      const step_s = time_s - last_s;
      const limit_s = clock === 'arrival' ? Math.max(ARRIVAL_GAP_S, 10 * (period_s ?? 0)) : LATE_GAP * (period_s ?? 1);
      const isGap = seen >= 5 && step_s > limit_s;
      inRow = isGap ? inRow + 1 : 0;
      if (isGap) news.gap({ from_s: last_s, to_s: time_s, why: noForceWords });
      // A source that has become slower is not a row of gaps for ever.
      if (inRow >= SLOWER_AFTER) period_s = step_s;
      else if (!isGap) {
        period_s = period_s === null ? step_s : period_s + 0.05 * (step_s - period_s);
        seen++;
      }
    }
    last_s = time_s;
  };
}

/** Numbers the lines of a source: a new one begins with another time, another arrival, or a channel that comes again. */
function lineCounter(): (source: number, reading: RawReading) => number {
  let line = 0;
  let first: { readonly source: number; readonly reading: RawReading } | null = null;
  return (source, reading) => {
    const isSame =
      first !== null &&
      first.source === source &&
      first.reading.time_s === reading.time_s &&
      first.reading.arrival_s === reading.arrival_s &&
      first.reading.channel !== reading.channel;
    if (!isSame) {
      line++;
      first = { source, reading };
    }
    return line;
  };
}

/**
 * Builds samples at the times of the force. Table and extension are taken between their neighbours in time; a force waits up to 0.25 s for a
 * slower source and then takes the last value, up to 1 s old, else null. Readings of quality 'unreadable' or 'late' are left out.
 * All times count from the start of the record.
 * @param sources in the order of the numbers given to add(); each signal comes from one channel of all
 * @param before of a record that is gone on with: no sample is laid before its last
 */
export function sampleBuilder(
  sources: readonly ClockedSource[],
  news: SampleNews,
  before?: BuiltBefore,
): SampleBuilder {
  const trackers = sources.map((source, i) => trackerOf(source.clock, before, i));
  const signals = sources.map((source) => new Map(source.channels.map((channel) => [channel.name, channel.signal])));
  const lanes = { table: lane(), extension: lane() };
  const others = [lanes.table, lanes.extension];
  const forceFrom = sources.find((source) => source.channels.some((channel) => channel.signal === 'force'));
  const watchGap = gapWatch(forceFrom?.clock ?? 'arrival', news);
  const lineOf = lineCounter();
  let waiting: Point[] = [];
  let now_s = Number.NEGATIVE_INFINITY;

  function isReady({ time_s }: Point): boolean {
    if (now_s - time_s > WAIT_S) return true;
    return others.every((other) => {
      const last_s = other.last_s();
      return last_s === null || now_s - last_s > WAIT_S || other.reaches(time_s);
    });
  }
  function sampleOf(force: Point): WatchSample {
    const { time_s, value } = force;
    watchGap(time_s);
    return { time_s, force_kN: value, table_mm: lanes.table.at(force), extension_mm: lanes.extension.at(force) };
  }
  function give(isAll: boolean): WatchSample[] {
    let ready = 0;
    while (ready < waiting.length) {
      const force = waiting[ready];
      if (!force || !(isAll || isReady(force))) break;
      ready++;
    }
    const samples = waiting.slice(0, ready).map(sampleOf);
    waiting = waiting.slice(ready);
    return samples;
  }
  function take(source: number, reading: RawReading): void {
    const placed = trackers[source]?.place(reading.time_s, reading.arrival_s);
    if (!placed || reading.quality === 'unreadable' || reading.quality === 'late') return;
    const { time_s } = placed;
    if (placed.jumped_s !== null) news.clockJump(sources[source]?.describe ?? '', placed.jumped_s, time_s);
    const signal = signals[source]?.get(reading.channel);
    now_s = Math.max(now_s, time_s);
    const point = { time_s, value: reading.value, line: lineOf(source, reading) };
    if (signal === 'force') waiting.push(point);
    else if (signal) lanes[signal].add(point);
  }
  return {
    add(source, batch) {
      for (const reading of batch) take(source, reading);
      return give(false);
    },
    flush: () => give(true),
    clocks: trackers,
  };
}
