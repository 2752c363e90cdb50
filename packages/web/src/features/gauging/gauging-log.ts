import type { EntryRequest, Row } from '@provinghouse/contract';
import { useSyncExternalStore } from 'react';
import { enter, withdraw } from '../../lib/entry/enter.ts';
import { freshId } from '../../lib/entry/fresh-id.ts';
import { StoredList } from '../../lib/entry/stored-list.ts';
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

/** What was refused stays here until somebody deals with it: the outbox hands it to whoever typed it. */
const refused = new StoredList<LogEntry>('provinghouse-gauging-refused');
const revisionPlace = (book: string, id: string) => `provinghouse-gauging-taken-back ${book} ${id}`;
const listeners = new Set<() => void>();
let log: readonly LogEntry[] = refused.all();

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

function change(next: readonly LogEntry[]): void {
  log = next;
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
  const place = revisionPlace(book, id);
  const at = revision ?? Number(localStorage.getItem(place) ?? 1);
  // A row written anew goes on counting: the withdrawal counts one, the writing another.
  localStorage.setItem(place, `${at + 2}`);
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
  const settled = log.map(
    (entry): LogEntry =>
      entry.key === key ? { ...entry, state: fault === null ? 'kept' : 'refused', settledAt, fault } : entry,
  );
  for (const entry of settled)
    if (entry.key === key && entry.what === 'readings' && fault !== null) refused.put(key, entry);
  change(settled);
}

/** Drops a refused entry. */
export function letGo(key: string): void {
  refused.remove(key);
  change(log.filter((entry) => entry.key !== key));
}

/** Sends a refused entry again, changed or with a reason. */
export function sendAgain(entry: LogEntry, changed: Partial<Omit<EntryRequest, 'who'>>): void {
  letGo(entry.key);
  keepReadings({ book: entry.book, request: { ...entry.request, ...changed }, words: entry.words });
}
