import { readTrace, type TraceOptions, type TraceReading, type WatchOptions } from '@provinghouse/core';
import { configurationOfAddress, openSource } from '@provinghouse/rig';
import { keepPull, spoolName, spoolPaths } from './keeper.ts';
import type { RecordingHead } from './ports.ts';
import { record } from './recording.ts';
import { relay } from './relay.ts';
import { newsTeller, type WatchNews } from './watch-news.ts';

export interface WatchSourceInput {
  /** `tcp://host:port` or `serial:/dev/ttyUSB0?baud=9600`. */
  readonly source: string;
  readonly pattern: string;
  readonly decimal?: '.' | ',';
  /** The source's clock may run faster or slower than ours. */
  readonly isClockFree?: boolean;
  readonly watch: WatchOptions;
  readonly trace: TraceOptions;
  /** Folder the recording is kept in. */
  readonly folder: string;
  readonly now: () => Date;
  readonly tell: (news: WatchNews) => void;
  /** Aborted when the operator ends the recording. */
  readonly stop: AbortSignal;
}

export interface Watched {
  readonly file: string;
  readonly sha256: string;
  readonly isPractice: boolean;
  readonly reading: TraceReading;
}

/**
 * Watches one source without a record: every reading is kept in a folder, what happens is told, and at the end the recording is sealed and read.
 * @throws InputError `source/*` for an address, a pattern or a unit that cannot be; `spool/nothing-recorded`; `trace/*`
 */
export async function watchSource(input: WatchSourceInput): Promise<Watched> {
  const { source, pattern, decimal, isClockFree, watch, folder, tell } = input;
  const wire = openSource(configurationOfAddress(source, { pattern, decimal, isClockFree }));
  const teller = newsTeller();
  const counts = { received: 0, rejected: 0 };
  let isPractice = false;
  const one = relay(wire, {
    tell: () => undefined,
    rejected: () => {
      counts.rejected += 1;
    },
    practice: () => {
      if (!isPractice) tell({ kind: 'practice' });
      isPractice = true;
    },
  });
  const head = headOf(input);
  const keeper = keepPull({ head: () => ({ ...head, isPractice }), sources: [one.source], folder });
  const recording = await record({
    watch,
    openKeeper: keeper,
    tell: (message) => {
      if (message.kind === 'samples') counts.received = message.received;
      else if (message.kind === 'trouble') tell(message);
      else if (message.kind === 'view') for (const news of teller.view(message.view, counts)) tell(news);
    },
  });
  const stop = () => recording.stop();
  input.stop.addEventListener('abort', stop, { once: true });
  try {
    await one.listen();
    const { view, sealed } = await recording.ended;
    if (sealed instanceof Error) throw sealed;
    for (const news of teller.view(view, counts)) tell(news);
    tell({ kind: 'ended', view, samples: sealed.samples, rejected: sealed.rejected, sha256: sealed.sha256 });
    const reading = readTrace(sealed.bytes, input.trace);
    const file = spoolPaths(folder, spoolName(head)).trace;
    tell({ kind: 'reading', file, sha256: sealed.sha256, reading });
    return { file, sha256: sealed.sha256, isPractice, reading };
  } finally {
    input.stop.removeEventListener('abort', stop);
    await one.close();
  }
}

function headOf({ source, now }: WatchSourceInput): RecordingHead {
  const startedAt = now().toISOString();
  return {
    pull: startedAt.replaceAll(/[^\dTZ]/g, ''),
    campaign: 'watch',
    piece: 'not named',
    rig: 'not named',
    operator: null,
    source,
    isPractice: false,
    startedAt,
  };
}
