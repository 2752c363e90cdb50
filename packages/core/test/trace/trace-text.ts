import type { TraceSignals } from '../../src/trace/index.ts';

/** How a record is written down. */
export interface TextForm {
  readonly delimiter?: string;
  readonly decimal?: '.' | ',';
  readonly lineEnd?: string;
  readonly header?: string;
  readonly preamble?: readonly string[];
  readonly places?: number;
}

const encoder = new TextEncoder();

export function utf8(text: string): Uint8Array {
  return encoder.encode(text);
}

export function latin1(text: string): Uint8Array {
  return Uint8Array.from(text, (letter) => letter.charCodeAt(0));
}

export function utf16(text: string, littleEndian: boolean, mark: boolean): Uint8Array {
  const all = mark ? `\ufeff${text}` : text;
  const bytes = new Uint8Array(all.length * 2);
  const view = new DataView(bytes.buffer);
  for (let i = 0; i < all.length; i++) view.setUint16(2 * i, all.charCodeAt(i), littleEndian);
  return bytes;
}

/** Writes time, force and table as delimited text. */
export function asText(signals: TraceSignals, form: TextForm = {}): string {
  const { delimiter = ',', decimal = '.', lineEnd = '\n', preamble = [], places = 5 } = form;
  const header = form.header ?? ['time [s]', 'force [kN]', 'table [mm]'].join(delimiter);
  const cell = (value: number | undefined): string => (value ?? Number.NaN).toFixed(places).replace('.', decimal);
  const rows = Array.from(signals.force_kN, (force, i) =>
    [signals.time_s?.[i], force, signals.table_mm?.[i]].map(cell).join(delimiter),
  );
  return [...preamble, header, ...rows, ''].join(lineEnd);
}
