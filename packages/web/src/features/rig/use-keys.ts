import { useEffect, useRef } from 'react';

/** Keys that work anywhere on the page; not while something is typed, and not twice where a key presses the button in focus. */
export function useKeys(keys: Readonly<Record<string, () => void>>): void {
  const latest = useRef(keys);
  latest.current = keys;
  useEffect(() => {
    const onKey = (event: KeyboardEvent) => {
      const act = latest.current[event.key];
      if (!act || event.ctrlKey || event.metaKey || event.altKey || event.repeat || isOwn(event)) return;
      event.preventDefault();
      act();
    };
    window.addEventListener('keydown', onKey);
    return () => window.removeEventListener('keydown', onKey);
  }, []);
}

/** True where the element in focus takes the key itself. */
function isOwn({ target, key }: KeyboardEvent): boolean {
  if (!(target instanceof HTMLElement)) return false;
  const isText = target instanceof HTMLInputElement && target.type === 'text';
  if (isText || target instanceof HTMLTextAreaElement || target instanceof HTMLSelectElement) return true;
  return key === ' ' && target.closest('button, a, input, summary') !== null;
}
