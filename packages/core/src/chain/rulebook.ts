import file from './tables/chain-standards.json' with { type: 'json' };

/** A source of published numbers, as the rulebook lists it once. */
export interface Source {
  /** `published-page`, `formula`, `memory` or `standard-text`. */
  readonly kind: string;
  readonly url?: string;
  readonly citation?: string;
  readonly about?: string;
}

/** Which rows a second page confirms: all, none, or those with these keys. */
export type CrossChecked = boolean | readonly (string | number)[];

/** One column of a table: what its numbers mean and where they come from. */
export interface Column {
  readonly quantity: string;
  readonly unit: string;
  /** First the page the numbers were read on, then those that confirm it. */
  readonly sources?: readonly string[];
  readonly crossChecked?: CrossChecked;
  readonly grade?: string;
  /** `stud`, `studless` or both, for mooring chain. */
  readonly form?: string;
  /** How the source says the number is computed, when it is not printed there. */
  readonly derived?: string;
  readonly rounding?: string;
  readonly note?: string;
  readonly confidence?: string;
}

/** Column name to value; `src` overrides the source of single cells, `doubtful` says why a size may not exist. */
export interface Row {
  readonly [column: string]: number | string | null | undefined | Readonly<Record<string, string | undefined>>;
}

/** Another value that a page gives for the same cell. */
export interface TableAlternative {
  readonly d?: number;
  readonly trade?: string;
  readonly column: string;
  readonly value: number;
  readonly source: string;
  readonly note?: string;
}

/** Cells that are probably misprints. */
export interface SuspectCells {
  readonly d?: number;
  readonly trade?: string;
  readonly columns: readonly string[];
  readonly why: string;
}

export interface Table {
  readonly id: string;
  /** Name of the column that identifies a row: `d` (mm) or `trade` (inch designation). */
  readonly key: string;
  readonly grade?: string;
  readonly about?: string;
  readonly note?: string;
  readonly rounding?: string;
  readonly alternatives?: readonly TableAlternative[];
  readonly suspect?: readonly SuspectCells[];
  readonly columns: Readonly<Record<string, Column>>;
  readonly rows: readonly Row[];
}

export type RuleValue =
  | number
  | null
  | readonly (number | string)[]
  | Readonly<Record<string, number | Readonly<Record<string, number>>>>;

/** Another form of a rule: a value for a case, or coefficients of a grade. */
export interface RuleAlternative {
  readonly value?: number;
  readonly appliesTo?: string;
  readonly sources?: readonly string[];
  readonly source?: string;
  readonly grade?: string;
  readonly note?: string;
  readonly [coefficient: string]: unknown;
}

/** A rule of a standard: an expression over the size (`js`, never evaluated as code here) or a fixed value. */
export interface Rule {
  readonly id: string;
  readonly quantity: string;
  readonly statement: string;
  readonly js?: string;
  readonly value?: RuleValue;
  readonly unit?: string;
  readonly grade?: string;
  readonly sources: readonly string[];
  readonly crossChecked: boolean;
  readonly note?: string;
  readonly coefficients?: Readonly<Record<string, Readonly<Record<string, number>>>>;
  readonly alternatives?: readonly RuleAlternative[];
  readonly tolerance?: { readonly upperPct: number; readonly lowerPct: number; readonly sources: readonly string[] };
}

/** One standard of the rulebook. */
export interface StandardEntry {
  readonly id: string;
  readonly edition: string;
  readonly title: string;
  /** Sizes covered, mm. */
  readonly range: readonly [number, number];
  readonly equivalents?: readonly string[];
  /** A to D: see the rulebook's confidence key. */
  readonly confidence: string;
  readonly confidenceWhy: string;
  readonly rules: readonly Rule[];
  readonly tables: readonly Table[];
}

/** A formula of the standards against a table of theirs. */
export interface TableCheck {
  readonly id: string;
  readonly standard: string;
  readonly table?: string;
  readonly column?: string;
  readonly js: string;
  readonly accept: { readonly abs?: number; readonly rel?: number };
  readonly skip?: readonly (string | number)[];
  /** What was found when the file was made: rows compared, greatest deviation. */
  readonly observed?: { readonly rows: number; readonly maxAbs: number };
  readonly expected?: number;
  readonly also?: { readonly lbf: number; readonly accept: { readonly abs: number } };
}

/** One line of the grade-stress table: fine-tolerance letter, medium-tolerance number, mean stress. */
export interface GradeStress {
  readonly fine: string;
  readonly medium: string;
  readonly value: number | null;
  readonly sources?: readonly string[];
  readonly crossChecked?: boolean;
  readonly note?: string;
}

export interface MachineClasses {
  readonly sources: readonly string[];
  readonly columns: readonly string[];
  readonly rows: readonly (readonly number[])[];
}

/** The rulebook file: published numbers of round steel link chain, each with its source. */
export interface Rulebook {
  readonly title: string;
  readonly conventions: { readonly confidence: Readonly<Record<string, string>> };
  readonly sources: Readonly<Record<string, Source>>;
  /** The vocabulary: what a column or rule may speak of. */
  readonly quantities: Readonly<Record<string, { readonly unit: string; readonly meaning: string }>>;
  readonly general: {
    readonly constants: Readonly<Record<string, { readonly value: number; readonly unit: string }>>;
    readonly preferredNumbers: Readonly<Record<'R10' | 'R20' | 'R40', readonly number[]>>;
    readonly gradeStress: { readonly rows: readonly GradeStress[] };
    readonly formulas: Readonly<
      Record<string, { readonly js: string; readonly vars: Readonly<Record<string, string>> }>
    >;
    readonly machineAccuracy: { readonly classes: MachineClasses };
  };
  readonly standards: readonly StandardEntry[];
  readonly checks: readonly TableCheck[];
}

/**
 * The published rulebook. Nothing in it was read in an official copy of a standard; each value carries its source.
 * The cast names the shape once: the type TypeScript infers from the file is a union of every row's literal shape. A
 * test puts each entry through the reader of own standards, which checks that shape.
 */
export const rulebook = file as unknown as Rulebook;

/** The number in a cell; null where the file has none. */
export function cellNumber(row: Row, column: string): number | null {
  const cell = row[column];
  return typeof cell === 'number' ? cell : null;
}

/** The source that overrides the column's for one cell; null where none does. */
export function cellSource(row: Row, column: string): string | null {
  const overrides = row.src;
  return (typeof overrides === 'object' && overrides !== null ? overrides[column] : undefined) ?? null;
}
