import { type Row, type RowHeld, rowId, tables } from '@provinghouse/contract';

/** A reading as this browser knows it. */
export interface ReadingSeen {
  readonly id: string;
  readonly row: Row<'gauging'>;
  readonly state: 'kept' | 'on the way';
  /** The row with its revision, once the record was read after it was kept. */
  readonly held: RowHeld<'gauging'> | null;
}

/** One entry of this window: readings, or the taking back of one. */
export interface ReadingEntry {
  readonly what: 'readings' | 'taken back';
  readonly rows: readonly Row<'gauging'>[];
  readonly state: 'on the way' | 'kept' | 'refused';
  /** When its answer came, on the clock of the window. */
  readonly settledAt: number | null;
}

/** What {@link mergedReadings} works from. */
export interface ReadingSources {
  readonly held: readonly RowHeld<'gauging'>[];
  /** When the held rows were asked for, on the clock of the window. */
  readonly asOf: number;
  /** Entries of this window, in order. */
  readonly entries: readonly ReadingEntry[];
  /** Entries that wait in the browser's outbox, in order: of other windows and earlier visits too. */
  readonly waiting: readonly { readonly url: string; readonly body: unknown; readonly refused: unknown }[];
}

export function gaugingId(row: Row<'gauging'>): string {
  return rowId(tables.gauging, row);
}

/**
 * The readings of a campaign as they stand, the newest last: what the record holds, over it what was kept since it was read, and
 * what is on its way. What was refused is no reading.
 */
export function mergedReadings({ held, asOf, entries, waiting }: ReadingSources): readonly ReadingSeen[] {
  const found = new Map<string, ReadingSeen>(
    held.map((row) => [row.id, { id: row.id, row: row.body, state: 'kept', held: row }]),
  );
  const put = (row: Row<'gauging'>, state: ReadingSeen['state']) => {
    const id = gaugingId(row);
    found.delete(id);
    found.set(id, { id, row, state, held: null });
  };
  for (const { what, rows, state, settledAt } of entries) {
    if (state === 'refused' || (settledAt !== null && settledAt <= asOf)) continue;
    for (const row of rows) {
      if (what === 'taken back') found.delete(gaugingId(row));
      // What the record shows of a row that it has taken is newer than what was sent.
      else if (state === 'on the way' || !found.has(gaugingId(row))) put(row, state);
    }
  }
  for (const { url, body, refused } of waiting) {
    if (refused !== null) continue;
    for (const row of rowsSent(url, body)) put(row, 'on the way');
    const gone = url.endsWith('/withdrawals') && member(body, 'kind') === 'gauging' ? member(body, 'id') : null;
    if (typeof gone === 'string') found.delete(gone);
  }
  return [...found.values()];
}

/** The gauging rows in an entry that waits. The outbox holds only what this browser wrote, in the shape of the contract. */
function rowsSent(url: string, body: unknown): readonly Row<'gauging'>[] {
  const rows = url.endsWith('/records') ? member(member(body, 'rows'), 'gauging') : null;
  return Array.isArray(rows) ? (rows as readonly Row<'gauging'>[]) : [];
}

function member(of: unknown, name: string): unknown {
  return typeof of === 'object' && of !== null ? Reflect.get(of, name) : undefined;
}

/** The last single reading of this window that was neither refused nor taken back. */
export function lastReading(entries: readonly ReadingEntry[]): Row<'gauging'> | null {
  const read: Row<'gauging'>[] = [];
  for (const { what, rows, state } of entries) {
    const [row] = rows;
    if (row === undefined || rows.length > 1 || state === 'refused') continue;
    if (what === 'readings') read.push(row);
    else {
      const at = read.findLastIndex((one) => gaugingId(one) === gaugingId(row));
      if (at >= 0) read.splice(at, 1);
    }
  }
  return read.at(-1) ?? null;
}
