import type { ChannelReport } from '@provinghouse/contract';
import type { Channel } from '../channel/channel.ts';
import { channelGuard } from '../channel/channel-guard.ts';
import type { RawReading } from './source.ts';

/** Sums of one channel, so that a long test costs no memory. */
export interface ChannelTally {
  /** Readings of this channel in one batch, that is, of one arrival. */
  add(batch: readonly RawReading[]): void;
  report(now_s: number): ChannelReport;
}

const DOUBTS_KEPT = 5;

/** Spread of the steps between moments, in one pass. */
function stepTally() {
  let count = 0;
  let first_s = 0;
  let last_s = 0;
  let squares_s2 = 0;
  let longest_s = 0;
  return {
    add(time_s: number) {
      if (count === 0) first_s = time_s;
      else {
        squares_s2 += (time_s - last_s) ** 2;
        longest_s = Math.max(longest_s, time_s - last_s);
      }
      count++;
      last_s = time_s;
    },
    last_s: () => (count === 0 ? null : last_s),
    span_s: () => last_s - first_s,
    longest_ms: () => (count > 1 ? 1000 * longest_s : null),
    deviation_ms() {
      const steps = count - 1;
      if (steps < 2) return null;
      return 1000 * Math.sqrt(Math.max(squares_s2 - (last_s - first_s) ** 2 / steps, 0) / (steps - 1));
    },
  };
}

/** Counts what one channel does; its doubts are those of channelGuard. Times of doubts are counted from `began_s` on the bench clock. */
export function channelTally(channel: Channel, began_s: number): ChannelTally {
  const doubts: { kind: ChannelReport['doubts'][number]['kind']; at_s: number; words: string }[] = [];
  let arrived_s = began_s;
  const guard = channelGuard(channel, (words, kind) => {
    doubts.push({ kind, at_s: arrived_s - began_s, words });
    if (doubts.length > DOUBTS_KEPT) doubts.shift();
  });
  const own = stepTally();
  const arrivals = stepTally();
  let readings = 0;
  let inFirst = 0;
  let outOfRange = 0;
  let last: number | null = null;
  let least: number | null = null;
  let greatest: number | null = null;
  function addOne({ value, time_s }: RawReading): void {
    own.add(time_s);
    if (guard.quality(value, time_s) === 'out of range') outOfRange++;
    last = value;
    least = Math.min(least ?? value, value);
    greatest = Math.max(greatest ?? value, value);
  }
  return {
    add(batch) {
      const [first] = batch;
      if (!first) return;
      arrived_s = first.arrival_s;
      if (readings === 0) inFirst = batch.length;
      readings += batch.length;
      arrivals.add(arrived_s);
      for (const reading of batch) addOne(reading);
    },
    report(now_s) {
      const { name, signal, unit, benchUnit } = channel;
      const last_s = arrivals.last_s();
      return {
        ...{ channel: name, signal, unit, benchUnit, readings, last, least, greatest, outOfRange },
        // The readings of the first arrival took an unknown time to gather.
        rate_Hz: arrivals.span_s() > 0 ? (readings - inFirst) / arrivals.span_s() : null,
        arrivalSpread_ms: arrivals.deviation_ms(),
        jitter_ms: own.deviation_ms(),
        longestWait_ms: arrivals.longest_ms(),
        sinceLast_s: last_s === null ? null : now_s - last_s,
        doubts: [...doubts],
      };
    },
  };
}
