import { InputError } from '../errors.ts';
import type { GradeChoice } from './grade-selection.ts';
import { cellNumber, type Row, type Table } from './rulebook.ts';
import type { ChosenStandard } from './standard-selection.ts';

/** A row of a table that speaks of the chosen size. */
export interface ChosenRow {
  readonly table: Table;
  readonly row: Row;
  /** What identifies the row in its table: a size in mm or an inch designation. */
  readonly key: string | number;
}

export interface SizeChoice {
  readonly size_mm: number;
  /** Inch designation where the row has one. */
  readonly tradeSize: string | null;
  readonly rows: readonly ChosenRow[];
}

/** A size that a standard's tables list. */
export interface ListedSize {
  readonly size_mm: number;
  readonly tradeSize: string | null;
}

/** Standards whose tables here are an excerpt while their rules give every size of the range. */
const ruledOverRange: ReadonlySet<string> = new Set(['EN 818-7', 'IACS UR W18', 'IACS UR W22']);

/** Whether any size in the standard's range can be looked up, not only those its tables list. */
export function coversRange({ entry, isOwn }: ChosenStandard): boolean {
  return ruledOverRange.has(entry.id) || (isOwn && entry.tables.length === 0);
}

/** Sizes that the tables list for a grade (all grades when null), ascending, without repeats. */
export function listedSizes(standard: ChosenStandard, grade: GradeChoice | null): readonly ListedSize[] {
  const sizes = new Map<string, ListedSize>();
  for (const table of standard.entry.tables.filter((candidate) => tableHasGrade(candidate, grade))) {
    for (const row of table.rows) {
      const size_mm = cellNumber(row, 'd');
      const tradeSize = tradeOf(table, row);
      if (size_mm !== null) sizes.set(`${size_mm} ${tradeSize ?? ''}`, { size_mm, tradeSize });
    }
  }
  return [...sizes.values()].sort((a, b) => a.size_mm - b.size_mm);
}

/**
 * The rows for a size in mm, or for a US trade size (`3/8`, `1-1/4`), which is a name and not a diameter.
 *
 * @throws InputError `chain/size-missing`, `chain/size-invalid`, `chain/unknown-size` or `chain/size-ambiguous`
 */
export function chooseSize(
  standard: ChosenStandard,
  grade: GradeChoice,
  wanted: { readonly size_mm?: number | undefined; readonly tradeSize?: string | undefined },
): SizeChoice {
  if (wanted.tradeSize !== undefined) return byTrade(standard, grade, wanted.tradeSize);
  if (wanted.size_mm === undefined) {
    throw new InputError('chain/size-missing', `Say the nominal size of the chain in mm for ${standard.entry.id}.`);
  }
  return byMillimetres(standard, grade, wanted.size_mm);
}

function byTrade(standard: ChosenStandard, grade: GradeChoice, tradeSize: string): SizeChoice {
  const wanted = plainTrade(tradeSize);
  const rows = rowsFor(standard, grade, (table, row) => tradeOf(table, row) === wanted);
  const size_mm = rows.map(({ row }) => cellNumber(row, 'd')).find((size) => size !== null);
  if (size_mm === undefined || size_mm === null) throw unknownSize(standard, grade, `${tradeSize} in`);
  return { size_mm, tradeSize: wanted, rows };
}

function byMillimetres(standard: ChosenStandard, grade: GradeChoice, size_mm: number): SizeChoice {
  if (!Number.isFinite(size_mm) || size_mm <= 0) {
    throw new InputError('chain/size-invalid', `A nominal size must be a number of mm above 0, not ${size_mm}.`, {
      size_mm,
    });
  }
  const rows = rowsFor(standard, grade, (_table, row) => Math.abs((cellNumber(row, 'd') ?? 0) - size_mm) < 1e-6);
  const trades = [...new Set(rows.flatMap(({ table, row }) => tradeOf(table, row) ?? []))];
  if (trades.length > 1) {
    throw new InputError(
      'chain/size-ambiguous',
      `${standard.entry.id} lists ${size_mm} mm material for several trade sizes: say which of ${trades.join(', ')}.`,
      { size_mm, choices: trades },
    );
  }
  const [least, greatest] = standard.entry.range;
  const isRuled = coversRange(standard) && size_mm >= least && size_mm <= greatest;
  if (rows.length === 0 && !isRuled) throw unknownSize(standard, grade, `${size_mm} mm`);
  return { size_mm, tradeSize: trades[0] ?? null, rows };
}

function rowsFor(
  standard: ChosenStandard,
  grade: GradeChoice,
  isWanted: (table: Table, row: Row) => boolean,
): readonly ChosenRow[] {
  return standard.entry.tables
    .filter((table) => tableHasGrade(table, grade))
    .flatMap((table) =>
      table.rows
        .filter((row) => isWanted(table, row))
        .map((row) => ({ table, row, key: tradeOf(table, row) ?? cellNumber(row, table.key) ?? '' })),
    );
}

/** A table of grade T serves the three hoist types, one of "3 and 5" both grades, one without a grade every grade. */
function tableHasGrade(table: Table, grade: GradeChoice | null): boolean {
  if (table.grade === undefined || grade === null || grade.base === null) return true;
  return table.grade.split(' and ').includes(grade.base) || (table.grade === 'T' && /^D(A)?T$/.test(grade.base));
}

function tradeOf(table: Table, row: Row): string | null {
  const trade = row.trade;
  return table.key === 'trade' && typeof trade === 'string' ? trade : null;
}

function plainTrade(tradeSize: string): string {
  return tradeSize
    .toLowerCase()
    .replace(/(inch(es)?|in|")\.?\s*$/, '')
    .trim()
    .replace(/\s+/g, '-');
}

function unknownSize(standard: ChosenStandard, grade: GradeChoice, wanted: string): InputError {
  const sizes = listedSizes(standard, grade);
  const [least, greatest] = standard.entry.range;
  const choices = sizes.map(({ size_mm, tradeSize }) =>
    tradeSize === null ? `${size_mm}` : `${tradeSize} in (${size_mm})`,
  );
  const range = coversRange(standard) ? `any size from ${least} to ${greatest} mm; listed are ` : '';
  const label = grade.label === null ? standard.entry.id : `${standard.entry.id}, grade ${grade.label},`;
  return new InputError(
    'chain/unknown-size',
    `${label} has no size ${wanted}. It has: ${range}${choices.join(', ')} mm.`,
    {
      size: wanted,
      choices,
    },
  );
}
