import type { EntryRequest, Row } from '@provinghouse/contract';
import { useSyncExternalStore } from 'react';
import { enter, withdraw } from '../../lib/entry/enter.ts';
import { freshId } from '../../lib/entry/fresh-id.ts';
import type { Fault } from '../../lib/request.ts';
import { text } from '../../lib/text.ts';
import { gaugingId, type ReadingEntry } from './merged-readings.ts';

/** An entry of this window with all that is needed to send it again. */
export interface LogEntry extends ReadingEntry {
  readonly key: string;
  readonly book: string;
  readonly request: Omit<EntryRequest, 'who'>;
  /** What was asked or noted about the reading when it was kept. */
  readonly words: readonly string[];
  readonly fault: Fault | null;
}

const place = 'provinghouse-gauging-refused';
const revisionPlace = 'provinghouse-gauging-taken-back';
const listeners = new Set<() => void>();
let log: readonly LogEntry[] = refusedBefore();

/** Entries of this window in order, and those refused on an earlier visit. */
export function useGaugingLog(): readonly LogEntry[] {
  return useSyncExternalStore(
    (listener) => {
      listeners.add(listener);
      return () => listeners.delete(listener);
    },
    () => log,
  );
}

/** What was refused stays here until somebody deals with it: the outbox hands it to whoever typed it. */
function refusedBefore(): readonly LogEntry[] {
  try {
    // Written below only.
    return JSON.parse(localStorage.getItem(place) ?? '[]') as LogEntry[];
  } catch {
    return [];
  }
}

function change(next: readonly LogEntry[]): void {
  log = next;
  const refused = JSON.stringify(log.filter(({ what, state }) => what === 'readings' && state === 'refused'));
  if (refused !== (localStorage.getItem(place) ?? '[]')) localStorage.setItem(place, refused);
  for (const listener of listeners) listener();
}

interface Readings {
  readonly book: string;
  readonly request: Omit<EntryRequest, 'who'>;
  readonly words?: readonly string[];
}

/** Sends readings on their way, as one entry; they are in this browser's own store before this returns. */
export function keepReadings({ book, request, words = [] }: Readings): void {
  const rows = request.rows.gauging ?? [];
  const first = rows[0];
  if (first === undefined) return;
  const entry: LogEntry = {
    key: freshId(),
    book,
    what: 'readings',
    rows,
    request,
    words,
    state: 'on the way',
    settledAt: null,
    fault: null,
  };
  const label = rows.length === 1 ? text.gaugingDesk.reading(gaugingId(first)) : text.gaugingDesk.pasted(rows.length);
  const outcome = enter({ book, label }, request);
  change([...log, entry]);
  void outcome.then((told) => settle(entry.key, told.kept ? null : told.fault));
}

/** Takes one reading out of the record again, behind everything that is on its way already. */
export function takeBack(book: string, row: Row<'gauging'>, revision: number | null): void {
  const id = gaugingId(row);
  const known = revisions(book);
  const at = revision ?? known[id] ?? 1;
  // A row written anew goes on counting: the withdrawal counts one, the writing another.
  localStorage.setItem(revisionPlace, JSON.stringify({ ...allRevisions(), [book]: { ...known, [id]: at + 2 } }));
  const entry: LogEntry = {
    key: freshId(),
    book,
    what: 'taken back',
    rows: [row],
    request: { rows: {} },
    words: [],
    state: 'on the way',
    settledAt: null,
    fault: null,
  };
  const why = text.gaugingDesk.last.undone;
  const outcome = withdraw(
    { book, label: text.gaugingDesk.last.undoLabel(id) },
    { kind: 'gauging', id, revision: at, why },
  );
  change([...log, entry]);
  void outcome.then((told) => settle(entry.key, told.kept ? null : told.fault));
}

function settle(key: string, fault: Fault | null): void {
  const settledAt = performance.now();
  change(
    log.map((entry) =>
      entry.key === key ? { ...entry, state: fault === null ? 'kept' : 'refused', settledAt, fault } : entry,
    ),
  );
}

/** Drops a refused entry. */
export function letGo(key: string): void {
  change(log.filter((entry) => entry.key !== key));
}

/** Sends a refused entry again, changed or with a reason. */
export function sendAgain(entry: LogEntry, changed: Partial<Omit<EntryRequest, 'who'>>): void {
  letGo(entry.key);
  keepReadings({ book: entry.book, request: { ...entry.request, ...changed }, words: entry.words });
}

type Revisions = Readonly<Record<string, number>>;

function revisions(book: string): Revisions {
  return allRevisions()[book] ?? {};
}

function allRevisions(): Readonly<Record<string, Revisions>> {
  try {
    // Written above only.
    return JSON.parse(localStorage.getItem(revisionPlace) ?? '{}') as Record<string, Revisions>;
  } catch {
    return {};
  }
}
