import type { Recording } from './transducer.ts';

/** The forms in which the recordings were written out: plain text all, and no two of one mind. */
export type TraceForm =
  | 'comma'
  | 'comma, no extension'
  | 'semicolon'
  | 'tab, newton'
  | 'imperial'
  | 'UTF-16'
  | 'blanks'
  | 'clock'
  | 'peak hold'
  | 'bare names';

export interface TraceContext {
  readonly piece: string;
  readonly pull: string;
  readonly rig: string;
  /** Local start of the recording, for preambles. */
  readonly startedAt: string;
  readonly resolution_kN: number;
}

/** Columns the pulls table must name for a form whose header leaves them open. */
export interface NamedColumns {
  readonly time_column: string | null;
  readonly force_column: string | null;
  readonly table_column: string | null;
}

const newtonPerPoundForce = 4.4482216152605;
const millimetrePerInch = 25.4;

interface Layout {
  readonly head: (context: TraceContext) => readonly string[];
  readonly row: (sample: Sample) => readonly string[];
  readonly separator: string;
  readonly lineEnd: '\n' | '\r\n';
  readonly encode: (text: string) => Buffer;
}

interface Sample {
  readonly time_s: number;
  readonly force_kN: number;
  readonly peak_kN: number;
  readonly table_mm: number;
  readonly extension_mm: number;
}

const utf8 = (text: string): Buffer => Buffer.from(text, 'utf8');
const latin1 = (text: string): Buffer => Buffer.from(text, 'latin1');
const utf16 = (text: string): Buffer => Buffer.from(`\uFEFF${text}`, 'utf16le');
const commaDecimal = (text: string): string => text.replace('.', ',');

const layouts: Readonly<Record<TraceForm, Layout>> = {
  comma: {
    head: () => ['time_s,force_kN,table_mm,extension_mm'],
    row: (s) => [s.time_s.toFixed(2), s.force_kN.toFixed(2), s.table_mm.toFixed(2), s.extension_mm.toFixed(2)],
    separator: ',',
    lineEnd: '\n',
    encode: utf8,
  },
  'comma, no extension': {
    head: () => ['time_s,force_kN,table_mm'],
    row: (s) => [s.time_s.toFixed(2), s.force_kN.toFixed(2), s.table_mm.toFixed(2)],
    separator: ',',
    lineEnd: '\r\n',
    encode: utf8,
  },
  semicolon: {
    head: (c) => [
      `Pull;${c.pull}`,
      `Piece;${c.piece}`,
      `Rig;${c.rig}`,
      `Started;${c.startedAt}`,
      'Temperature;14 °C',
      '',
      'Time;Force;Table;Extension',
      's;kN;mm;mm',
    ],
    row: (s) =>
      [s.time_s.toFixed(2), s.force_kN.toFixed(2), s.table_mm.toFixed(2), s.extension_mm.toFixed(2)].map(commaDecimal),
    separator: ';',
    lineEnd: '\r\n',
    encode: latin1,
  },
  'tab, newton': {
    head: () => ['Time [s]\tForce [N]\tTable [mm]'],
    row: (s) => [s.time_s.toFixed(2), (1000 * s.force_kN).toFixed(0), s.table_mm.toFixed(2)],
    separator: '\t',
    lineEnd: '\n',
    encode: utf8,
  },
  imperial: {
    head: (c) => [
      `# ${c.piece}, ${c.rig}, written out in inch units`,
      'Time (s),Force (lbf),Table (in),Extension (in)',
    ],
    row: (s) => [
      s.time_s.toFixed(2),
      ((1000 * s.force_kN) / newtonPerPoundForce).toFixed(0),
      (s.table_mm / millimetrePerInch).toFixed(4),
      (s.extension_mm / millimetrePerInch).toFixed(4),
    ],
    separator: ',',
    lineEnd: '\n',
    encode: utf8,
  },
  'UTF-16': {
    head: () => ['Time (min)\tForce (kN)\tTable (mm)'],
    row: (s) => [(s.time_s / 60).toFixed(5), s.force_kN.toFixed(2), s.table_mm.toFixed(2)],
    separator: '\t',
    lineEnd: '\r\n',
    encode: utf16,
  },
  blanks: {
    head: (c) => [`# piece ${c.piece}  pull ${c.pull}`, '  time_ms  force_kN  table_mm  extension_mm'],
    row: (s) => [
      (1000 * s.time_s).toFixed(0).padStart(9),
      s.force_kN.toFixed(2).padStart(9),
      s.table_mm.toFixed(2).padStart(9),
      s.extension_mm.toFixed(2).padStart(13),
    ],
    separator: ' ',
    lineEnd: '\n',
    encode: utf8,
  },
  clock: {
    head: (c) => [`Recording of ${c.piece} on ${c.rig}`, '', 'Time [hh:mm:ss];Force [kN];Table [mm]'],
    row: (s) => [clockTime(s.time_s), s.force_kN.toFixed(2), s.table_mm.toFixed(2)],
    separator: ';',
    lineEnd: '\r\n',
    encode: (text) => utf8(`\uFEFF${text}`),
  },
  'peak hold': {
    head: () => ['Time [s],Force [kN],Force held [kN],Table [mm]'],
    row: (s) => [s.time_s.toFixed(2), s.force_kN.toFixed(2), s.peak_kN.toFixed(2), s.table_mm.toFixed(2)],
    separator: ',',
    lineEnd: '\n',
    encode: utf8,
  },
  'bare names': {
    head: () => ['t,F,x'],
    row: (s) => [s.time_s.toFixed(2), s.force_kN.toFixed(2), s.table_mm.toFixed(2)],
    separator: ',',
    lineEnd: '\n',
    encode: utf8,
  },
};

/** What `pulls.csv` must say for this form: a choice between two forces, or units that the header lacks. */
export function namedColumns(form: TraceForm): NamedColumns {
  if (form === 'peak hold') return { time_column: null, force_column: 'Force [kN]', table_column: null };
  if (form === 'bare names') return { time_column: 't[s]', force_column: 'F[kN]', table_column: 'x[mm]' };
  return { time_column: null, force_column: null, table_column: null };
}

/** Writes a recording in one of the forms, its force rounded to what the rig shows. */
export function writeTrace(recording: Recording, form: TraceForm, context: TraceContext): Buffer {
  const layout = layouts[form];
  const lines = [...layout.head(context)];
  let peak_kN = 0;
  recording.time_s.forEach((time_s, i) => {
    const force_kN = roundTo(recording.force_kN[i] ?? 0, context.resolution_kN);
    peak_kN = Math.max(peak_kN, force_kN);
    const sample: Sample = {
      time_s,
      force_kN,
      peak_kN,
      table_mm: recording.table_mm[i] ?? 0,
      extension_mm: recording.extension_mm[i] ?? 0,
    };
    lines.push(layout.row(sample).map(withoutMinusZero).join(layout.separator));
  });
  return layout.encode(lines.join(layout.lineEnd) + layout.lineEnd);
}

function roundTo(value: number, step: number): number {
  return Math.round(value / step) * step;
}

function withoutMinusZero(text: string): string {
  return /^\s*-0([.,]0+)?$/.test(text) ? text.replace('-', text.startsWith(' ') ? ' ' : '') : text;
}

function clockTime(time_s: number): string {
  const seconds = (time_s % 60).toFixed(2).padStart(5, '0');
  return `00:${String(Math.floor(time_s / 60)).padStart(2, '0')}:${seconds}`;
}
