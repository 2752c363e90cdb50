import { type CellValue, type Row, rowId, type TableName, tables } from '@provinghouse/contract';
import { InputError } from '@provinghouse/core';
import { hidden, hiddenText, type Masks, maskedRow, namesOf } from './blind.ts';

type Cells = Readonly<Record<string, CellValue>>;

/** The code of a sample that a blind screen named, or that its label names. */
function sampleMeant(name: string, { samples }: Masks): string {
  for (const [code, mask] of samples) if (mask === name) return code;
  return name;
}

/** The code of a sample as it stands in the id of a custody row, before the number of the move. */
export function inId(sample: string): string {
  return rowId(tables.custody, { sample, move: '' }).slice(0, -1);
}

/** The id of a row as the record has it, from the id that a blind screen was given. */
export function idMeant(kind: TableName, id: string, { samples }: Masks): string {
  if (kind !== 'custody') return id;
  const cut = id.lastIndexOf('/');
  for (const [sample, mask] of samples) if (id.slice(0, cut) === mask) return `${inId(sample)}${id.slice(cut)}`;
  return id;
}

/** The id of a row as a blind screen is given it. */
export function idShown(kind: TableName, id: string, { products, samples }: Masks): string {
  if (kind === 'products') return products.get(id) ?? hidden;
  if (kind === 'samples') return samples.get(id) ?? hidden;
  if (kind !== 'custody') return id;
  const cut = id.lastIndexOf('/');
  for (const [sample, mask] of samples) if (id.slice(0, cut) === inId(sample)) return `${mask}${id.slice(cut)}`;
  return hidden;
}

/** A row with its samples named by their codes; everything else stands as it was sent. */
export function namesMeant(kind: TableName, body: Cells, masks: Masks): Cells {
  const meant = Object.entries(body).map(([column, value]) =>
    namesOf(kind, column) === 'samples' && typeof value === 'string'
      ? [column, sampleMeant(value, masks)]
      : [column, value],
  );
  return Object.fromEntries(meant);
}

interface Sent {
  readonly kind: TableName;
  readonly body: Cells;
}

/**
 * A row as it was meant by whoever sees the rows masked: samples by their codes, and what was not shown as it is kept. The stand-in of what was
 * not shown is never kept, also where it comes in after the unblinding.
 * @param held the row as kept; null for a new one
 * @throws InputError `entry/blind`
 */
export function rowMeant({ kind, body }: Sent, masks: Masks | null, held: Row<TableName> | null): Cells {
  const kept: Cells = held ?? {};
  const unseen = masks === null || held === null ? {} : unseenCells(kind, held, masks);
  const named = masks === null ? body : namesMeant(kind, body, masks);
  const meant = Object.entries(named).map(([column, value]) => {
    if (Object.hasOwn(unseen, column) && value === unseen[column]) return [column, kept[column]];
    if (value === hidden || value === hiddenText) throw notShown(column);
    return [column, value];
  });
  return Object.fromEntries(meant);
}

/** Nobody writes over what they were not shown. @throws InputError `entry/blind` */
export function refuseUnseen({ kind, body }: Sent, masks: Masks, held: Row<TableName>): void {
  const kept: Cells = held;
  const over = Object.keys(unseenCells(kind, held, masks)).find((column) => body[column] !== kept[column]);
  if (over !== undefined) throw notShown(over);
}

/** What is shown in place of the cells of a row that are hidden; a sample is not, since its neutral name means it. */
function unseenCells(kind: TableName, held: Row<TableName>, masks: Masks): Cells {
  const kept: Cells = held;
  const shown: Cells = maskedRow(kind, held, masks);
  const unseen = Object.entries(shown).filter(
    ([column, value]) => value !== kept[column] && namesOf(kind, column) === null,
  );
  return Object.fromEntries(unseen);
}

function notShown(column: string): InputError {
  return new InputError(
    'entry/blind',
    `The ${column} of this row is not shown while the campaign is blind. Leave it as it stands, or open the row anew after the unblinding.`,
  );
}
