import { bytesKept } from './blob.ts';
import type { Database, LedgerTable } from './database.ts';
import { sha256OfLong } from './laid-blob.ts';
import { emptyHead, entryHash, ledgerEntries, ledgerHead } from './ledger.ts';
import { withdrawn } from './withdraw.ts';

export interface LedgerCheck {
  /** True where the chain is whole and everything kept agrees with it. */
  readonly ok: boolean;
  /** Entries read. */
  readonly entries: number;
  /** Hash of the last entry, as a seal would sign it. */
  readonly head: string;
  /** Number of the first entry that is altered, missing or out of its place; null where the chain is whole. */
  readonly brokenAt: number | null;
  /** Rows and files that are not what the ledger says of them. */
  readonly disagreements: readonly string[];
}

/**
 * Recomputes a campaign's whole ledger: each hash, the chain, its head; then that each row is what its last entry
 * says, that no row was added or taken away beside the ledger, and that each file still has its SHA-256.
 * @throws StoreError `store/unknown-campaign`
 */
export async function verifyLedger(db: Database, campaign: string): Promise<LedgerCheck> {
  const walk = await walkChain(db, campaign);
  const disagreements = [
    ...(await recordDisagreements(db, campaign, walk.latest)),
    ...(await fileDisagreements(db, campaign, walk.latest)),
  ];
  const { entries, head, brokenAt } = walk;
  return { ok: brokenAt === null && disagreements.length === 0, entries, head, brokenAt, disagreements };
}

interface Latest {
  readonly kind: string;
  readonly record: string;
  readonly after: string;
  readonly seq: number;
}

interface Walk {
  readonly entries: number;
  readonly head: string;
  readonly brokenAt: number | null;
  /** The last entry of each thing, by kind and name. */
  readonly latest: ReadonlyMap<string, Latest>;
}

async function walkChain(db: Database, campaign: string): Promise<Walk> {
  const said = await ledgerHead(db, campaign);
  const latest = new Map<string, Latest>();
  let { head_seq: seq, head_hash: hash } = emptyHead;
  let brokenAt: number | null = null;
  let entries = 0;
  for (;;) {
    const page = await ledgerEntries(db, campaign, { after: seq });
    for (const entry of page) {
      if (brokenAt === null && !follows(entry, seq, hash)) brokenAt = Math.min(entry.seq, seq + 1);
      ({ seq, hash } = entry);
      entries += 1;
      latest.set(nameOf(entry.kind, entry.record), { kind: entry.kind, record: entry.record, after: entry.after, seq });
    }
    if (page.length === 0) break;
  }
  if (brokenAt === null && (said.head_seq !== seq || said.head_hash !== hash))
    brokenAt = Math.min(seq, said.head_seq) + 1;
  return { entries, head: hash, brokenAt, latest };
}

function follows(entry: LedgerTable, seq: number, hash: string): boolean {
  return entry.seq === seq + 1 && entry.previous_hash === hash && entry.hash === entryHash(entry);
}

function nameOf(kind: string, record: string): string {
  return `${kind}\n${record}`;
}

async function recordDisagreements(db: Database, campaign: string, latest: Walk['latest']): Promise<string[]> {
  const records = await db
    .selectFrom('record')
    .select(['kind', 'id', 'body', 'ledger_seq'])
    .where('campaign', '=', campaign)
    .execute();
  const found = records.flatMap(({ kind, id, body, ledger_seq }) => {
    const entry = latest.get(nameOf(kind, id));
    if (!entry) return [`${kind} ${id}: the ledger does not know this row`];
    if (entry.after === withdrawn) return [`${kind} ${id}: entry ${entry.seq} withdrew this row, but it is there`];
    return entry.after === body && entry.seq === ledger_seq
      ? []
      : [`${kind} ${id}: the row is not what entry ${entry.seq} says`];
  });
  const there = new Set(records.map(({ kind, id }) => nameOf(kind, id)));
  return [...found, ...missing(latest, there, (kind) => kind !== 'attachment')];
}

async function fileDisagreements(db: Database, campaign: string, latest: Walk['latest']): Promise<string[]> {
  const files = await db
    .selectFrom('attachment')
    .select(['path', 'sha256', 'media'])
    .where('campaign', '=', campaign)
    .execute();
  const found: string[] = [];
  for (const { path, sha256: key, media } of files) {
    const entry = latest.get(nameOf('attachment', path));
    const bytes = await bytesKept(db, key);
    const said = entry && (JSON.parse(entry.after) as { sha256?: string; media?: string; size?: number });
    if (!said) found.push(`${path}: the ledger does not know this file`);
    else if (said.sha256 !== key || said.media !== media)
      found.push(`${path}: the file is not what entry ${entry.seq} says`);
    else if (!bytes || (await sha256OfLong(bytes)) !== key || bytes.length !== said.size)
      found.push(`${path}: the bytes kept no longer have the SHA-256 of the file`);
  }
  const there = new Set(files.map(({ path }) => nameOf('attachment', path)));
  return [...found, ...missing(latest, there, (kind) => kind === 'attachment')];
}

function missing(latest: Walk['latest'], there: ReadonlySet<string>, concerns: (kind: string) => boolean): string[] {
  return [...latest]
    .filter(([name, { kind, after }]) => concerns(kind) && after !== withdrawn && !there.has(name))
    .map(([, { kind, record, seq }]) => `${kind} ${record}: entry ${seq} tells of it, but it is gone`);
}
