import { useEffect, useRef } from 'react';

/** Arrow keys walk from row to row while the link of a row has the focus; Enter opens it, as any link. */
export function useRowKeys() {
  const table = useRef<HTMLTableElement>(null);
  useEffect(() => {
    const element = table.current;
    if (element === null) return;
    const onKey = (event: KeyboardEvent) => {
      const step = event.key === 'ArrowDown' ? 1 : event.key === 'ArrowUp' ? -1 : 0;
      const links = [...element.querySelectorAll('a')];
      const at = links.indexOf(document.activeElement as HTMLAnchorElement); // indexOf takes any element; -1 for others
      const next = at < 0 || step === 0 ? undefined : links[at + step];
      if (!next) return;
      event.preventDefault();
      next.focus();
    };
    element.addEventListener('keydown', onKey);
    return () => element.removeEventListener('keydown', onKey);
  }, []);
  return table;
}
