import { type HeaderCell, headerCells } from './header-cell.ts';
import { findLayout, type Layout, lineAt, splitCells } from './layout.ts';
import { plainBytes } from './text-encoding.ts';
import { unquote } from './unquote.ts';

/** A recording in delimited text as far as its first reading: what its columns are called, and where the readings begin. */
export interface TraceHeader {
  /** The bytes in an ASCII-compatible encoding, without quotes around cells. */
  readonly plain: Uint8Array;
  readonly layout: Layout;
  readonly cells: readonly HeaderCell[];
}

/**
 * Finds the columns of a recording without reading it: encoding, delimiter, names and units as the file gives them. The start of a long file
 * is enough, cut at a line end.
 * @throws InputError `trace/empty`, `trace/no-readings`, `trace/header-mismatch`, `trace/not-text`
 */
export function readTraceHeader(bytes: Uint8Array, decimal?: '.' | ','): TraceHeader {
  const plain = unquote(plainBytes(bytes).bytes);
  const layout = findLayout(plain, decimal);
  return { plain, layout, cells: headerCells(layout.names, withClocks(plain, layout)) };
}

/** The first rows of readings as they are written, cell by cell; empty lines are passed over. */
export function firstRows({ plain, layout }: TraceHeader, count: number): string[][] {
  const rows: string[][] = [];
  for (let at = layout.dataFrom; at < plain.length && rows.length < count; ) {
    const line = lineAt(plain, at, 0);
    if (line.text.trim() !== '') rows.push(splitCells(line.text, layout.delimiter));
    at = line.next;
  }
  return rows;
}

/** Columns whose first reading is a clock time get the clock as their unit when the file names none. */
function withClocks(bytes: Uint8Array, layout: Layout): readonly string[] | null {
  const cells = splitCells(lineAt(bytes, layout.dataFrom, 0).text, layout.delimiter);
  if (!cells.some((cell) => /^\d+:\d{1,2}:\d{1,2}/.test(cell))) return layout.units;
  return layout.names.map((_, i) =>
    /^\d+:\d{1,2}:\d{1,2}/.test(cells[i] ?? '') ? 'hh:mm:ss' : (layout.units?.[i] ?? ''),
  );
}
