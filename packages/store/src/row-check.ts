import {
  type CellValue,
  readCell,
  rowFaults,
  type Table,
  type TableName,
  tables,
  writeCell,
} from '@provinghouse/contract';
import type { Database } from './database.ts';
import { StoreError } from './errors.ts';

export interface CheckedRow {
  readonly kind: TableName;
  readonly id: string;
  readonly body: Readonly<Record<string, CellValue>>;
}

/** Refuses a row that does not fit its table. @throws StoreError `store/bad-row` */
export function refuseBadRow(row: CheckedRow, further: readonly string[] = []): void {
  const cells = rowFaults(row.kind, row.body).map(({ column, fault }) => `${column} ${fault}`);
  const faults = [...cellFaults(row), ...cells, ...further];
  if (faults.length > 0) throw badRow(row, faults);
}

/** Refuses a row that names another table's row, a recording or a picture which the campaign does not hold. @throws StoreError `store/bad-row` */
export async function refuseUnknownNames(db: Database, campaign: string, row: CheckedRow): Promise<void> {
  const fields: Table['fields'] = tables[row.kind].fields;
  const faults: string[] = [];
  for (const [name, field] of Object.entries(fields)) {
    const value = row.body[name];
    if (!field.references || typeof value !== 'string') continue;
    if (!(await holds(db, { campaign, kind: field.references, id: value })))
      faults.push(`${name} names "${value}", which is not in ${field.references}`);
  }
  const path = row.kind === 'pulls' ? row.body.trace : row.kind === 'photographs' ? row.body.file : null;
  if (typeof path === 'string' && !(await isAttached(db, campaign, path)))
    faults.push(`it names the file "${path}", which is not attached`);
  if (faults.length > 0) throw badRow(row, faults);
}

/** Each value must survive being written to a cell and read back, so that a package says what the record says. */
function cellFaults({ kind, body }: CheckedRow): string[] {
  const table: Table = tables[kind];
  const strange = Object.keys(body).filter((name) => !Object.hasOwn(table.fields, name));
  const faults = strange.map((name) => `${name} is not a field of ${kind}`);
  for (const [name, field] of Object.entries(table.fields)) {
    const value = body[name] ?? null;
    const reading = readCell(field, writeCell(value));
    if (!reading.ok) faults.push(`${name} ${reading.fault}`);
    else if (reading.value !== value) faults.push(`${name} must be a ${field.type} without blanks around it`);
  }
  return faults;
}

function badRow({ kind, id }: CheckedRow, faults: readonly string[]): StoreError {
  return new StoreError('store/bad-row', `${kind} ${id}: ${faults.join('; ')}`, { context: { kind, id, faults } });
}

interface Place {
  readonly campaign: string;
  readonly kind: string;
  readonly id: string;
}

async function holds(db: Database, { campaign, kind, id }: Place): Promise<boolean> {
  const held = await db
    .selectFrom('record')
    .select('id')
    .where('campaign', '=', campaign)
    .where('kind', '=', kind)
    .where('id', '=', id)
    .executeTakeFirst();
  return held !== undefined;
}

/** Whether a file stands at that path of a campaign. */
export async function isAttached(db: Database, campaign: string, path: string): Promise<boolean> {
  const held = await db
    .selectFrom('attachment')
    .select('path')
    .where('campaign', '=', campaign)
    .where('path', '=', path)
    .executeTakeFirst();
  return held !== undefined;
}
