import { readTrace, type TraceOptions, type TraceReading, type WatchOptions } from '@provinghouse/core';
import { configurationOfAddress, openSource } from '@provinghouse/rig';
import { keepPull, sealed, spoolName, spoolPaths } from './keeper.ts';
import { readRig } from './kit.ts';
import type { RecordingHead } from './ports.ts';
import { record } from './recording.ts';
import { relay } from './relay.ts';
import { newsTeller, type WatchNews } from './watch-news.ts';
import type { OpenedWires } from './wired-rig.ts';

/** Where the readings come from: an address with its pattern, or a rig as a file of Kit describes it. */
export type WatchedWires =
  | {
      /** `tcp://host:port` or `serial:/dev/ttyUSB0?baud=9600`. */
      readonly source: string;
      readonly pattern: string;
      readonly decimal?: '.' | ',';
      /** The source's clock may run faster or slower than ours. */
      readonly isClockFree?: boolean;
    }
  | { readonly kit: string };

export interface WatchSourceInput {
  readonly wires: WatchedWires;
  /** The limit of the fixture and the agreed drop of a file of Kit stand in for those left out. */
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
 * Watches the wires of a rig without a record: every reading is kept in a folder, what happens is told, and at the end the recording is sealed and read.
 * @throws InputError `pull/kit`, `record/no-force`, `source/*` for an address, a pattern or a unit that cannot be; `spool/nothing-recorded`; `trace/*`
 */
export async function watchSource(input: WatchSourceInput): Promise<Watched> {
  const { folder, tell } = input;
  const { wires, limits } = await openWires(input.wires);
  const teller = newsTeller();
  const counts = { received: 0, rejected: 0 };
  let isPractice = false;
  const relays = wires.sources.map((wire) =>
    relay(wire, {
      tell: () => undefined,
      rejected: () => {
        counts.rejected += 1;
      },
      practice: () => {
        if (!isPractice) tell({ kind: 'practice' });
        isPractice = true;
      },
    }),
  );
  const head = headOf(input.now(), wires);
  const keeper = keepPull({ head, sources: relays.map(({ source }) => source), folder });
  const recording = await record({
    watch: { ...input.watch, ...limits },
    openKeeper: keeper,
    tell: (message) => {
      if (message.kind === 'samples') counts.received = message.received;
      else if (message.kind === 'trouble') tell(message);
      else if (message.kind === 'gap') tell({ kind: 'trouble', time_s: message.to_s, words: message.words });
      else if (message.kind === 'view') for (const news of teller.view(message.view, counts)) tell(news);
    },
  });
  const stop = () => recording.stop();
  input.stop.addEventListener('abort', stop, { once: true });
  try {
    for (const one of relays) await one.listen();
    const { view, marks, fault } = await recording.ended;
    if (fault) throw fault;
    const trace = await sealed({ folder, head: { ...head, isPractice }, marks });
    for (const news of teller.view(view, counts)) tell(news);
    tell({ kind: 'ended', view, samples: trace.samples, rejected: trace.rejected, sha256: trace.sha256 });
    const reading = readTrace(trace.bytes, input.trace);
    const file = spoolPaths(folder, spoolName(head)).trace;
    tell({ kind: 'reading', file, sha256: trace.sha256, reading });
    return { file, sha256: trace.sha256, isPractice, reading };
  } finally {
    input.stop.removeEventListener('abort', stop);
    await Promise.all(relays.map((one) => one.close()));
    await wires.close();
  }
}

interface Opened {
  readonly wires: OpenedWires;
  readonly limits: Partial<WatchOptions>;
}

async function openWires(watched: WatchedWires): Promise<Opened> {
  if (!('kit' in watched)) {
    const { source, ...format } = watched;
    const wire = openSource(configurationOfAddress(source, format));
    return { wires: { sources: [wire], close: async () => undefined }, limits: {} };
  }
  const { open, fixtureLimit_kN, agreedDrop } = await readRig(watched.kit);
  const limits = {
    ...(fixtureLimit_kN == null ? {} : { fixtureLimit_kN }),
    ...(agreedDrop == null ? {} : { agreedDrop_pct: 100 * agreedDrop }),
  };
  return { wires: await open({ piece: '', nominalSize_mm: 8, links: 5 }), limits };
}

function headOf(now: Date, { sources }: OpenedWires): RecordingHead {
  const startedAt = now.toISOString();
  return {
    pull: startedAt.replaceAll(/[^\dTZ]/g, ''),
    campaign: 'watch',
    piece: 'not named',
    rig: 'not named',
    operator: null,
    source: sources.map(({ describe }) => describe).join(', '),
    isPractice: false,
    startedAt,
  };
}
