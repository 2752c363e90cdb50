import { useCallback, useEffect, useState } from 'react';
import { type Fault, heldRecord, readRecord } from './request.ts';

export type RecordState<T> =
  | { readonly state: 'reading' }
  | { readonly state: 'at fault'; readonly fault: Fault; readonly again: () => void }
  | { readonly state: 'read'; readonly record: T };

type Seen<T> = { readonly url: string; readonly result: { readonly record: T } | { readonly fault: Fault } } | null;

/** Reads a record when the address changes; shows the one last read meanwhile, and asks again when the window comes back to the front. */
export function useRecord<T>(url: string): RecordState<T> {
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
    document.addEventListener('visibilitychange', onFront);
    return () => document.removeEventListener('visibilitychange', onFront);
  }, [read]);
  const held = heldRecord<T>(url);
  if (seen?.url === url && 'fault' in seen.result)
    return { state: 'at fault', fault: seen.result.fault, again: () => void read() };
  if (held !== undefined) return { state: 'read', record: held };
  return { state: 'reading' };
}
