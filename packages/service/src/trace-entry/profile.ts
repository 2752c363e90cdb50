import type { ColumnsAsked, Row, TracePreview } from '@provinghouse/contract';
import { type HeaderCell, isInputError, readTraceHeader } from '@provinghouse/core';
import { type Database, heldRows } from '@provinghouse/store';
import { isSameHeader } from './column-questions.ts';

export interface Profile {
  readonly columns: ColumnsAsked;
  readonly of: TracePreview['profile'];
}

/** Enough of a file to find its header in: a preamble is a few lines. */
const headBytes = 64 * 1024;

/** Recordings looked at, the newest first; a rig that writes so many kinds of file in between has no habit to go by. */
const recordingsTried = 40;

export const byHeader: ColumnsAsked = { time: null, force: null, table: null, extension: null };

/**
 * The columns of the newest recording of that rig, in any campaign of the record, whose file has the same header. Where its columns were left
 * to the header, so are these.
 */
export async function profileOf(rig: string, cells: readonly HeaderCell[], store: Database): Promise<Profile | null> {
  const recordings = await recordingsOf(rig, store);
  for (const { campaign, row } of recordings.slice(0, recordingsTried)) {
    const head = await headOf(campaign, row.trace ?? '', store);
    if (head === null || !isSameHeader(head, cells)) continue;
    const columns = columnsOf(row);
    const isChosen = Object.values(columns).some((column) => column !== null);
    return { columns, of: isChosen ? { campaign, pull: row.pull } : null };
  }
  return null;
}

export function columnsOf(row: Row<'pulls'>): ColumnsAsked {
  return { time: row.time_column, force: row.force_column, table: row.table_column, extension: row.extension_column };
}

interface Recording {
  readonly campaign: string;
  readonly at: string;
  readonly row: Row<'pulls'>;
}

async function recordingsOf(rig: string, store: Database): Promise<Recording[]> {
  const found: Recording[] = [];
  for (const { code: campaign } of await store.selectFrom('campaign').select('code').orderBy('code').execute()) {
    const { rows } = await heldRows(store, { campaign, kind: 'pulls', after: -1, limit: Number.MAX_SAFE_INTEGER - 1 });
    for (const { at, body } of rows)
      if (body.rig === rig && body.trace !== null) found.push({ campaign, at, row: body });
  }
  // Rows that were kept in one entry bear one time: the one further down came later.
  return found.reverse().sort((a, b) => Date.parse(b.at) - Date.parse(a.at));
}

/** The header of a recording, without bringing all of a long file into memory; null where it has none to compare by. */
async function headOf(campaign: string, path: string, store: Database): Promise<readonly HeaderCell[] | null> {
  const held = await store
    .selectFrom('attachment')
    .innerJoin('blob', 'blob.sha256', 'attachment.sha256')
    .select(({ fn, val, ref }) => [
      'blob.size',
      fn<Uint8Array>('substr', [ref('blob.bytes'), val(1), val(headBytes)]).as('head'),
    ])
    .where('attachment.campaign', '=', campaign)
    .where('attachment.path', '=', path)
    .executeTakeFirst();
  if (!held) return null;
  try {
    return readTraceHeader(wholeLines(held.head, held.size)).cells;
  } catch (error) {
    if (!isInputError(error)) throw error;
    return null;
  }
}

/** A file cut in the middle of a line would show a row that is too short. */
export function wholeLines(head: Uint8Array, size: number): Uint8Array {
  if (head.length >= size) return head;
  const end = Math.max(head.lastIndexOf(10), head.lastIndexOf(13));
  return end < 0 ? head : head.subarray(0, end + 1);
}
