import { type CellValue, type Row, rowFaults, rowId, type Table, type TableName, tables } from '@provinghouse/contract';
import { attach } from './attach.ts';
import { canonicalJson } from './canonical.ts';
import type { Database } from './database.ts';
import { StoreError } from './errors.ts';
import { appendEntries, chain, type LedgerNote, ledgerHead } from './ledger.ts';
import { rowFaultsOf } from './row-check.ts';

export interface RecordsToAdd {
  readonly campaign: string;
  /** New rows by table; `campaign` has its one row already. */
  readonly rows: { readonly [T in Exclude<TableName, 'campaign'>]?: readonly Row<T>[] };
  /** New files by their path in the campaign. */
  readonly files: ReadonlyMap<string, Uint8Array>;
  readonly who: string;
  readonly why: string;
  /** ISO 8601, from the caller's clock. */
  readonly at: string;
}

interface NewRow {
  readonly kind: TableName;
  readonly id: string;
  readonly body: Readonly<Record<string, CellValue>>;
}

/**
 * Adds rows and files to a campaign, each with its ledger entry, in one transaction: all of it or nothing.
 * @returns ledger entries written and the place of the last one
 * @throws StoreError `store/reason-missing`, `store/unknown-campaign`, `store/bad-row` (a row that does not fit its table, or names what
 * the campaign does not hold), `store/already-there` (a key or a path that is taken), `store/held`, `store/full`, `store/read-only`
 */
export async function addRecords(
  db: Database,
  input: RecordsToAdd,
): Promise<{ readonly entries: number; readonly ledgerSeq: number }> {
  const { campaign, at, who } = input;
  const why = input.why.trim();
  const rows = newRows(input);
  if (why === '')
    throw new StoreError('store/reason-missing', 'an addition needs its reason', { context: { campaign } });
  for (const row of rows) refuseBadRow(row);
  return db.transaction().execute(async (transaction) => {
    const head = await ledgerHead(transaction, campaign);
    const notes: LedgerNote[] = [];
    for (const [path, bytes] of input.files) {
      await refuseTakenPath(transaction, campaign, path);
      const after = canonicalJson(await attach(transaction, { campaign, path, bytes }));
      notes.push({ at, who, why, action: 'attach', kind: 'attachment', record: path, before: null, after });
    }
    for (const row of rows) {
      await writeRow(transaction, { ...row, campaign, ledger_seq: head.head_seq + notes.length + 1 });
      const after = canonicalJson(row.body);
      notes.push({ at, who, why, action: 'add', kind: row.kind, record: row.id, before: null, after });
    }
    // Rows may name each other in any order, so what they name is looked for when all are there.
    for (const row of rows) await refuseUnknownNames(transaction, campaign, row);
    const entries = chain(campaign, head, notes);
    await appendEntries(transaction, entries);
    return { entries: entries.length, ledgerSeq: entries.at(-1)?.seq ?? head.head_seq };
  });
}

function newRows({ rows }: RecordsToAdd): NewRow[] {
  return (Object.keys(tables) as TableName[]).flatMap((kind) => {
    // Every table's rows are cells by name; the union of their types is wider than TypeScript follows.
    const bodies = (kind === 'campaign' ? [] : (rows[kind] ?? [])) as unknown as readonly NewRow['body'][];
    return bodies.map((body) => ({ kind, id: rowId(tables[kind], body), body }));
  });
}

function badRow({ kind, id }: NewRow, faults: readonly string[]): StoreError {
  return new StoreError('store/bad-row', `${kind} ${id}: ${faults.join('; ')}`, { context: { kind, id, faults } });
}

function refuseBadRow(row: NewRow): void {
  const cells = rowFaults(row.kind, row.body).map(({ column, fault }) => `${column} ${fault}`);
  const faults = [...rowFaultsOf(row.kind, row.body), ...cells];
  if (faults.length > 0) throw badRow(row, faults);
}

async function refuseTakenPath(db: Database, campaign: string, path: string): Promise<void> {
  const held = await db
    .selectFrom('attachment')
    .select('path')
    .where('campaign', '=', campaign)
    .where('path', '=', path)
    .executeTakeFirst();
  if (held) throw alreadyThere(campaign, path);
}

function alreadyThere(campaign: string, what: string): StoreError {
  return new StoreError('store/already-there', `campaign ${campaign} holds ${what} already`, {
    context: { campaign, what },
  });
}

interface RowToWrite extends NewRow {
  readonly campaign: string;
  readonly ledger_seq: number;
}

async function writeRow(db: Database, { campaign, kind, id, body, ledger_seq }: RowToWrite): Promise<void> {
  const held = await db
    .selectFrom('record')
    .select(['id', 'position'])
    .where('campaign', '=', campaign)
    .where('kind', '=', kind)
    .execute();
  if (held.some((row) => row.id === id)) throw alreadyThere(campaign, `${kind} ${id}`);
  const position = Math.max(-1, ...held.map((row) => row.position)) + 1;
  await db
    .insertInto('record')
    .values({ campaign, kind, id, position, revision: 1, body: canonicalJson(body), ledger_seq })
    .execute();
}

/** A name of another table's row, or of a recording or picture, must be there. */
async function refuseUnknownNames(db: Database, campaign: string, row: NewRow): Promise<void> {
  const fields: Table['fields'] = tables[row.kind].fields;
  const faults: string[] = [];
  for (const [name, field] of Object.entries(fields)) {
    const value = row.body[name];
    if (!field.references || typeof value !== 'string') continue;
    const held = await db
      .selectFrom('record')
      .select('id')
      .where('campaign', '=', campaign)
      .where('kind', '=', field.references)
      .where('id', '=', value)
      .executeTakeFirst();
    if (!held) faults.push(`${name} names "${value}", which is not in ${field.references}`);
  }
  const path = row.kind === 'pulls' ? row.body.trace : row.kind === 'photographs' ? row.body.file : null;
  if (typeof path === 'string' && !(await isAttached(db, campaign, path)))
    faults.push(`it names the file "${path}", which is not attached`);
  if (faults.length > 0) throw badRow(row, faults);
}

async function isAttached(db: Database, campaign: string, path: string): Promise<boolean> {
  const held = await db
    .selectFrom('attachment')
    .select('path')
    .where('campaign', '=', campaign)
    .where('path', '=', path)
    .executeTakeFirst();
  return held !== undefined;
}
