import { createContext, useCallback, useEffect, useMemo, useState } from 'react';
import { isPrinting, onPrinting } from '../../lib/printing.ts';

/** Which parts of the page stand open. */
export interface Folds {
  readonly isOpen: (id: string, startsOpen: boolean) => boolean;
  readonly set: (id: string, open: boolean) => void;
  /** Every part, those never touched too. */
  readonly setAll: (open: boolean) => void;
}

export const FoldsContext = createContext<Folds>({
  isOpen: (_, startsOpen) => startsOpen,
  set: () => undefined,
  setAll: () => undefined,
});

interface Kept {
  readonly all: boolean | null;
  readonly parts: Readonly<Record<string, boolean>>;
}

const untouched: Kept = { all: null, parts: {} };

/**
 * The folds of a page, kept for the visit; a part named after the # of the address is opened and shown, once all parts are made, and
 * print opens all.
 */
export function useFolds(page: string, isWhole: boolean): Folds {
  const key = `provinghouse-folds ${page}`;
  const [kept, setKept] = useState(() => readKept(key));
  const [forPrint, setForPrint] = useState(isPrinting);
  const keep = useCallback(
    (change: (before: Kept) => Kept) =>
      setKept((before) => {
        const after = change(before);
        sessionStorage.setItem(key, JSON.stringify(after));
        return after;
      }),
    [key],
  );
  const set = useCallback(
    (id: string, open: boolean) => keep(({ all, parts }) => ({ all, parts: { ...parts, [id]: open } })),
    [keep],
  );
  const setAll = useCallback((open: boolean) => keep(() => ({ all: open, parts: {} })), [keep]);
  useAnchor(set, isWhole);
  useEffect(() => {
    const end = () => setForPrint(false);
    window.addEventListener('afterprint', end);
    const off = onPrinting(() => setForPrint(true));
    return () => {
      window.removeEventListener('afterprint', end);
      off();
    };
  }, []);
  return useMemo(
    () => ({
      isOpen: (id, startsOpen) => forPrint || (kept.parts[id] ?? kept.all ?? startsOpen),
      set,
      setAll,
    }),
    [kept, forPrint, set, setAll],
  );
}

/** Opens the part that the address names, now and when it changes, and sets the reader down at it. */
function useAnchor(set: Folds['set'], isWhole: boolean): void {
  useEffect(() => {
    if (!isWhole) return;
    const go = () => {
      const id = decodeURIComponent(window.location.hash.slice(1));
      if (id !== '') showPart(id, set);
    };
    go();
    window.addEventListener('hashchange', go);
    return () => window.removeEventListener('hashchange', go);
  }, [set, isWhole]);
}

/** Opens a part and puts the focus on its label, once it stands on the page. */
export function showPart(id: string, set: Folds['set']): void {
  if (document.getElementById(id) === null) return;
  set(id, true);
  requestAnimationFrame(() => {
    const part = document.getElementById(id);
    part?.scrollIntoView();
    part?.querySelector('summary')?.focus({ preventScroll: true });
  });
}

function readKept(key: string): Kept {
  try {
    const found: unknown = JSON.parse(sessionStorage.getItem(key) ?? 'null');
    return isKept(found) ? found : untouched;
  } catch {
    return untouched;
  }
}

function isKept(found: unknown): found is Kept {
  return typeof found === 'object' && found !== null && 'parts' in found && typeof found.parts === 'object';
}
