import {
  type Row,
  rulebook,
  type Specification,
  type StandardEntry,
  specificationFor,
  type Table,
} from '../../src/chain/index.ts';

/** One row of one table with one grade it speaks of, and the specification looked up for it. */
export interface LookedUp {
  readonly standard: StandardEntry;
  readonly table: Table;
  readonly row: Row;
  readonly grade: string | undefined;
  readonly specification: Specification;
}

const hoistTypes = ['T', 'DAT', 'DT'];

/** The specification of every row of every table of the rulebook, for every grade it speaks of. */
export function everyRow(): readonly LookedUp[] {
  return rulebook.standards.flatMap((standard) =>
    standard.tables.flatMap((table) =>
      table.rows.flatMap((row) =>
        gradesOf(standard, table).map((grade) => ({
          standard,
          table,
          row,
          grade,
          specification: specificationFor({ standard: standard.id, grade, ...sizeOf(table, row) }),
        })),
      ),
    ),
  );
}

function sizeOf(table: Table, row: Row): { size_mm?: number; tradeSize?: string } {
  return table.key === 'trade' ? { tradeSize: String(row.trade) } : { size_mm: Number(row.d) };
}

/** Grades as the file states them, without the project's own reading of grades. */
function gradesOf(standard: StandardEntry, table: Table): readonly (string | undefined)[] {
  if (standard.id === 'EN 818-7') return hoistTypes;
  if (table.grade !== undefined) return table.grade.split(' and ');
  const named = Object.values(table.columns).flatMap(({ grade }) => grade ?? []);
  const grades = [...new Set(named)];
  if (grades.length === 0) return [undefined];
  return standard.id === 'IACS UR W22'
    ? grades.flatMap((grade) => [grade, `${grade} stud`, `${grade} studless`])
    : grades;
}
