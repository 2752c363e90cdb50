import { InputError, type TraceSignals } from '@provinghouse/core';
import { type Channel, plainChannel } from '../channel/channel.ts';
import { benchNow_s } from '../clock/bench-clock.ts';
import type { RawReading, Source, SourceSink } from './source.ts';

export interface ReplayOptions {
  /** For the screen: the name of the file. */
  readonly name: string;
  readonly signals: TraceSignals;
  /** 1 is as it was recorded, 10 ten times as fast; 'at once' does not wait. */
  readonly pace: number | 'at once';
}

const ROWS_AT_ONCE = 500;
const TICK_S = 0.01;

interface Column {
  readonly channel: Channel;
  readonly values: Float64Array;
}

function columnsOf({ force_kN, table_mm, extension_mm }: TraceSignals): readonly Column[] {
  const named = [
    ['force', force_kN],
    ['table', table_mm],
    ['extension', extension_mm],
  ] as const;
  return named.flatMap(([name, values]) => (values ? [{ channel: plainChannel(name), values }] : []));
}

/** Arrivals follow the record's own pace, so that a replay at once looks like one that was paced. */
function batchOf(columns: readonly Column[], time: Float64Array, rows: { from: number; end: number }, zero_s: number) {
  const batch: RawReading[] = [];
  for (let i = rows.from; i < rows.end; i++) {
    const time_s = time[i] ?? 0;
    for (const { channel, values } of columns) {
      const value = values[i] ?? Number.NaN;
      if (Number.isNaN(value)) continue;
      batch.push({ channel: channel.name, value, time_s, arrival_s: zero_s + time_s, quality: 'good' });
    }
  }
  return batch;
}

async function send(options: ReplayOptions, time: Float64Array, sink: SourceSink, isOver: () => boolean) {
  const columns = columnsOf(options.signals);
  const began_s = benchNow_s();
  const first_s = time[0] ?? 0;
  const zero_s = began_s - first_s;
  let from = 0;
  while (from < time.length && !isOver()) {
    let end = Math.min(from + ROWS_AT_ONCE, time.length);
    if (options.pace !== 'at once') {
      const due_s = first_s + (benchNow_s() - began_s) * options.pace;
      end = from;
      while (end < time.length && (time[end] ?? 0) <= due_s) end++;
    }
    if (end > from) sink.readings(batchOf(columns, time, { from, end }, zero_s));
    from = end;
    const wait_ms = options.pace === 'at once' ? 0 : TICK_S * 1000;
    await new Promise((resolve) => setTimeout(resolve, wait_ms));
  }
  sink.ended(isOver() ? 'stopped' : 'the end of the file');
}

/**
 * A recording played as if it came from a rig, with its own times.
 * @throws InputError source/replay-no-time, source/pace
 */
export function replay(options: ReplayOptions): Source {
  const time = options.signals.time_s;
  if (time === null)
    throw new InputError('source/replay-no-time', `${options.name} has no time column, so it cannot be replayed.`, {});
  if (options.pace !== 'at once' && !(options.pace > 0))
    throw new InputError('source/pace', `A pace of ${options.pace} goes nowhere; give a number above 0.`, {});
  let isOver = false;
  let sent: Promise<void> = Promise.resolve();
  return {
    describe: `replay of ${options.name}`,
    channels: columnsOf(options.signals).map((column) => column.channel),
    clock: 'free',
    async start(sink) {
      sent = send(options, time, sink, () => isOver);
    },
    async stop() {
      isOver = true;
      await sent;
    },
  };
}
