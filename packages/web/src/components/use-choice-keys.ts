import { useEffect, useRef } from 'react';
import { flushSync } from 'react-dom';

/** Keys that choose something on the page, in small letters: `c`, `3`, `enter`. Not while something is typed, nor while a sheet lies over the page. */
export function useChoiceKeys(keys: Readonly<Record<string, () => void>>): void {
  const latest = useRef(keys);
  latest.current = keys;
  useEffect(() => {
    const onKey = (event: KeyboardEvent) => {
      const act = latest.current[event.key.toLowerCase()];
      if (!act || event.defaultPrevented || event.ctrlKey || event.metaKey || event.altKey || event.repeat) return;
      if (isTaken(event)) return;
      event.preventDefault();
      // Keys follow each other faster than a page is drawn: each must see what the one before chose.
      flushSync(act);
    };
    window.addEventListener('keydown', onKey);
    return () => window.removeEventListener('keydown', onKey);
  }, []);
}

/** True where the element in focus, or an open sheet, takes the key itself. */
function isTaken({ target, key }: KeyboardEvent): boolean {
  if (document.querySelector('dialog[open]') !== null) return true;
  if (!(target instanceof HTMLElement)) return false;
  if (target.closest('textarea, select, [contenteditable="true"]') !== null) return true;
  const isTyped = target instanceof HTMLInputElement && !['radio', 'checkbox', 'file'].includes(target.type);
  if (isTyped) return true;
  return (key === 'Enter' || key === ' ') && target.closest('button, a, input, summary') !== null;
}
