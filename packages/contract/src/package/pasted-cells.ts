/**
 * The cells of text copied from a spreadsheet: tabs between cells, lines ending in LF, CRLF or CR. A cell that holds a tab, a
 * line end or quotes stands in double quotes with its own quotes doubled; a quote that opens no such cell is part of the text
 * (5/16", as inches are written). No-break blanks at the edges of a cell go. Rows with nothing in them stay, so that rows can
 * be counted as they stood.
 */
export function pastedCells(text: string): string[][] {
  const source = text.replace(/^\ufeff/, '');
  const rows: string[][] = [];
  let row: string[] = [];
  let at = 0;
  while (at <= source.length) {
    const cell = cellAt(source, at);
    row.push(cell.value.replace(/^[\s\u200b]+|[\s\u200b]+$/g, ''));
    at = cell.end;
    if (source[at] === '\t') {
      at += 1;
      continue;
    }
    rows.push(row);
    row = [];
    if (at >= source.length) break;
    at += source.startsWith('\r\n', at) ? 2 : 1;
    if (at === source.length) break;
  }
  return rows;
}

/** A row of cells as a spreadsheet puts it on the clipboard: the reverse of {@link pastedCells} for one row. */
export function copiedRow(cells: readonly string[]): string {
  return cells.map((cell) => (/[\t\r\n]|^"/.test(cell) ? `"${cell.replaceAll('"', '""')}"` : cell)).join('\t');
}

interface FoundCell {
  readonly value: string;
  /** Where the tab or line end after it stands, or the length of the text. */
  readonly end: number;
}

function cellAt(source: string, from: number): FoundCell {
  const quoted = source[from] === '"' ? quotedAt(source, from) : null;
  if (quoted !== null) return quoted;
  let end = from;
  while (end < source.length && !isCellEnd(source[end])) end += 1;
  return { value: source.slice(from, end), end };
}

/** Null where the closing quote is missing or text follows it: then the quotes are part of the text. */
function quotedAt(source: string, from: number): FoundCell | null {
  let at = from + 1;
  for (;;) {
    const quote = source.indexOf('"', at);
    if (quote < 0) return null;
    if (source[quote + 1] === '"') {
      at = quote + 2;
      continue;
    }
    const end = quote + 1;
    if (end < source.length && !isCellEnd(source[end])) return null;
    return { value: source.slice(from + 1, quote).replaceAll('""', '"'), end };
  }
}

function isCellEnd(character: string | undefined): boolean {
  return character === '\t' || character === '\n' || character === '\r';
}
