import { useSyncExternalStore } from 'react';
import { type Fault, faultOf } from '../request.ts';
import { text } from '../text.ts';
import { tellChange } from './change-news.ts';
import { freshId } from './fresh-id.ts';
import { StoredList } from './stored-list.ts';

/** Something entered that is on its way into the record. It stays in this browser until the ledger has it or somebody takes it back. */
export interface Outgoing {
  readonly id: string;
  readonly book: string;
  readonly url: string;
  readonly body: unknown;
  /** What it is, in the words a person would look for it by. */
  readonly label: string;
  /** Why the record refused it; null while it waits. */
  readonly refused: Fault | null;
}

export interface Outbox {
  readonly waiting: readonly Outgoing[];
  /** Places in the ledger of what was kept last, by book. */
  readonly kept: { readonly book: string; readonly ledgerSeq: number; readonly label: string } | null;
  /** True when the last attempt got no answer. */
  readonly isCutOff: boolean;
}

/** What became of an entry. The answer of the server is handed on as it came. */
export type Outcome =
  | { readonly kept: true; readonly answer: { readonly ledgerSeq: number; readonly revision?: number } }
  | { readonly kept: false; readonly fault: Fault };

const list = new StoredList<Outgoing>('provinghouse-outbox');
const listeners = new Set<() => void>();
/** Entries of this window whose outcome is waited for. */
const awaited = new Map<string, (outcome: Outcome) => void>();
/** Of those, the ones whose screen is still there to show a refusal where it was typed. */
const shown = new Set<string>();
const outcomes = typeof BroadcastChannel === 'undefined' ? null : new BroadcastChannel('provinghouse-outcomes');
let state: Outbox = { waiting: list.all(), kept: null, isCutOff: false };
let isSending = false;

/** Statuses after which the same entry may well be taken later. */
const passing = new Set([408, 429, 500, 502, 503, 504]);
const retry_ms = 2000;

function change(next: Partial<Outbox>): void {
  state = { ...state, ...next };
  for (const listener of listeners) listener();
}

function put(entry: Outgoing): boolean {
  const isHeld = list.put(entry.id, entry);
  change({ waiting: list.all() });
  return isHeld;
}

function remove(id: string): void {
  list.remove(id);
  change({ waiting: list.all() });
}

/**
 * Puts an entry on its way; tells what became of it. It is in this browser's own store before this returns. Where the store is full, the
 * entry is refused and stays on the screen where it was typed.
 */
export function enqueue(entry: Omit<Outgoing, 'id' | 'refused'>): Promise<Outcome> {
  const id = freshId();
  const outcome = new Promise<Outcome>((resolve) => awaited.set(id, resolve));
  shown.add(id);
  if (!put({ ...entry, id, refused: null }))
    tell(id, { kept: false, fault: { code: 'browser-full', detail: text.entry.kept.full(state.waiting.length) } });
  void sendAll();
  return outcome;
}

/** The screen was left: a refusal that comes now is kept in the list until somebody has seen it. */
export function leaveScreen(): void {
  shown.clear();
}

/** Takes back an entry that is not kept. */
export function discard(id: string): void {
  remove(id);
  awaited.delete(id);
}

/** Sends everything that waits, in the order of entry; one window at a time, so that nothing overtakes. */
export async function sendAll(): Promise<void> {
  if (isSending) return;
  isSending = true;
  try {
    // Without locks (see freshId) two windows may send one entry twice, which the record takes as once.
    if ('locks' in navigator) await navigator.locks.request('provinghouse-outbox', sendInTurn);
    else await sendInTurn();
  } finally {
    isSending = false;
  }
  // What was entered while the last answer came is sent at once.
  if (next() !== undefined) setTimeout(() => void sendAll(), state.isCutOff ? retry_ms : 0);
}

function next(): Outgoing | undefined {
  return list.all().find((one) => one.refused === null);
}

async function sendInTurn(): Promise<void> {
  for (let entry = next(); entry !== undefined; entry = next()) {
    const outcome = await sendOne(entry);
    if (outcome === null) return change({ isCutOff: true });
    settle(entry, outcome);
  }
}

async function sendOne({ url, body }: Outgoing): Promise<Outcome | null> {
  try {
    const headers = { 'content-type': 'application/json' };
    const reply = await fetch(url, { method: 'POST', cache: 'no-store', headers, body: JSON.stringify(body) });
    if (passing.has(reply.status)) return null;
    if (!reply.ok) return { kept: false, fault: await faultOf(reply) };
    return { kept: true, answer: await reply.json() };
  } catch {
    return null;
  }
}

function settle(entry: Outgoing, outcome: Outcome): void {
  const { id, book, label } = entry;
  if (outcome.kept) {
    remove(id);
    change({ isCutOff: false, kept: { book, ledgerSeq: outcome.answer.ledgerSeq, label } });
    tellChange(book);
  } else {
    put({ ...entry, refused: outcome.fault });
    change({ isCutOff: false });
  }
  tell(id, outcome);
  outcomes?.postMessage({ id, outcome, kept: state.kept });
}

/** Hands an outcome to whoever waits for it in this window. A refusal that a screen shows where it was typed need not stand in the list, too. */
function tell(id: string, outcome: Outcome): void {
  const resolve = awaited.get(id);
  if (!resolve) return;
  awaited.delete(id);
  if (shown.delete(id) && !outcome.kept) remove(id);
  resolve(outcome);
}

interface ToldOutcome {
  readonly id: string;
  readonly outcome: Outcome;
  readonly kept: Outbox['kept'];
}

/** Another window sent an entry of this one. */
function onOutcome({ data }: MessageEvent<ToldOutcome>): void {
  if (!awaited.has(data.id)) return;
  if (data.outcome.kept) change({ waiting: list.all(), kept: data.kept, isCutOff: false });
  tell(data.id, data.outcome);
}

function subscribe(listener: () => void): () => void {
  listeners.add(listener);
  return () => listeners.delete(listener);
}

export function useOutbox(): Outbox {
  return useSyncExternalStore(subscribe, () => state);
}

/** Begins the sending of what an earlier visit left, and goes on when the network is back or another window changed the list. */
export function openOutbox(): void {
  outcomes?.addEventListener('message', onOutcome);
  window.addEventListener('online', () => void sendAll());
  window.addEventListener('storage', (event) => {
    if (list.holds(event.key)) change({ waiting: list.all() });
  });
  void sendAll();
}
