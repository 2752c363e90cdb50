import { isInputError, type OwnStandard, parseOwnStandard } from '@provinghouse/core';
import { useSyncExternalStore } from 'react';

const place = 'provinghouse.own-specifications';

let held: readonly OwnStandard[] | null = null;
const listeners = new Set<() => void>();

/** The own specifications at hand: those of the record, when it brings some, and those brought in on this visit. */
export function useOwnStandards(): readonly OwnStandard[] {
  return useSyncExternalStore(subscribe, ownStandards);
}

export function ownStandards(): readonly OwnStandard[] {
  held ??= read();
  return held;
}

/** Holds a specification until the window is closed, in place of one of the same name. */
export function holdOwnStandard(standard: OwnStandard): void {
  change([...ownStandards().filter(({ id }) => id !== standard.id), standard]);
}

/** Lets go of one by its name. */
export function dropOwnStandard(id: string): void {
  change(ownStandards().filter((one) => one.id !== id));
}

function change(next: readonly OwnStandard[]): void {
  held = next;
  try {
    sessionStorage.setItem(place, JSON.stringify(next));
  } catch {
    // A browser that keeps nothing still shows it until the page is loaded again.
  }
  for (const listener of listeners) listener();
}

function subscribe(listener: () => void): () => void {
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
