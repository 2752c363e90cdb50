import type { OwnStandard } from '@provinghouse/core';
import { useCallback, useMemo, useSyncExternalStore } from 'react';
import { bench } from './entry/book.ts';
import { onChange } from './entry/change-news.ts';
import { enter, sendFile } from './entry/enter.ts';
import { type HeldState, useHeld } from './entry/use-held.ts';
import { firstOfEachName, readStandards, soundStandard, specificationFolder } from './standards-held.ts';

const place = 'provinghouse.own-specifications';

let held: readonly OwnStandard[] | null = null;
/** Those kept in the book of the bench. */
let kept: readonly OwnStandard[] = [];
/** Both together, as one list that stays the same until something changes. */
let both: readonly OwnStandard[] | null = null;
const listeners = new Set<() => void>();

/** The own specifications of no campaign: those kept at the bench, then those brought in on this visit. */
export function useOwnStandards(): readonly OwnStandard[] {
  return useSyncExternalStore(subscribe, ownStandards);
}

function ownStandards(): readonly OwnStandard[] {
  both ??= firstOfEachName([...kept, ...visiting()]);
  return both;
}

/**
 * The own specifications of a campaign: its own files, by which it is judged, then those of the bench, which go into it with the product
 * that is claimed by them. A screen of a campaign asks here and nowhere else.
 */
export function useStandardsOf(campaign: string): HeldState<OwnStandard> {
  const others = useOwnStandards();
  const ask = useCallback(() => readStandards(campaign), [campaign]);
  const held = useHeld(campaign, 'specifications', ask);
  const own = held.state === 'read' ? held.rows : null;
  const all = useMemo(() => firstOfEachName([...(own ?? []), ...others]), [own, others]);
  return held.state === 'read' ? { ...held, rows: all } : held;
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
    return Array.isArray(stored) ? stored.flatMap((json) => soundStandard(json, 'a specification of this visit')) : [];
  } catch {
    return [];
  }
}

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
  const found = await readStandards(bench);
  if ('fault' in found) return;
  kept = found.rows;
  tellAll();
}

/** Keeps a specification in the book of the bench, for every campaign from now on. */
export async function keepOwnStandard(standard: OwnStandard): Promise<{ readonly fault: string | null }> {
  const json = `${JSON.stringify(standard, null, 2)}\n`;
  const sent = await sendFile(new Blob([json], { type: 'application/json' }));
  if (!sent.ok) return { fault: sent.fault.detail };
  const files = [{ path: `${specificationFolder}${standard.id}.json`, sha256: sent.record.sha256 }];
  const outcome = await enter({ book: bench, label: standard.title }, { rows: {}, files });
  return { fault: outcome.kept ? null : outcome.fault.detail };
}
