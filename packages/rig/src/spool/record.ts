import { InputError, type WatchSample } from '@provinghouse/core';
import { plainChannel } from '../channel/channel.ts';
import { benchNow_s } from '../clock/bench-clock.ts';
import type { Gap } from '../clock/sample-builder.ts';
import type { RawReading, Source, SourceSink } from '../source/source.ts';
import { accountant, type SpoolAccount } from './account.ts';
import { beginSpool, type OpenSpool, resumeSpool, type SpoolOutlets } from './open-spool.ts';
import type { SpoolEntry, SpoolHeader, SpoolSource } from './spool-entry.ts';
import type { SpoolFile } from './spool-file.ts';
import type { SpoolStats } from './spool-writer.ts';

/** Who is told, and what. None of it may take long: it runs between readings. */
export interface RecordListener {
  /** Samples whose readings are on disc. */
  samples(batch: readonly WatchSample[]): void;
  /** Samples of before a record that is gone on with broke off; where this is absent they go to `samples`. */
  earlier?(batch: readonly WatchSample[]): void;
  /** Said at once, on disc or not. */
  trouble(words: string, time_s: number): void;
  gap?(gap: Gap): void;
  /** Every source has said that it is over. */
  ended?(why: string): void;
}

export interface RecordOptions {
  readonly path: string;
  readonly header: Omit<SpoolHeader, 'sources'>;
  readonly sources: readonly Source[];
  readonly listener: RecordListener;
  /** Goes on with a record that broke off; the wall clock of now. */
  readonly resumeAt?: string | undefined;
  /** Stands in for the disc in tests. */
  readonly file?: SpoolFile | undefined;
}

/** A pull being recorded. */
export interface PullRecord {
  readonly header: SpoolHeader;
  /** Seconds since the record began. */
  now_s(): number;
  mark(words: string): void;
  stats(): SpoolStats;
  /** Of what is on disc so far. */
  account(): SpoolAccount;
  /** Stops the sources, writes what is left and closes. */
  stop(why: string): Promise<SpoolStats>;
}

const SILENCE_S = 2;

function spoolSource({ describe, clock, channels }: Source): SpoolSource {
  return {
    describe,
    clock: clock ?? 'arrival',
    channels: channels ?? [plainChannel('force'), plainChannel('table'), plainChannel('extension')],
  };
}

function checkSignals(sources: readonly SpoolSource[]): void {
  const channels = sources.flatMap((source) => source.channels);
  for (const signal of ['force', 'table', 'extension'] as const) {
    const names = channels.filter((channel) => channel.signal === signal).map((channel) => channel.name);
    if (names.length > 1)
      throw new InputError(
        'record/signal-twice',
        `Two channels are the ${signal}: ${names.join(', ')}. Leave one out.`,
        {
          names,
        },
      );
  }
  if (!channels.some((channel) => channel.signal === 'force'))
    throw new InputError('record/no-force', 'No channel is the force; name one force, or say which stands for it.', {});
}

/** Says once an occasion that a source sends nothing that can be read. */
function silenceWatch(sources: readonly Source[], trouble: (words: string) => void) {
  const heard = sources.map(() => ({ last_s: benchNow_s(), said: false, isOver: false }));
  const timer = setInterval(() => {
    heard.forEach((state, i) => {
      const source = sources[i];
      if (!source || source.isPatient || state.said || state.isOver || benchNow_s() - state.last_s < SILENCE_S) return;
      state.said = true;
      trouble(`${source.describe} has sent nothing that can be read for ${SILENCE_S} s.`);
    });
  }, 250);
  timer.unref();
  return {
    heard(source: number) {
      const state = heard[source];
      if (!state) return;
      state.last_s = benchNow_s();
      state.said = false;
    },
    over(source: number): boolean {
      const state = heard[source];
      if (state) state.isOver = true;
      return heard.every(({ isOver }) => isOver);
    },
    stop: () => clearInterval(timer),
  };
}

/** Times from the bench clock to the record's own; a source's own clock stays as it is. */
function onRecordTime(batch: readonly RawReading[], zero_s: number, isArrival: boolean): readonly RawReading[] {
  return batch.map((reading) => ({
    ...reading,
    time_s: isArrival ? reading.time_s - zero_s : reading.time_s,
    arrival_s: reading.arrival_s - zero_s,
  }));
}

function checkWiring(old: SpoolHeader, sources: readonly SpoolSource[]): void {
  const names = (all: readonly SpoolSource[]) =>
    JSON.stringify(all.map(({ channels }) => channels.map(({ name, unit }) => [name, unit])));
  if (names(old.sources) !== names(sources))
    throw new InputError(
      'record/other-wiring',
      'The record that broke off was made with other channels; seal it and begin anew.',
      {},
    );
}

interface Opened {
  readonly spool: OpenSpool;
  readonly accounts: ReturnType<typeof accountant>;
}

/** The spool, new or gone on with, and its account fed with what is released. */
async function openRecord(
  options: RecordOptions,
  header: SpoolHeader,
  trouble: (words: string) => void,
): Promise<Opened> {
  const { listener } = options;
  let isEarlier = options.resumeAt !== undefined;
  const accounts = accountant({
    gap: (gap) => (isEarlier ? undefined : listener.gap?.(gap)),
    trouble: (words, time_s) => (isEarlier ? undefined : listener.trouble(words, time_s)),
  });
  const give = (entry: SpoolEntry) => {
    const samples = accounts.entry(entry);
    if (samples.length === 0) return;
    if (isEarlier && listener.earlier) listener.earlier(samples);
    else listener.samples(samples);
  };
  const outlets: SpoolOutlets = { trouble, released: (entries) => entries.forEach(give) };
  if (options.resumeAt === undefined)
    return { spool: await beginSpool(options.path, header, outlets, options.file), accounts };
  const spool = await resumeSpool(options.path, options.resumeAt, {
    ...outlets,
    earlier: give,
    accept: (old) => checkWiring(old, header.sources),
  });
  isEarlier = false;
  return { spool, accounts };
}

/**
 * Records a pull: starts the sources, writes every reading to the spool, and hands out samples once they are on disc. On going on with a record
 * that broke off, its samples are handed out first.
 * @throws InputError record/no-force, record/signal-twice, record/other-wiring, spool/*
 */
export async function startRecord(options: RecordOptions): Promise<PullRecord> {
  const { sources, listener } = options;
  const header: SpoolHeader = { ...options.header, sources: sources.map(spoolSource) };
  checkSignals(header.sources);
  let record: OpenSpool | null = null;
  const now_s = () => (record ? benchNow_s() - record.zero_s : 0);
  const trouble = (words: string) => {
    record?.writer.append({ kind: 'trouble', words });
    listener.trouble(words, now_s());
  };
  const { spool, accounts } = await openRecord(options, header, trouble);
  record = spool;
  const silence = silenceWatch(sources, trouble);
  const sinkOf = (source: number): SourceSink => ({
    readings(batch) {
      silence.heard(source);
      const isArrival = header.sources[source]?.clock === 'arrival';
      spool.writer.append({ kind: 'readings', source, readings: onRecordTime(batch, spool.zero_s, isArrival) });
    },
    rejected: (bytes, why) => spool.writer.append({ kind: 'rejected', source, bytes, why }),
    trouble,
    practice: () => spool.writer.append({ kind: 'practice', source }),
    ended: (why) => (silence.over(source) ? listener.ended?.(why) : undefined),
  });
  async function stop(why: string): Promise<SpoolStats> {
    silence.stop();
    await Promise.all(sources.map((source) => source.stop()));
    return spool.writer.close(why);
  }
  try {
    await Promise.all(sources.map((source, i) => source.start(sinkOf(i))));
  } catch (error) {
    await stop('a source could not be started');
    throw error;
  }
  return {
    header: spool.header,
    now_s,
    mark: (words) => spool.writer.append({ kind: 'mark', words }),
    stats: () => spool.writer.stats(),
    account: () => accounts.account(),
    stop,
  };
}
