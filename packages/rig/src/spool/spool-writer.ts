import { benchNow_s } from '../clock/bench-clock.ts';
import type { SpoolContent, SpoolEntry } from './spool-entry.ts';
import { type SpoolFile, writeFault } from './spool-file.ts';
import { frameBytes } from './spool-frame.ts';
import { type ChannelNames, kindNumber, payloadOf } from './spool-payload.ts';
import { spoolSync } from './spool-sync.ts';
import { countOf, merged, type Pending, pendingOf, waitingRoom } from './waiting-room.ts';
import { workLoop } from './work-loop.ts';

/** Where a writer begins: at nought, or after what is there already. */
export interface SpoolStart {
  readonly file: SpoolFile;
  readonly names: ChannelNames;
  readonly salt: number;
  readonly length: number;
  readonly sequence: number;
  /** Bench clock at the start of the record. */
  readonly zero_s: number;
}

export interface SpoolWriterOptions extends SpoolStart {
  /** Called with entries whose frames are written, in order; the only way out to a viewer. */
  released(entries: readonly SpoolEntry[]): void;
  /** Said at once, whether or not it can be written. */
  trouble(words: string): void;
}

/** What the writer did so far. */
export interface SpoolStats {
  readonly bytes: number;
  readonly writes: number;
  readonly syncs: number;
  /** Longest wait from a reading's coming in to its frame being written, and to its lying on the disc itself. */
  readonly longestToWritten_s: number;
  readonly longestToSynced_s: number;
  /** Readings that came while nothing could be written and memory for them was full. */
  readonly lost: number;
  readonly isFull: boolean;
}

export interface SpoolWriter {
  append(content: SpoolContent): void;
  stats(): SpoolStats;
  /** Writes what is pending, syncs and closes. Readings that cannot be written are counted as lost. */
  close(why: string): Promise<SpoolStats>;
}

/** A commit at most every 4 ms. */
const COMMIT_S = 0.004;
const RETRY_S = 0.2;
/** Readings held in memory while the disc takes nothing: 10 s of two channels at 10 kHz. */
const MOST_PENDING = 200_000;

function framesOf(entries: readonly SpoolEntry[], sequence: number, { salt, names }: SpoolStart): Uint8Array {
  const frames = entries.map((entry, i) => {
    const { time_s, ...content } = entry;
    const payload = payloadOf(content, names);
    return frameBytes({ sequence: sequence + i, salt, kind: kindNumber(entry.kind), time_s, payload });
  });
  return Buffer.concat(frames);
}

/** Whether the disc takes anything, and what was lost while it did not. */
function discState(trouble: (words: string) => void) {
  const state = { isFull: false, lost: 0 };
  let unsaid = 0;
  return {
    state,
    refuses(error: unknown) {
      if (!state.isFull)
        trouble(`${writeFault(error)}: what is kept so far stays; readings from now on wait in memory.`);
      state.isFull = true;
    },
    /** Readings lost since the disc last took any. */
    takesAgain(): number {
      if (state.isFull) trouble('The disc takes readings again.');
      state.isFull = false;
      const lost = unsaid;
      unsaid = 0;
      return lost;
    },
    lose(readings: number) {
      state.lost += readings;
      unsaid += readings;
    },
  };
}

/** A viewer that fails is no reason to stop recording. */
function release(entries: readonly SpoolEntry[], { released, trouble }: SpoolWriterOptions): void {
  try {
    released(entries);
  } catch (error) {
    trouble(`A viewer failed (${error instanceof Error ? error.message : String(error)}); the record goes on.`);
  }
}

/**
 * Appends entries to a spool. They are gathered for up to 4 ms, written in one go and only then released; a sync follows within 40 ms. When the
 * disc takes nothing (full, failing) the file is cut back to its last whole frame, that is said at once, readings wait in memory and the writing
 * is tried again every 0.2 s; those that find no room there are counted and the loss is written down as soon as anything can be.
 */
export function spoolWriter(options: SpoolWriterOptions): SpoolWriter {
  const { file, zero_s } = options;
  const syncs = spoolSync(file, options.trouble);
  const waiting = waitingRoom();
  const disc = discState(options.trouble);
  const seen = { writes: 0, longest_s: 0 };
  let { length, sequence } = options;
  let last_s = 0;
  let isClosed = false;

  async function failed(taken: readonly Pending[], error: unknown): Promise<void> {
    waiting.putBack(taken);
    // Should cutting back fail too, the next write goes to the same place, over what is left of this one.
    await file.truncate(length).catch(() => {});
    disc.refuses(error);
  }
  async function commit(): Promise<void> {
    last_s = benchNow_s();
    const taken = waiting.takeAll();
    const entries = merged(taken);
    const bytes = framesOf(entries, sequence, options);
    try {
      await file.write(bytes, length);
    } catch (error) {
      await failed(taken, error);
      return;
    }
    length += bytes.length;
    sequence += entries.length;
    seen.writes++;
    const oldest_s = taken[0]?.since_s ?? last_s;
    seen.longest_s = Math.max(seen.longest_s, benchNow_s() - oldest_s);
    syncs.dirty(oldest_s);
    const lost = disc.takesAgain();
    if (lost > 0) append({ kind: 'lost', readings: lost, why: 'the disc took nothing' });
    release(entries, options);
  }
  const loop = workLoop(
    commit,
    () => (disc.state.isFull ? RETRY_S : Math.max(0, last_s + COMMIT_S - benchNow_s())),
    () => !waiting.isEmpty(),
  );
  function append(content: SpoolContent): void {
    if (isClosed) return;
    const readings = countOf(content);
    if (disc.state.isFull && waiting.readings() + readings > MOST_PENDING) {
      disc.lose(readings);
      return;
    }
    waiting.add(pendingOf(content, zero_s));
    loop.arrange();
  }
  function stats(): SpoolStats {
    const { longest_s: longestToSynced_s, syncs: syncCount } = syncs.seen;
    const { lost, isFull } = disc.state;
    const longestToWritten_s = seen.longest_s;
    return {
      bytes: length,
      writes: seen.writes,
      syncs: syncCount,
      longestToWritten_s,
      longestToSynced_s,
      lost,
      isFull,
    };
  }
  async function close(why: string): Promise<SpoolStats> {
    if (isClosed) return stats();
    append({ kind: 'closed', why });
    isClosed = true;
    await loop.end();
    if (!waiting.isEmpty()) await commit();
    disc.lose(waiting.readings());
    await syncs.finish();
    await file.close();
    return stats();
  }
  return { append, stats, close };
}
