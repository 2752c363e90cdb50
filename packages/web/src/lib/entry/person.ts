import { useSyncExternalStore } from 'react';

/** Who is at this bench now: a short name, remembered by this browser and written beside everything that is entered. */
const key = 'provinghouse-person';
const listeners = new Set<() => void>();

export function personHere(): string | null {
  return localStorage.getItem(key);
}

export function setPersonHere(person: string): void {
  localStorage.setItem(key, person);
  for (const listener of listeners) listener();
}

function subscribe(listener: () => void): () => void {
  listeners.add(listener);
  window.addEventListener('storage', listener);
  return () => {
    listeners.delete(listener);
    window.removeEventListener('storage', listener);
  };
}

/** The person at this bench; null until somebody has said who it is. */
export function usePerson(): string | null {
  return useSyncExternalStore(subscribe, personHere);
}
