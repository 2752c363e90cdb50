/** Tells the screens of this window, and of every other window on this record, that something of a book was kept. */

type Listener = (book: string) => void;

const listeners = new Set<Listener>();
const others = typeof BroadcastChannel === 'undefined' ? null : new BroadcastChannel('provinghouse-changes');

others?.addEventListener('message', ({ data }: MessageEvent<unknown>) => {
  if (typeof data === 'string') tellHere(data);
});

function tellHere(book: string): void {
  for (const listener of listeners) listener(book);
}

export function tellChange(book: string): void {
  tellHere(book);
  others?.postMessage(book);
}

export function onChange(listener: Listener): () => void {
  listeners.add(listener);
  return () => listeners.delete(listener);
}
