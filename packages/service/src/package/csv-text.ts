import { CsvError, parse } from 'csv-parse/sync';

export type CsvReading =
  | { readonly ok: true; readonly records: string[][] }
  | { readonly ok: false; readonly row: number | null; readonly fault: string };

/**
 * Reads the bytes of a table: comma-separated UTF-8, with or without a byte order mark, lines ended by LF or CR LF.
 * Anything else is refused with the cure; no encoding or separator is guessed.
 */
export function readCsv(bytes: Uint8Array): CsvReading {
  const text = readText(bytes);
  if (!text.ok) return text;
  const separator = otherSeparator(text.text);
  if (separator)
    return {
      ok: false,
      row: 1,
      fault: `is separated by ${separator}; save it separated by commas ("CSV UTF-8"), with decimal points`,
    };
  try {
    return {
      ok: true,
      records: parse(text.text, {
        relax_column_count: true,
        skip_empty_lines: false,
        record_delimiter: ['\r\n', '\n'],
      }),
    };
  } catch (error) {
    if (!(error instanceof CsvError)) throw error;
    return {
      ok: false,
      row: quoteRow(error),
      fault: quoteWords[error.code] ?? `cannot be read as CSV: ${error.message}`,
    };
  }
}

const quoteWords: Readonly<Record<string, string>> = {
  CSV_QUOTE_NOT_CLOSED: 'a double quote is opened and never closed; close it, or double it where it is meant',
  INVALID_OPENING_QUOTE:
    'a double quote stands inside a cell without quotes; put the cell in quotes and double the quote',
  CSV_INVALID_CLOSING_QUOTE:
    'something follows a closing double quote; put the whole cell in quotes and double quotes inside',
};

/** The parser counts whole records, header included, before the one it stumbled on. */
function quoteRow(error: CsvError): number | null {
  return typeof error.records === 'number' ? error.records + 1 : null;
}

type TextReading = { readonly ok: true; readonly text: string } | Extract<CsvReading, { ok: false }>;

function readText(bytes: Uint8Array): TextReading {
  if (bytes.length === 0) return { ok: true, text: '' };
  const [a, b] = bytes;
  if ((a === 0xff && b === 0xfe) || (a === 0xfe && b === 0xff)) return notUtf8('is UTF-16');
  try {
    return { ok: true, text: new TextDecoder('utf-8', { fatal: true }).decode(bytes) };
  } catch {
    return notUtf8('is not UTF-8 (perhaps Latin-1)');
  }
}

function notUtf8(words: string): TextReading {
  return { ok: false, row: null, fault: `${words}; save it as "CSV UTF-8"` };
}

/** A header without one comma but with another usual separator. */
function otherSeparator(text: string): string | null {
  const header = text.slice(0, text.search(/[\r\n]|$/));
  if (header.includes(',')) return null;
  if (header.includes(';')) return 'semicolons';
  return header.includes('\t') ? 'tabs' : null;
}
