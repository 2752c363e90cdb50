import { flushSync } from 'react-dom';

/** Told one after the other, in the order in which they asked: what unfolds first may hold what is drawn next. */
const told = new Set<() => void>();

let underWay = false;

/** Whether the page is about to be printed or being printed. */
export function isPrinting(): boolean {
  return underWay;
}

/** Calls `act` each time before the page is printed; what it changes stands on the page before the browser goes on. Gives back how to end it. */
export function onPrinting(act: () => void): () => void {
  told.add(act);
  return () => {
    told.delete(act);
  };
}

if (typeof window !== 'undefined') {
  window.addEventListener('beforeprint', () => {
    underWay = true;
    for (const act of [...told]) flushSync(act);
  });
  window.addEventListener('afterprint', () => {
    underWay = false;
  });
}
