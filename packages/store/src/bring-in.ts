import { type CampaignRows, type CellValue, rowId, type TableName, tables } from '@provinghouse/contract';
import { attach } from './attach.ts';
import { campaignContent } from './campaign.ts';
import { canonicalJson } from './canonical.ts';
import { contentHash } from './content.ts';
import type { Database, RecordTable } from './database.ts';
import { StoreError } from './errors.ts';
import { type LaidBlob, layFiles, orCleared } from './laid-blob.ts';
import { appendEntries, batchSize, chain, emptyHead, type LedgerNote } from './ledger.ts';

export interface CampaignToBringIn {
  readonly rows: CampaignRows;
  /** Every file that is not a table, by its path in the package. */
  readonly files: ReadonlyMap<string, Uint8Array>;
  readonly who: string;
  /** ISO 8601, from the caller's clock. */
  readonly at: string;
  readonly why: string;
  /** Called as files and rows are written. */
  readonly onProgress?: (done: number, total: number) => void;
}

export interface BroughtIn {
  readonly campaign: string;
  /** True where the record holds the same content already; nothing was written then. */
  readonly alreadyHeld: boolean;
  /** Ledger entries written. */
  readonly entries: number;
}

/**
 * Writes a campaign with all its rows and files, each with its ledger entry, in one transaction: all of it or nothing.
 * The rows must have been checked before.
 * @throws StoreError `store/campaign-differs` where the record holds other content under that code; `store/held`,
 * `store/full`, `store/read-only`
 */
export async function bringInCampaign(db: Database, input: CampaignToBringIn): Promise<BroughtIn> {
  const campaign = input.rows.campaign[0]?.campaign;
  if (campaign === undefined) throw new StoreError('store/bad-row', 'the campaign table holds no row');
  const files = await layFiles(db, input.files);
  const hashes = [...files].map(([path, { sha256 }]) => [path, sha256]);
  const content = contentHash(input.rows, Object.fromEntries(hashes));
  const keep = async (transaction: Database) => {
    const held = await campaignContent(transaction, campaign);
    if (held) return alreadyHeld(campaign, held, content);
    await transaction
      .insertInto('campaign')
      .values({ code: campaign, brought_in_at: input.at, content_sha256: content, ...emptyHead })
      .execute();
    return { campaign, alreadyHeld: false, entries: await writeContent(transaction, campaign, { ...input, files }) };
  };
  return orCleared(db, files.values(), () => db.transaction().execute(keep));
}

function alreadyHeld(campaign: string, held: { broughtIn: string; now: string }, content: string): BroughtIn {
  if (held.broughtIn !== content && held.now !== content)
    throw new StoreError('store/campaign-differs', `the record holds a campaign "${campaign}" with other content`, {
      context: { campaign },
    });
  return { campaign, alreadyHeld: true, entries: 0 };
}

interface LaidCampaign extends Omit<CampaignToBringIn, 'files'> {
  readonly files: ReadonlyMap<string, LaidBlob>;
}

async function writeContent(db: Database, campaign: string, input: LaidCampaign): Promise<number> {
  const records = toRecords(campaign, input.rows);
  const total = records.length + input.files.size;
  const notes: LedgerNote[] = [];
  const { at, who, why } = input;
  for (const [path, blob] of input.files) {
    const after = canonicalJson(await attach(db, { campaign, path, blob }));
    notes.push({ at, who, why, action: 'attach', kind: 'attachment', record: path, before: null, after });
    input.onProgress?.(notes.length, total);
  }
  const firstSeq = notes.length + 1;
  const numbered = records.map((record, index) => ({ ...record, ledger_seq: firstSeq + index }));
  for (const { kind, id, body } of numbered)
    notes.push({ at, who, why, action: 'bring in', kind, record: id, before: null, after: body });
  for (let i = 0; i < numbered.length; i += batchSize) {
    const batch = numbered.slice(i, i + batchSize);
    await db.insertInto('record').values(batch).execute();
    input.onProgress?.(input.files.size + i + batch.length, total);
  }
  await appendEntries(db, chain(campaign, emptyHead, notes));
  return notes.length;
}

function toRecords(campaign: string, rows: CampaignRows): RecordTable[] {
  return (Object.keys(tables) as TableName[]).flatMap((kind) => {
    // Every table's rows are cells by name; the union of their types is wider than TypeScript follows.
    const cells = rows[kind] as unknown as readonly Readonly<Record<string, CellValue>>[];
    return cells.map((row, position) => ({
      campaign,
      kind,
      id: rowId(tables[kind], row),
      position,
      revision: 1,
      body: canonicalJson(row),
      ledger_seq: 0,
    }));
  });
}
