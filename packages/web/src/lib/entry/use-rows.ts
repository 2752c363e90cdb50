import type { RowHeld, RowsHeld, TableName } from '@provinghouse/contract';
import { useCallback } from 'react';
import { type Fault, type Reply, readRecord } from '../request.ts';
import { bookAddress } from './book.ts';
import { type HeldState, useHeld } from './use-held.ts';

export type RowsState<T extends TableName> = HeldState<RowHeld<T>>;

const pageSize = 1000;

/** All rows of one table of a book with their revisions, page by page. */
export function useRows<T extends TableName>(book: string, kind: T): RowsState<T> {
  return useHeld(
    book,
    kind,
    useCallback(() => readRows<T>(book, kind), [book, kind]),
  );
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
