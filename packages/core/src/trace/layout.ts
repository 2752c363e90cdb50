import { InputError } from '../errors.ts';
import { parseUnit } from '../units/parse-unit.ts';
import { decode } from './text-encoding.ts';

export type Delimiter = 'tab' | 'semicolon' | 'comma' | 'blanks';

/** One line of text: its bytes [from, to) without the line end, and its 1-based number. */
export interface Line {
  readonly text: string;
  readonly number: number;
  readonly from: number;
  readonly next: number;
}

/** How the text is laid out: where the readings start and what stands above them. */
export interface Layout {
  readonly delimiter: Delimiter;
  readonly names: readonly string[];
  /** Texts of the units row, or null when there is none. */
  readonly units: readonly string[] | null;
  readonly dataFrom: number;
  readonly dataLine: number;
  readonly columns: number;
}

const PREFERENCE: readonly Delimiter[] = ['tab', 'semicolon', 'comma', 'blanks'];
const NUMBER = /^[+\-−]?(\d[\d.,']*|[.,]\d+)([eE][+-]?\d+)?$/;
const CLOCK = /^\d+:\d{1,2}:\d{1,2}([.,]\d*)?$/;
const MISSING = /^(nan|n\/?a|null|-+)?$/i;

export function isMissingCell(cell: string): boolean {
  return MISSING.test(cell);
}

function isNumberCell(cell: string): boolean {
  return NUMBER.test(cell) || CLOCK.test(cell);
}

/** Cells of one line, trimmed. */
export function splitCells(text: string, delimiter: Delimiter): string[] {
  if (delimiter === 'blanks') return text.trim().split(/[ \t\u00a0]+/);
  const sign = delimiter === 'tab' ? '\t' : delimiter === 'semicolon' ? ';' : ',';
  return text.split(sign).map((cell) => cell.trim());
}

/** The byte that ends the line which starts at `from`. */
function lineEnd(bytes: Uint8Array, from: number): number {
  let to = from;
  while (to < bytes.length && bytes[to] !== 10 && bytes[to] !== 13) to++;
  return to;
}

function afterLineEnd(bytes: Uint8Array, to: number): number {
  return bytes[to] === 13 && bytes[to + 1] === 10 ? to + 2 : to + 1;
}

/** The line that starts at byte `from`. */
export function lineAt(bytes: Uint8Array, from: number, number: number): Line {
  const to = lineEnd(bytes, from);
  return { text: decode(bytes, from, to), number, from, next: afterLineEnd(bytes, to) };
}

/** The byte after the line which starts at `from`, its end included. */
export function nextLineStart(bytes: Uint8Array, from: number): number {
  return afterLineEnd(bytes, lineEnd(bytes, from));
}

/** Whether cells are a row of readings: numbers and gaps only, or, where every row holds a date or a remark, at least two numbers. */
function isDataLine(cells: readonly string[], withText: boolean): boolean {
  const numbers = cells.filter(isNumberCell).length;
  if (withText) return numbers >= 2;
  if (!cells.every((cell) => isNumberCell(cell) || isMissingCell(cell))) return false;
  return numbers > 0 || cells.some((cell) => /^nan$/i.test(cell));
}

/** Lines from several places of the file, to learn the delimiter from readings and not from a preamble. */
function sampleLines(bytes: Uint8Array): string[] {
  const texts: string[] = [];
  for (const share of [0, 0.25, 0.5, 0.75, 0.95]) {
    let from = share === 0 ? 0 : nextLineStart(bytes, Math.floor(bytes.length * share));
    for (let k = 0; k < 40 && from < bytes.length; k++) {
      const line = lineAt(bytes, from, 0);
      if (line.text.trim() !== '') texts.push(line.text);
      from = line.next;
    }
  }
  return texts;
}

interface Form {
  readonly delimiter: Delimiter;
  readonly columns: number;
  readonly lines: number;
  /** True when rows of readings hold text as well. */
  readonly withText: boolean;
}

function formUnder(texts: readonly string[], delimiter: Delimiter, withText: boolean): Form {
  const counts = new Map<number, number>();
  for (const text of texts) {
    const cells = splitCells(text, delimiter);
    if (cells.length > 1 && isDataLine(cells, withText)) counts.set(cells.length, (counts.get(cells.length) ?? 0) + 1);
  }
  let columns = 0;
  let lines = 0;
  for (const [count, seen] of counts) {
    if (seen > lines) {
      columns = count;
      lines = seen;
    }
  }
  return { delimiter, columns, lines, withText };
}

function findForm(bytes: Uint8Array, decimal: '.' | ',' | undefined): Form {
  const texts = sampleLines(bytes);
  if (texts.length === 0) throw new InputError('trace/empty', 'The file is empty: there is not one reading in it.');
  const allowed = PREFERENCE.filter((delimiter) => !(delimiter === 'comma' && decimal === ','));
  const bestOf = (withText: boolean): Form =>
    allowed.map((delimiter) => formUnder(texts, delimiter, withText)).reduce((a, b) => (b.lines > a.lines ? b : a));
  const pure = bestOf(false);
  const best = pure.lines > 0 ? pure : bestOf(true);
  if (best.lines === 0) {
    throw new InputError(
      'trace/no-readings',
      'No row of readings was found: a row needs two or more numbers parted by a tab, a semicolon, a comma or blanks.',
    );
  }
  return best;
}

const MAXIMUM_PREAMBLE_LINES = 2000;

/** The first line of readings, with up to three lines of text that stand above it. */
function findFirstReading(bytes: Uint8Array, form: Form): { first: Line; above: readonly Line[] } {
  const above: Line[] = [];
  let from = 0;
  for (let number = 1; number <= MAXIMUM_PREAMBLE_LINES && from < bytes.length; number++) {
    const line = lineAt(bytes, from, number);
    const cells = splitCells(line.text, form.delimiter);
    if (cells.length === form.columns && isDataLine(cells, form.withText)) return { first: line, above };
    if (line.text.trim() !== '') above.push(line);
    from = line.next;
  }
  throw new InputError('trace/no-readings', `No row of readings in the first ${MAXIMUM_PREAMBLE_LINES} lines.`);
}

/** Half of the cells are units below a row of names; with no names above, all must be, because `t, F, s` may well be names. */
function isUnitsRow(cells: readonly string[], hasNamesAbove: boolean): boolean {
  const filled = cells.filter((cell) => cell !== '');
  const known = filled.filter((cell) => parseUnit(cell).kind !== 'unknown');
  return known.length > 0 && (hasNamesAbove ? known.length * 2 >= filled.length : known.length === filled.length);
}

/** A row with a number and a word in it, right above the readings and as wide as they are, is a broken row of readings. */
function isBrokenRow(cells: readonly string[], columns: number): boolean {
  return cells.length === columns && cells.filter((cell) => NUMBER.test(cell)).length * 2 >= columns;
}

/** Names split at the delimiter; with blanks, a unit in brackets stays with its name. */
function splitNames(text: string, form: Form): string[] {
  const cells = splitCells(text, form.delimiter);
  if (form.delimiter !== 'blanks' || cells.length === form.columns) return cells;
  const joined = splitCells(text.replace(/\s+([[({])/g, '\u0001$1'), 'blanks').map((cell) =>
    cell.replace('\u0001', ' '),
  );
  if (joined.length === form.columns) return joined;
  return text.trim().split(/\s{2,}/);
}

function namesFrom(line: Line | undefined, form: Form): string[] {
  const blank = Array.from({ length: form.columns }, () => '');
  if (!line) return blank;
  const cells = splitNames(line.text, form);
  const used = cells.length - [...cells].reverse().findIndex((cell) => cell !== '');
  if (cells.every((cell) => cell === '') || (cells.length === 1 && form.columns > 1)) return blank;
  if (used > form.columns || (form.delimiter === 'blanks' && cells.length !== form.columns)) {
    throw new InputError(
      'trace/header-mismatch',
      `Row ${line.number} names ${used} columns, but the readings below have ${form.columns}. ` +
        'Give each column one name; if the comma is the decimal sign, part the columns by something else or say decimal ",".',
      { row: line.number, names: cells, columns: form.columns },
    );
  }
  if (form.delimiter === 'comma' && used * 2 === form.columns) {
    throw new InputError(
      'trace/header-mismatch',
      `Row ${line.number} names ${used} columns, but the readings below have ${form.columns} cells: ` +
        'the comma seems to be both the decimal sign and the delimiter. Save the record with another delimiter.',
      { row: line.number, names: cells, columns: form.columns },
    );
  }
  return blank.map((_, i) => cells[i] ?? '');
}

/**
 * Finds delimiter, row of names, units row and first reading of any plain delimited text. The delimiter is the one under which
 * most sampled lines are rows of numbers of one width. Throws `trace/empty`, `trace/no-readings`, `trace/header-mismatch`.
 */
export function findLayout(bytes: Uint8Array, decimal?: '.' | ','): Layout {
  const form = findForm(bytes, decimal);
  const { first, above } = findFirstReading(bytes, form);
  let start = first;
  let rest = [...above];
  for (
    let line = rest.at(-1);
    line && isBrokenRow(splitCells(line.text, form.delimiter), form.columns);
    line = rest.at(-1)
  ) {
    start = line;
    rest = rest.slice(0, -1);
  }
  const last = rest.at(-1);
  const unitCells = last ? splitCells(last.text, form.delimiter) : [];
  const names = rest.at(-2);
  const hasNamesAbove = names !== undefined && splitCells(names.text, form.delimiter).length > 1;
  const hasUnitsRow =
    last !== undefined &&
    unitCells.length <= form.columns &&
    unitCells.length > 1 &&
    isUnitsRow(unitCells, hasNamesAbove);
  const header = hasUnitsRow ? names : last;
  return {
    delimiter: form.delimiter,
    names: namesFrom(header, form),
    units: hasUnitsRow ? Array.from({ length: form.columns }, (_, i) => unitCells[i] ?? '') : null,
    dataFrom: start.from,
    dataLine: start.number,
    columns: form.columns,
  };
}
