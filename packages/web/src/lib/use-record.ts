import { useCallback, useEffect, useState } from 'react';
import type { Address } from './api/address.ts';
import { onChange } from './entry/change-news.ts';
import { type Fault, heldRecord, readRecord } from './request.ts';

export type RecordState<T> =
  | { readonly state: 'reading' }
  | { readonly state: 'at fault'; readonly fault: Fault; readonly again: () => void }
  | { readonly state: 'read'; readonly record: T; readonly again: () => void };

type Seen<T> = { readonly url: string; readonly result: { readonly record: T } | { readonly fault: Fault } } | null;

/** Whether a record at an address tells of a book. */
function tellsOf(url: string, book: string): boolean {
  const [path = ''] = url.split('?');
  const own = `/api/campaigns/${encodeURIComponent(book)}`;
  return path === '/api/campaigns' || path === own || path.startsWith(`${own}/`);
}

/**
 * Reads a record when the address changes; shows the one last read meanwhile, and asks again when something of its campaign was kept or
 * the window comes back to the front.
 */
export function useRecord<T>(at: Address<T> | string): RecordState<T> {
  const url = typeof at === 'string' ? at : at.url;
  const [seen, setSeen] = useState<Seen<T>>(null);
  const read = useCallback(async () => {
    const reply = await readRecord<T>(url);
    setSeen({ url, result: reply.ok ? { record: reply.record } : { fault: reply.fault } });
  }, [url]);
  useEffect(() => {
    void read();
    const onFront = () => {
      if (document.visibilityState === 'visible') void read();
    };
    const off = onChange((book) => {
      if (tellsOf(url, book)) void read();
    });
    document.addEventListener('visibilitychange', onFront);
    return () => {
      off();
      document.removeEventListener('visibilitychange', onFront);
    };
  }, [read, url]);
  const again = useCallback(() => void read(), [read]);
  const held = heldRecord<T>(url);
  if (seen?.url === url && 'fault' in seen.result) return { state: 'at fault', fault: seen.result.fault, again };
  if (held !== undefined) return { state: 'read', record: held, again };
  return { state: 'reading' };
}

/** The record as last read, and read again as `useRecord` does; null before the first time. For what a screen does not wait for. */
export function useRecordIfAny<T>(at: Address<T> | string): T | null {
  const state = useRecord(at);
  return state.state === 'read' ? state.record : (heldRecord<T>(at) ?? null);
}
