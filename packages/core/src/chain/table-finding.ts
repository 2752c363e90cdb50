import { tidy, toBenchUnit } from './bench-unit.ts';
import type { Choice, Finding } from './choice.ts';
import { citationOf, isCrossChecked, provenanceOf } from './provenance.ts';
import { type Column, cellNumber, cellSource, type Row, type Table } from './rulebook.ts';
import type { ChosenRow } from './size-selection.ts';
import type { Flag, Provenance } from './specification.ts';

const benchUnits: Readonly<Record<string, string>> = {
  breakingForceMin: 'kN',
  proofForce: 'kN',
  workingLoadLimit: 't',
  massPerMetre: 'kg/m',
  elongationMin: '%',
};

/** The unit a quantity of the rulebook file is brought to. */
export function benchUnitOf(quantity: string): string {
  return benchUnits[quantity] ?? 'mm';
}

/** All cells of a quantity for the chosen size and grade, in the order of the file. */
export function findInTables(choice: Choice, quantity: string): readonly Finding[] {
  return choice.size.rows.flatMap((chosen) =>
    Object.entries(chosen.table.columns)
      .filter(([name, column]) => column.quantity === quantity && columnApplies(name, column, choice))
      .flatMap(([name, column]) => cellFinding(choice, chosen, { name, column }) ?? []),
  );
}

function columnApplies(name: string, column: Column, { grade, lengthClass }: Choice): boolean {
  const classOfColumn = /^class([AB])/.exec(name)?.[1];
  if (classOfColumn !== undefined && classOfColumn !== lengthClass) return false;
  if (column.grade !== undefined && column.grade !== grade.base) return false;
  return column.form === undefined || column.form === 'stud and studless' || column.form === grade.form;
}

function cellFinding(
  choice: Choice,
  { table, row, key }: ChosenRow,
  { name, column }: { readonly name: string; readonly column: Column },
): Finding | null {
  const cell = cellNumber(row, name);
  const value = cell === null ? null : toBenchUnit(cell, column.unit, benchUnitOf(column.quantity));
  if (value === null) return null;
  const override = cellSource(row, name);
  const crossChecked = isCrossChecked(column.crossChecked, key, override !== null);
  const columnSources = column.sources ?? [];
  const ids = override === null ? columnSources : [override, ...(crossChecked ? columnSources : [])];
  const suspect = table.suspect?.find((cells) => isRow(cells, table, row) && cells.columns.includes(name));
  const flags: Flag[] = [];
  if (suspect !== undefined) flags.push('suspect');
  if (column.derived !== undefined && override === null) flags.push('derived');
  return {
    value: tidy(value),
    place: `table ${table.id}, ${table.key} = ${key}`,
    provenance: provenanceOf({
      ids: [...new Set(ids)],
      sources: choice.standard.sources,
      crossChecked,
      flags,
      alternatives: alternativesOf(choice, { table, row, key }, { name, column }),
      notes: [...cellNotes(table, row, column), suspect?.why, ...alternativeNotes(table, row, name)],
    }),
  };
}

function cellNotes(table: Table, row: Row, column: Column): readonly (string | null)[] {
  const doubtful = row.doubtful;
  return [
    column.derived === undefined ? null : `computed as ${column.derived}`,
    column.rounding === undefined ? null : `rounded: ${column.rounding}`,
    table.rounding === undefined || column.unit !== 'kN' ? null : `rounded: ${table.rounding}`,
    column.note === undefined || column.note === 'symmetric' ? null : column.note,
    column.confidence === undefined ? null : `confidence ${column.confidence}`,
    column.confidence === undefined ? null : (table.note ?? null),
    typeof doubtful === 'string' ? doubtful : null,
  ];
}

function alternativesOf(
  choice: Choice,
  { table, row }: ChosenRow,
  { name, column }: { readonly name: string; readonly column: Column },
): Provenance['alternatives'] {
  return (table.alternatives ?? []).flatMap((other) => {
    if (other.column !== name || !isRow(other, table, row)) return [];
    const value = toBenchUnit(other.value, column.unit, benchUnitOf(column.quantity));
    if (value === null) return [];
    return [{ value, citation: citationOf(other.source, choice.standard.sources).text }];
  });
}

function alternativeNotes(table: Table, row: Row, name: string): readonly (string | undefined)[] {
  return (table.alternatives ?? [])
    .filter((other) => other.column === name && isRow(other, table, row))
    .map((other) => other.note);
}

function isRow(named: { readonly d?: number; readonly trade?: string }, table: Table, row: Row): boolean {
  return table.key === 'trade' ? named.trade === row.trade : named.d === row.d;
}
