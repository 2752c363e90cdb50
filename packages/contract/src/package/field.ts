/** The kinds of value a cell can hold; each is a Frictionless Table Schema type. */
export type FieldType = 'string' | 'number' | 'integer' | 'boolean' | 'date' | 'datetime';

interface FieldValue {
  string: string;
  number: number;
  integer: number;
  boolean: boolean;
  date: string;
  datetime: string;
}

export interface FieldOptions {
  /** What it is, with its unit; ends up in the descriptor and in the reference page. */
  readonly description: string;
  /** A believable cell, used by the template and the reference page. */
  readonly example: string;
  /** A second one for the template's second row; the first serves where it is left out. */
  readonly example2?: string;
  /** Part of what makes a row unique in its table. */
  readonly key?: boolean;
  readonly required?: boolean;
  readonly minimum?: number;
  readonly exclusiveMinimum?: number;
  readonly maximum?: number;
  readonly choices?: readonly string[];
  /** For strings: a regular expression the whole cell must match, and the same in words. */
  readonly pattern?: { readonly expression: string; readonly words: string };
  /** The table whose single key this cell must name. */
  readonly references?: string;
}

export interface Field<T extends FieldType = FieldType, R extends boolean = boolean> extends FieldOptions {
  readonly type: T;
  readonly required: R;
}

export type Fields = Readonly<Record<string, Field>>;

type Cell<F> = F extends Field<infer T, infer R> ? (R extends true ? FieldValue[T] : FieldValue[T] | null) : never;

/** A row of a table whose fields are `F`: required cells are there, the others may be null. */
export type RowOf<F extends Fields> = { readonly [K in keyof F]: Cell<F[K]> };

/** A field that every row must fill. */
export function required<T extends FieldType>(type: T, options: FieldOptions): Field<T, true> {
  return { ...options, type, required: true };
}

/** A field that may be left empty: an empty cell is "not recorded", never zero. */
export function optional<T extends FieldType>(type: T, options: FieldOptions): Field<T, false> {
  return { ...options, type, required: false };
}

export type CellValue = string | number | boolean | null;

export type CellReading =
  | { readonly ok: true; readonly value: CellValue }
  | { readonly ok: false; readonly fault: string };

const decimal = /^[+-]?(\d+(\.\d*)?|\.\d+)([eE][+-]?\d+)?$/;
const isoDate = /^\d{4}-\d{2}-\d{2}$/;
const isoDateTime = /^\d{4}-\d{2}-\d{2}T\d{2}:\d{2}(:\d{2}(\.\d+)?)?(Z|[+-]\d{2}:\d{2})?$/;

/** Reads one cell. A fault says what would be right; the caller adds file, row and column. */
export function readCell(field: Field, cell: string): CellReading {
  const text = cell.trim();
  if (text === '') {
    return field.required ? fault('is empty, but every row needs it') : { ok: true, value: null };
  }
  return readTyped(field, text);
}

/**
 * Writes one value as the cell that {@link readCell} reads back as the same value. Numbers are written as short as they
 * can be without loss (ECMAScript Number::toString); null is the empty cell.
 */
export function writeCell(value: CellValue): string {
  return value === null ? '' : String(value);
}

function readTyped(field: Field, text: string): CellReading {
  switch (field.type) {
    case 'string':
      return readString(field, text);
    case 'boolean':
      return readBoolean(text);
    case 'date':
      return isoDate.test(text) && isCalendarDate(text)
        ? { ok: true, value: text }
        : fault(`holds "${shorten(text)}"; a date is written like 2026-03-14`);
    case 'datetime':
      return isoDateTime.test(text) && isCalendarDate(text.slice(0, 10))
        ? { ok: true, value: text }
        : fault(`holds "${shorten(text)}"; a time is written like 2026-03-14T09:30:00Z`);
    default:
      return readNumber(field, text);
  }
}

function readString(field: Field, text: string): CellReading {
  if (hasControlCharacter(text)) return fault('holds a control character; type it again without');
  if (field.choices && !field.choices.includes(text))
    return fault(`holds "${shorten(text)}"; it must be one of: ${field.choices.join(', ')}`);
  if (field.pattern && !new RegExp(`^(?:${field.pattern.expression})$`, 'u').test(text))
    return fault(`holds "${shorten(text)}"; it must be ${field.pattern.words}`);
  return { ok: true, value: text };
}

/** Tab and line ends may stand in a note; the other control characters come from a damaged file. */
function hasControlCharacter(text: string): boolean {
  for (let i = 0; i < text.length; i += 1) {
    const code = text.charCodeAt(i);
    if ((code < 32 && code !== 9 && code !== 10 && code !== 13) || code === 127) return true;
  }
  return false;
}

function shorten(text: string): string {
  return text.length > 60 ? `${text.slice(0, 60)}...` : text;
}

/** 31 February is not a date, although it is written like one. */
function isCalendarDate(text: string): boolean {
  const at = new Date(`${text}T00:00:00Z`);
  return !Number.isNaN(at.getTime()) && at.toISOString().startsWith(text);
}

function readBoolean(text: string): CellReading {
  if (text === 'true') return { ok: true, value: true };
  if (text === 'false') return { ok: true, value: false };
  return fault(`holds "${shorten(text)}"; it must be true or false`);
}

function readNumber(field: Field, text: string): CellReading {
  if (!decimal.test(text)) {
    const cure = /^[+-]?\d+,\d+$/.test(text)
      ? `write a decimal point: ${text.replace(',', '.')}`
      : 'write a plain number';
    return fault(`holds "${shorten(text)}", which is not a number; ${cure}`);
  }
  // Adding zero turns -0 into 0: a record has one zero.
  const value = Number(text) + 0;
  if (field.type === 'integer' && Number.isFinite(value) && !Number.isSafeInteger(value))
    return fault(`holds "${shorten(text)}"; it must be a whole number`);
  const bound = brokenBound(field, value);
  return bound ? fault(`holds "${shorten(text)}"; it must be ${bound}`) : { ok: true, value };
}

function brokenBound(field: Field, value: number): string | null {
  if (!Number.isFinite(value)) return 'a finite number';
  if (field.exclusiveMinimum !== undefined && value <= field.exclusiveMinimum)
    return `more than ${field.exclusiveMinimum}`;
  if (field.minimum !== undefined && value < field.minimum) return `at least ${field.minimum}`;
  if (field.maximum !== undefined && value > field.maximum) return `at most ${field.maximum}`;
  return null;
}

function fault(text: string): CellReading {
  return { ok: false, fault: text };
}
