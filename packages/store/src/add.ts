import { type Row, rowId, type TableName, tables } from '@provinghouse/contract';
import { attach } from './attach.ts';
import { canonicalJson } from './canonical.ts';
import type { Database } from './database.ts';
import { StoreError } from './errors.ts';
import { layFiles, orCleared } from './laid-blob.ts';
import { appendEntries, chain, type LedgerNote, ledgerHead } from './ledger.ts';
import { type CheckedRow, isAttached, refuseBadRow, refuseUnknownNames } from './row-check.ts';

export interface RecordsToAdd {
  readonly campaign: string;
  /** New rows by table; `campaign` has its one row already. */
  readonly rows: { readonly [T in Exclude<TableName, 'campaign'>]?: readonly Row<T>[] };
  /** New files by their path in the campaign: their bytes, or the SHA-256 of bytes that are held already. */
  readonly files: ReadonlyMap<string, Uint8Array | string>;
  readonly who: string;
  readonly why: string;
  /** ISO 8601, from the caller's clock. */
  readonly at: string;
}

/**
 * Adds rows and files to a campaign, each with its ledger entry, in one transaction: all of it or nothing.
 * @returns ledger entries written and the place of the last one
 * @throws StoreError `store/reason-missing`, `store/unknown-campaign`, `store/bad-row` (a row that does not fit its table, or names what
 * the campaign does not hold), `store/already-there` (a key or a path that is taken), `store/unknown-blob`,
 * `store/held`, `store/full`, `store/read-only`
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
  const files = await layFiles(db, input.files);
  const add = async (transaction: Database) => {
    const head = await ledgerHead(transaction, campaign);
    const notes: LedgerNote[] = [];
    for (const [path, blob] of files) {
      if (await isAttached(transaction, campaign, path)) throw alreadyThere(campaign, path);
      const after = canonicalJson(await attach(transaction, { campaign, path, blob }));
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
  };
  return orCleared(db, files.values(), () => db.transaction().execute(add));
}

function newRows({ rows }: RecordsToAdd): CheckedRow[] {
  return (Object.keys(tables) as TableName[]).flatMap((kind) => {
    // Every table's rows are cells by name; the union of their types is wider than TypeScript follows.
    const bodies = (kind === 'campaign' ? [] : (rows[kind] ?? [])) as unknown as readonly CheckedRow['body'][];
    return bodies.map((body) => ({ kind, id: rowId(tables[kind], body), body }));
  });
}

function alreadyThere(campaign: string, what: string): StoreError {
  return new StoreError('store/already-there', `campaign ${campaign} holds ${what} already`, {
    context: { campaign, what },
  });
}

interface RowToWrite extends CheckedRow {
  readonly campaign: string;
  readonly ledger_seq: number;
}

async function writeRow(db: Database, { campaign, kind, id, body, ledger_seq }: RowToWrite): Promise<void> {
  const ofKind = db.selectFrom('record').where('campaign', '=', campaign).where('kind', '=', kind);
  if (await ofKind.select('id').where('id', '=', id).executeTakeFirst()) throw alreadyThere(campaign, `${kind} ${id}`);
  const last = await ofKind.select(({ fn }) => fn.max('position').as('position')).executeTakeFirst();
  const position = (last?.position ?? -1) + 1;
  const revision = 1 + (await timesWritten(db, { campaign, kind, id }));
  await db
    .insertInto('record')
    .values({ campaign, kind, id, position, revision, body: canonicalJson(body), ledger_seq })
    .execute();
}

/** A row that was withdrawn and is written again goes on counting its revisions, so that an old copy of it never fits. */
async function timesWritten(db: Database, at: Pick<RowToWrite, 'campaign' | 'kind' | 'id'>): Promise<number> {
  const told = await db
    .selectFrom('ledger')
    .select(({ fn }) => fn.countAll().as('times'))
    .where('campaign', '=', at.campaign)
    .where('kind', '=', at.kind)
    .where('record', '=', at.id)
    .executeTakeFirst();
  return Number(told?.times ?? 0);
}
