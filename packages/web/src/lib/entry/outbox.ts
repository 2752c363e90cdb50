import { useSyncExternalStore } from 'react';
import { type Fault, faultOf } from '../request.ts';
import { tellChange } from './change-news.ts';

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

const key = 'provinghouse-outbox';
const listeners = new Set<() => void>();
const awaited = new Map<string, (outcome: Outcome) => void>();
let state: Outbox = { waiting: held(), kept: null, isCutOff: false };
let isSending = false;

/** Statuses after which the same entry may well be taken later. */
const passing = new Set([408, 429, 500, 502, 503, 504]);
const retry_ms = 2000;

function held(): Outgoing[] {
  try {
    // Written by this module only; what cannot be read any more cannot be sent either.
    return JSON.parse(localStorage.getItem(key) ?? '[]') as Outgoing[];
  } catch {
    return [];
  }
}

function change(next: Partial<Outbox>): void {
  state = { ...state, ...next };
  for (const listener of listeners) listener();
}

/** Several windows share one list, so each change is made to the list as it stands now. */
function changeList(edit: (list: readonly Outgoing[]) => readonly Outgoing[]): void {
  const waiting = edit(held());
  localStorage.setItem(key, JSON.stringify(waiting));
  change({ waiting });
}

/** Puts an entry on its way; tells what became of it. It is in this browser's own store before this returns. */
export function enqueue(entry: Omit<Outgoing, 'id' | 'refused'>): Promise<Outcome> {
  const id = crypto.randomUUID();
  const outcome = new Promise<Outcome>((resolve) => awaited.set(id, resolve));
  changeList((list) => [...list, { ...entry, id, refused: null }]);
  void sendAll();
  return outcome;
}

/** Takes back an entry that is not kept. */
export function discard(id: string): void {
  changeList((list) => list.filter((one) => one.id !== id));
  awaited.delete(id);
}

/** Sends everything that waits, in the order of entry; one window at a time, so that nothing overtakes. */
export async function sendAll(): Promise<void> {
  if (isSending) return;
  isSending = true;
  try {
    await navigator.locks.request(key, sendInTurn);
  } finally {
    isSending = false;
  }
  if (next() !== undefined) setTimeout(() => void sendAll(), retry_ms);
}

function next(): Outgoing | undefined {
  return held().find((one) => one.refused === null);
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
    changeList((list) => list.filter((one) => one.id !== id));
    change({ isCutOff: false, kept: { book, ledgerSeq: outcome.answer.ledgerSeq, label } });
    tellChange(book);
  } else {
    // A screen that still waits for this answer shows the fault where it was typed; one that was left is answered here.
    const refuse = (one: Outgoing) => (one.id === id ? { ...one, refused: outcome.fault } : one);
    changeList((list) => (awaited.has(id) ? list.filter((one) => one.id !== id) : list.map(refuse)));
    change({ isCutOff: false });
  }
  awaited.get(id)?.(outcome);
  awaited.delete(id);
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
  window.addEventListener('online', () => void sendAll());
  window.addEventListener('storage', (event) => {
    if (event.key === key) change({ waiting: held() });
  });
  void sendAll();
}
