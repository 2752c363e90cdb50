import { isInputError, type OwnStandard, parseOwnStandard } from '@provinghouse/core';
import { useSyncExternalStore } from 'react';
import { readAt } from './api/address.ts';
import { bench, fileAddress } from './entry/book.ts';
import { onChange } from './entry/change-news.ts';
import { enter, sendFile } from './entry/enter.ts';
import { readRecord } from './request.ts';

const place = 'provinghouse.own-specifications';

let held: readonly OwnStandard[] | null = null;
/** Those kept in the book of the bench. */
let kept: readonly OwnStandard[] = [];
/** Both together, as one list that stays the same until something changes. */
let both: readonly OwnStandard[] | null = null;
const listeners = new Set<() => void>();

/** The own specifications at hand: those of the record, when it brings some, and those brought in on this visit. */
export function useOwnStandards(): readonly OwnStandard[] {
  return useSyncExternalStore(subscribe, ownStandards);
}

export function ownStandards(): readonly OwnStandard[] {
  both ??= [...kept, ...visiting().filter(({ id }) => !kept.some((one) => one.id === id))];
  return both;
}

/** Those brought in on this visit only. */
function visiting(): readonly OwnStandard[] {
  held ??= read();
  return held;
}

function tellAll(): void {
  both = null;
  for (const listener of listeners) listener();
}

/** Holds a specification until the window is closed, in place of one of the same name. */
export function holdOwnStandard(standard: OwnStandard): void {
  change([...visiting().filter(({ id }) => id !== standard.id), standard]);
}

/** Lets go of one by its name. */
export function dropOwnStandard(id: string): void {
  change(visiting().filter((one) => one.id !== id));
}

function change(next: readonly OwnStandard[]): void {
  held = next;
  try {
    sessionStorage.setItem(place, JSON.stringify(next));
  } catch {
    // A browser that keeps nothing still shows it until the page is loaded again.
  }
  tellAll();
}

function subscribe(listener: () => void): () => void {
  if (!isOpen) openOwnStandards();
  listeners.add(listener);
  return () => listeners.delete(listener);
}

/** What an older page wrote and this one cannot read is left out. */
function read(): readonly OwnStandard[] {
  try {
    const stored: unknown = JSON.parse(sessionStorage.getItem(place) ?? '[]');
    return Array.isArray(stored) ? stored.flatMap(sound) : [];
  } catch {
    return [];
  }
}

function sound(json: unknown): readonly OwnStandard[] {
  try {
    return [parseOwnStandard(json, 'a specification of this visit')];
  } catch (error) {
    if (isInputError(error)) return [];
    throw error;
  }
}

const folder = 'specifications/';

let isOpen = false;

/** Reads the specifications kept at the bench, from the first screen that asks on and whenever something of its book was kept. */
function openOwnStandards(): void {
  isOpen = true;
  void readKept();
  onChange((book) => {
    if (book === bench) void readKept();
  });
}

async function readKept(): Promise<void> {
  const files = await readRecord(readAt('/api/bench/files'));
  if (!files.ok) return;
  const paths = files.record.map(({ path }) => path).filter((path) => path.startsWith(folder));
  const found = await Promise.all(paths.map((path) => readRecord<unknown>(fileAddress(bench, path))));
  kept = found.flatMap((reply) => (reply.ok ? sound(reply.record) : []));
  tellAll();
}

/** Keeps a specification in the book of the bench, for every campaign from now on. */
export async function keepOwnStandard(standard: OwnStandard): Promise<{ readonly fault: string | null }> {
  const json = `${JSON.stringify(standard, null, 2)}\n`;
  const sent = await sendFile(new Blob([json], { type: 'application/json' }));
  if (!sent.ok) return { fault: sent.fault.detail };
  const files = [{ path: `${folder}${standard.id}.json`, sha256: sent.record.sha256 }];
  const outcome = await enter({ book: bench, label: standard.title }, { rows: {}, files });
  return { fault: outcome.kept ? null : outcome.fault.detail };
}
