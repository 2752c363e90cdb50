import type { RowHeld, RowsHeld, TableName } from '@provinghouse/contract';
import { useCallback, useEffect, useState } from 'react';
import { type Fault, type Reply, readRecord } from '../request.ts';
import { bookAddress } from './book.ts';
import { onChange } from './change-news.ts';

export type RowsState<T extends TableName> =
  | { readonly state: 'reading' }
  | { readonly state: 'at fault'; readonly fault: Fault; readonly again: () => void }
  | { readonly state: 'read'; readonly rows: readonly RowHeld<T>[]; readonly again: () => void };

const pageSize = 1000;

type Seen<T extends TableName> = {
  readonly of: string;
  readonly result: { readonly rows: readonly RowHeld<T>[] } | { readonly fault: Fault };
} | null;

/** All rows of one table of a book with their revisions, page by page; read again whenever something of the book was kept, here or in another window. */
export function useRows<T extends TableName>(book: string, kind: T): RowsState<T> {
  const of = `${book}\n${kind}`;
  const [seen, setSeen] = useState<Seen<T>>(null);
  const read = useCallback(async () => {
    const result = await readRows<T>(book, kind);
    setSeen({ of, result });
  }, [book, kind, of]);
  useEffect(() => {
    void read();
    const onFront = () => {
      if (document.visibilityState === 'visible') void read();
    };
    const off = onChange((changed) => {
      if (changed === book) void read();
    });
    document.addEventListener('visibilitychange', onFront);
    return () => {
      off();
      document.removeEventListener('visibilitychange', onFront);
    };
  }, [read, book]);
  if (seen?.of !== of) return { state: 'reading' };
  const again = () => void read();
  if ('fault' in seen.result) return { state: 'at fault', fault: seen.result.fault, again };
  return { state: 'read', rows: seen.result.rows, again };
}

/** All rows of one table of a book, once. */
export async function readRows<T extends TableName>(
  book: string,
  kind: T,
): Promise<{ readonly rows: readonly RowHeld<T>[] } | { readonly fault: Fault }> {
  const rows: RowHeld<T>[] = [];
  for (let after: number | null = -1; after !== null; ) {
    const url: string = `${bookAddress(book)}/records/${kind}?after=${after}&limit=${pageSize}`;
    const reply: Reply<RowsHeld<T>> = await readRecord<RowsHeld<T>>(url);
    if (!reply.ok) return { fault: reply.fault };
    rows.push(...reply.record.rows);
    after = reply.record.next;
  }
  return { rows };
}
