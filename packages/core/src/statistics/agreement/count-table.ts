/** A table of counts without its empty rows and columns, which tell nothing. */
export interface CountTable {
  readonly rows: readonly (readonly number[])[];
  readonly rowSums: readonly number[];
  readonly columnSums: readonly number[];
  readonly n: number;
}

/** Rows of unequal length, and counts that are not whole and at least 0, throw a RangeError. */
export function countTable(table: readonly (readonly number[])[]): CountTable {
  const width = table[0]?.length ?? 0;
  if (!table.every((row) => row.length === width)) throw new RangeError('the rows of a table are equally long');
  if (!table.flat().every((count) => Number.isInteger(count) && count >= 0)) {
    throw new RangeError('counts are whole numbers of at least 0');
  }
  const kept = (table[0] ?? []).map((_, place) => table.some((row) => (row[place] ?? 0) > 0));
  const rows = table
    .filter((row) => row.some((count) => count > 0))
    .map((row) => row.filter((_, place) => kept[place]));
  const rowSums = rows.map(sumOf);
  const columnSums = (rows[0] ?? []).map((_, place) => sumOf(rows.map((row) => row[place] ?? 0)));
  return { rows, rowSums, columnSums, n: sumOf(rowSums) };
}

/** The table turned so that its rows are no more than its columns. */
export function wide(table: CountTable): CountTable {
  if (table.rowSums.length <= table.columnSums.length) return table;
  const rows = table.columnSums.map((_, place) => table.rows.map((row) => row[place] ?? 0));
  return { rows, rowSums: table.columnSums, columnSums: table.rowSums, n: table.n };
}

/** Why a table cannot show a difference; null when it can. */
export function tableReason(table: CountTable): string | null {
  if (table.n === 0) return 'nothing was counted';
  if (table.rowSums.length < 2) return 'only one row has counts';
  if (table.columnSums.length < 2) return 'only one column has counts: there is nothing to tell apart';
  return null;
}

export function sumOf(values: readonly number[]): number {
  return values.reduce((sum, value) => sum + value, 0);
}
