import { InputError } from '../errors.ts';
import { parseUnit } from '../units/parse-unit.ts';
import type { Unit } from '../units/unit.ts';
import type { ColumnKind } from './column-words.ts';
import { dimensionByUnit, kindByWords } from './column-words.ts';
import type { HeaderCell } from './header-cell.ts';
import type { ParseOptions, Signal } from './options.ts';

/** A column taken for a signal. */
export interface ChosenColumn {
  readonly index: number;
  readonly name: string;
  readonly unit: Unit;
  readonly because: string;
}

export type ChosenColumns = { readonly [signal in Signal]: ChosenColumn | null };

interface Pick {
  readonly cell: HeaderCell;
  readonly because: string;
  /** A unit given with the column option. */
  readonly unitText: string | null;
}

const DIMENSIONS: Readonly<Record<Signal, 'time' | 'force' | 'length'>> = {
  time: 'time',
  force: 'force',
  table: 'length',
  extension: 'length',
};

const UNIT_CHOICES: Readonly<Record<'time' | 'force' | 'length', string>> = {
  time: 's, ms, min, h, hh:mm:ss',
  force: 'N, kN, MN, kgf, tf, lbf, kip, long tonf, short tonf',
  length: 'mm, cm, m, um, in',
};

function describeCell(cell: HeaderCell): string {
  return `${cell.index + 1}: "${cell.name}${cell.unitText === null ? '' : `[${cell.unitText}]`}"`;
}

function listed(cells: readonly HeaderCell[]): string {
  return cells.map(describeCell).join(', ');
}

function flag(signal: Signal, example: HeaderCell | undefined): string {
  const unit = example?.unitText ?? { time: 's', force: 'kN', table: 'mm', extension: 'mm' }[signal];
  return `--${signal}-column "${example?.name ?? 'name'}[${unit}]"`;
}

function ambiguous(signal: Signal, cells: readonly HeaderCell[]): InputError {
  return new InputError(
    'trace/ambiguous-column',
    `${cells.length} columns could be the ${signal}: ${listed(cells)}. Say which, for example ${flag(signal, cells[0])}, or by its number.`,
    { signal, choices: cells.map((cell) => ({ column: cell.index + 1, name: cell.name, unit: cell.unitText })) },
  );
}

function sameName(a: string, b: string): boolean {
  return a.trim().toLowerCase() === b.trim().toLowerCase();
}

/** A column asked for by name, `name[unit]` or 1-based number. */
function askedFor(signal: Signal, wanted: string, cells: readonly HeaderCell[]): Pick {
  const match = /^(.*?)\s*\[([^\]]*)\]\s*$/.exec(wanted);
  const name = (match?.[1] ?? wanted).trim();
  const unitText = match?.[2] ?? null;
  const byNumber = /^\d+$/.test(name) ? cells.filter((cell) => cell.index + 1 === Number(name)) : [];
  const byName = cells.filter((cell) => sameName(cell.name, name) || sameName(cell.name, wanted));
  const narrowed = byName.filter(
    (cell) => unitText !== null && cell.unitText !== null && cell.unitText.trim() === unitText.trim(),
  );
  const found = byNumber.length > 0 ? byNumber : narrowed.length === 1 ? narrowed : byName;
  const cell = found[0];
  if (!cell) {
    throw new InputError(
      'trace/unknown-column',
      `There is no column "${wanted}" for the ${signal}. The file has ${listed(cells)}.`,
      {
        signal,
        wanted,
        choices: cells.map((each) => each.name),
      },
    );
  }
  if (found.length > 1) throw ambiguous(signal, found);
  return { cell, because: `asked for as "${wanted}"`, unitText };
}

function of(kind: ColumnKind, cells: readonly HeaderCell[], taken: ReadonlySet<number>): HeaderCell[] {
  return cells.filter((cell) => !taken.has(cell.index) && kindByWords(cell) === kind);
}

function onlyOne(signal: Signal, cells: readonly HeaderCell[], because: string): Pick | null {
  const cell = cells[0];
  if (cells.length > 1) throw ambiguous(signal, cells);
  return cell ? { cell, because: `"${cell.name}" ${because}`, unitText: null } : null;
}

/** Time or force: by the words of the header, else the only column with such a unit. */
function pickPlain(signal: 'time' | 'force', cells: readonly HeaderCell[], taken: ReadonlySet<number>): Pick | null {
  const byWords = onlyOne(signal, of(signal, cells, taken), `names the ${signal}`);
  if (byWords) return byWords;
  const byUnit = cells.filter((cell) => !taken.has(cell.index) && dimensionByUnit(cell) === DIMENSIONS[signal]);
  return onlyOne(signal, byUnit, `is the only column with a unit of ${signal}`);
}

interface Travels {
  readonly table: Pick | null;
  readonly extension: Pick | null;
}

/** Table and extension told apart: own words first; plain travel is whichever of the two has no column of its own. */
function pickTravels(cells: readonly HeaderCell[], taken: ReadonlySet<number>, asked: ReadonlySet<Signal>): Travels {
  const wantTable = !asked.has('table');
  const wantExtension = !asked.has('extension');
  const gauges = [...of('gauge', cells, taken), ...of('extension', cells, taken)];
  let table = wantTable ? onlyOne('table', of('table', cells, taken), 'names the travel of the machine') : null;
  let extension = wantExtension ? onlyOne('extension', gauges, 'names the extension of the piece') : null;
  const plain = of('travel', cells, taken);
  const hasTable = table !== null || !wantTable;
  const hasExtension = extension !== null || !wantExtension;
  if (!hasTable)
    table = onlyOne(
      'table',
      plain,
      hasExtension
        ? 'is the travel that is not the extension'
        : 'is the only travel and names no gauge on the piece: taken for the travel of the machine',
    );
  else if (!hasExtension)
    extension = onlyOne(
      'extension',
      plain,
      'is a travel beside that of the machine: taken for the extension of the piece',
    );
  return { table, extension };
}

function unitError(signal: Signal, cell: HeaderCell, choices: string, problem: string, code: string): InputError {
  return new InputError(
    code,
    `The ${signal} column ${describeCell(cell)} ${problem}. Choices: ${choices}. Say which with --${signal}-column "${cell.name}[unit]".`,
    { signal, column: cell.index + 1, name: cell.name, unit: cell.unitText, choices: choices.split(', ') },
  );
}

/** The unit of a picked column: from the option, else from the file. Missing, ambiguous, unknown or unfit units are errors. */
function settleUnit(signal: Signal, pick: Pick, options: ParseOptions): ChosenColumn {
  const { cell } = pick;
  const given = pick.unitText ?? options.units?.[signal] ?? null;
  const text = given ?? cell.unitText;
  const dimension = DIMENSIONS[signal];
  const choices = UNIT_CHOICES[dimension];
  if (text === null || text.trim() === '') throw unitError(signal, cell, choices, 'has no unit', 'trace/unit-missing');
  const finding = parseUnit(text);
  if (finding.kind === 'ambiguous') {
    throw unitError(
      signal,
      cell,
      finding.choices.join(', '),
      `has the unit "${text}", which means several things`,
      'trace/unit-ambiguous',
    );
  }
  if (finding.kind === 'unknown')
    throw unitError(signal, cell, choices, `has the unit "${text}", which is not known`, 'trace/unit-unknown');
  if (finding.unit.dimension !== dimension) {
    throw unitError(signal, cell, choices, `has the unit "${text}", which is none of ${dimension}`, 'trace/unit-unfit');
  }
  const other = cell.unitText !== null && given !== null && cell.unitText.trim() !== given.trim();
  const asGiven = other ? `unit as given, where the file says "${cell.unitText}"` : 'unit as given';
  const place = given === null ? `unit ${cell.unitPlace}` : asGiven;
  return { index: cell.index, name: cell.name, unit: finding.unit, because: `${pick.because}; ${place}` };
}

function noForce(cells: readonly HeaderCell[]): InputError {
  return new InputError(
    'trace/no-force-column',
    `No column is named as a force or has a unit of force. The file has ${listed(cells)}. Say which, for example ${flag('force', undefined)}.`,
    { choices: cells.map((cell) => ({ column: cell.index + 1, name: cell.name, unit: cell.unitText })) },
  );
}

/**
 * Chooses the columns for time, force, table and extension and says why. Nothing is guessed: two columns that could be meant, or a
 * missing, ambiguous or unknown unit, end in an InputError that lists the choices and the option that settles it.
 */
export function chooseColumns(cells: readonly HeaderCell[], options: ParseOptions = {}): ChosenColumns {
  const picks = new Map<Signal, Pick | null>();
  const taken = new Set<number>();
  for (const signal of ['force', 'time', 'table', 'extension'] as const) {
    const wanted = options.columns?.[signal];
    if (wanted === undefined) continue;
    const pick = wanted.trim().toLowerCase() === 'none' ? null : askedFor(signal, wanted, cells);
    picks.set(signal, pick);
    if (pick) taken.add(pick.cell.index);
  }
  for (const signal of ['force', 'time'] as const) {
    if (picks.has(signal)) continue;
    const pick = pickPlain(signal, cells, taken);
    picks.set(signal, pick);
    if (pick) taken.add(pick.cell.index);
  }
  if (!picks.get('force')) throw noForce(cells);
  const travels = pickTravels(cells, taken, new Set(picks.keys()));
  if (!picks.has('table')) picks.set('table', travels.table);
  if (!picks.has('extension')) picks.set('extension', travels.extension);
  const settle = (signal: Signal): ChosenColumn | null => {
    const pick = picks.get(signal);
    return pick ? settleUnit(signal, pick, options) : null;
  };
  return { time: settle('time'), force: settle('force'), table: settle('table'), extension: settle('extension') };
}
