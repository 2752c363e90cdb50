import type { WatchSample } from '@provinghouse/core';
import { type Gap, type SampleBuilder, sampleBuilder } from '../clock/sample-builder.ts';
import type { SpoolEntry, SpoolHeader } from './spool-entry.ts';
import { readSpool, type SpoolFinding } from './spool-reader.ts';

/** Something said or marked during the pull. */
export interface TimedWords {
  readonly time_s: number;
  readonly words: string;
}

/** Everything a spool has to say beside its samples. */
export interface SpoolAccount {
  /** Null when no whole header was left; then nothing else can be read. */
  readonly header: SpoolHeader | null;
  /** Simulated, by the header or by what a source says of itself. */
  readonly isPractice: boolean;
  readonly samples: number;
  readonly readings: number;
  readonly rejected: number;
  readonly rejectedBytes: number;
  /** Times without force readings, and readings known to be lost. */
  readonly gaps: readonly Gap[];
  readonly marks: readonly TimedWords[];
  readonly troubles: readonly TimedWords[];
  /** Bytes after the last whole frame. */
  readonly tornBytes: number;
  readonly damagedBytes: number;
  /** False when the record broke off: a killed process, a power cut. */
  readonly isClosed: boolean;
  readonly closedWhy: string | null;
  readonly resumed: number;
  /** Of the last whole frame; null when there is none. */
  readonly last_s: number | null;
  /** All of the above that somebody should know, in plain words. */
  readonly notes: readonly string[];
}

interface Tally {
  header: SpoolHeader | null;
  isPractice: boolean;
  samples: number;
  readings: number;
  rejected: number;
  rejectedBytes: number;
  gaps: Gap[];
  marks: TimedWords[];
  troubles: TimedWords[];
  tornBytes: number;
  damagedBytes: number;
  closedWhy: string | null;
  resumed: number;
  last_s: number | null;
  lastSample_s: number | null;
  openGap: { from_s: number; why: string } | null;
}

function emptyTally(): Tally {
  return {
    header: null,
    isPractice: false,
    samples: 0,
    readings: 0,
    rejected: 0,
    rejectedBytes: 0,
    gaps: [],
    marks: [],
    troubles: [],
    tornBytes: 0,
    damagedBytes: 0,
    closedWhy: null,
    resumed: 0,
    last_s: null,
    lastSample_s: null,
    openGap: null,
  };
}

function count(n: number, one: string, many = `${one}s`): string {
  return `${n} ${n === 1 ? one : many}`;
}

function notesOf(tally: Omit<Tally, 'openGap' | 'lastSample_s'>): readonly string[] {
  const notes: string[] = [];
  if (tally.isPractice) notes.push('Practice: simulated, not the record of a real piece.');
  if (!tally.header) notes.push('No whole header is left, so nothing of this record can be read.');
  if (tally.closedWhy === null && tally.last_s !== null)
    notes.push(
      `The record breaks off at ${tally.last_s.toFixed(3)} s without having been closed; what came in the last 100 ms may be missing.`,
    );
  if (tally.tornBytes > 0)
    notes.push(`${count(tally.tornBytes, 'byte')} of an unfinished frame at the end were left out.`);
  if (tally.damagedBytes > 0)
    notes.push(`${count(tally.damagedBytes, 'byte')} inside the record are damaged and were left out.`);
  for (const { from_s, to_s, why } of tally.gaps)
    notes.push(`Gap from ${from_s.toFixed(3)} s to ${to_s.toFixed(3)} s: ${why}.`);
  if (tally.rejected > 0)
    notes.push(
      `${count(tally.rejected, 'piece')} of ${count(tally.rejectedBytes, 'byte')} could not be read and are kept as they came.`,
    );
  return notes;
}

/** A copy of the tally; a gap that is still open reaches to the last frame. */
function accountOf({ lastSample_s: _, openGap, ...tally }: Tally): SpoolAccount {
  const open = openGap ? [{ ...openGap, to_s: tally.last_s ?? openGap.from_s }] : [];
  const plain = {
    ...tally,
    gaps: [...tally.gaps, ...open],
    marks: [...tally.marks],
    troubles: [...tally.troubles],
  };
  return { ...plain, isClosed: tally.closedWhy !== null, notes: notesOf(plain) };
}

/** Adds up a record as it is read, or as it is written: the same account either way. */
export interface Accountant {
  entry(entry: SpoolEntry): readonly WatchSample[];
  finding(finding: SpoolFinding): readonly WatchSample[];
  /** What was still waited for. */
  flush(): readonly WatchSample[];
  account(): SpoolAccount;
}

/** What happened as an entry was taken in, for those who watch. */
export interface AccountNews {
  gap?(gap: Gap): void;
  trouble?(words: string, time_s: number): void;
}

/** Takes in an entry that changes neither samples nor gaps. */
function tallyWords(tally: Tally, found: SpoolEntry): void {
  const { time_s } = found;
  if (found.kind === 'rejected') {
    tally.rejected++;
    tally.rejectedBytes += found.bytes.length;
  } else if (found.kind === 'mark') tally.marks.push({ time_s, words: found.words });
  else if (found.kind === 'practice') tally.isPractice = true;
  else if (found.kind === 'trouble') tally.troubles.push({ time_s, words: found.words });
}

/** Gaps: those that are over, and one that ends with the next sample. */
function gapTally(tally: Tally, news: AccountNews) {
  function tell(gap: Gap): void {
    tally.gaps.push(gap);
    news.gap?.(gap);
  }
  return {
    tell,
    open(why: string): void {
      tally.openGap ??= { from_s: tally.lastSample_s ?? 0, why };
    },
    end(to_s: number): void {
      if (tally.openGap) tell({ ...tally.openGap, to_s });
      tally.openGap = null;
    },
  };
}

/** Adds up a record from its entries, or from what is found in its spool. */
export function accountant(news: AccountNews = {}): Accountant {
  const tally = emptyTally();
  const gaps = gapTally(tally, news);
  let builder: SampleBuilder | null = null;

  function clockJump(source: string, jumped_s: number, time_s: number): void {
    const words = `The clock of ${source} jumped by ${jumped_s.toFixed(3)} s.`;
    tally.troubles.push({ time_s, words });
    news.trouble?.(words, time_s);
  }
  function open(header: SpoolHeader): void {
    tally.header = header;
    tally.isPractice ||= header.isPractice;
    // Of a record gone on with, nothing is laid before what it holds, whatever the source's clock says.
    const before =
      builder && tally.lastSample_s !== null ? { clocks: builder.clocks, last_s: tally.lastSample_s } : undefined;
    builder = sampleBuilder(header.sources, { gap: gaps.tell, clockJump }, before);
  }
  function given(samples: readonly WatchSample[]): readonly WatchSample[] {
    const first = samples[0];
    if (first) gaps.end(first.time_s);
    tally.samples += samples.length;
    tally.lastSample_s = samples.at(-1)?.time_s ?? tally.lastSample_s;
    return samples;
  }
  function flush(): readonly WatchSample[] {
    return builder ? given(builder.flush()) : [];
  }
  function breakOff(why: string): readonly WatchSample[] {
    const rest = flush();
    gaps.open(why);
    return rest;
  }
  function resume(): readonly WatchSample[] {
    const rest = breakOff('the record broke off and was taken up again');
    if (tally.header) open(tally.header);
    tally.resumed++;
    tally.closedWhy = null;
    return rest;
  }
  function entry(found: SpoolEntry): readonly WatchSample[] {
    tally.last_s = found.time_s;
    tallyWords(tally, found);
    if (found.kind === 'header' && !tally.header) open(found.header);
    if (found.kind === 'readings') {
      tally.readings += found.readings.length;
      return builder ? given(builder.add(found.source, found.readings)) : [];
    }
    if (found.kind === 'resumed') return resume();
    if (found.kind === 'lost') return breakOff(`${count(found.readings, 'reading')} lost: ${found.why}`);
    if (found.kind !== 'closed') return [];
    tally.closedWhy = found.why;
    return flush();
  }
  function finding(found: SpoolFinding): readonly WatchSample[] {
    if (found.kind === 'entry') return entry(found.entry);
    if (found.kind === 'torn') tally.tornBytes += found.bytes;
    if (found.kind === 'torn') return [];
    tally.damagedBytes += found.bytes;
    return breakOff(`${count(found.lostFrames, 'frame')} damaged on disc`);
  }
  return { entry, finding, flush, account: () => accountOf(tally) };
}

/**
 * Reads a whole spool, handing samples on as they are built.
 * @param passed told how many bytes of the spool are behind
 * @throws InputError spool/unreadable when the file cannot be opened; never for what is in it
 */
export async function readAccount(
  path: string,
  samples: (batch: readonly WatchSample[]) => void | Promise<void>,
  passed: (bytes: number) => void = () => {},
): Promise<SpoolAccount> {
  const accounts = accountant();
  for await (const finding of readSpool(path)) {
    if (finding.kind === 'entry') passed(finding.end);
    const batch = accounts.finding(finding);
    if (batch.length > 0) await samples(batch);
  }
  const rest = accounts.flush();
  if (rest.length > 0) await samples(rest);
  return accounts.account();
}
