import { type SqlBool, sql } from 'kysely';
import type { Database } from './database.ts';
import type { LedgerEntry } from './ledger.ts';

export interface EntriesAsked {
  readonly campaign: string;
  /** Kinds of record; empty for all. */
  readonly kinds: readonly string[];
}

export interface NewestAsked extends EntriesAsked {
  /** Only entries before this one; null for the newest. */
  readonly before: number | null;
  readonly limit: number;
  /** Lower-case words, see {@link newestEntries}. */
  readonly words?: readonly string[];
}

/**
 * Entries of a campaign's ledger, newest first. With words, entries that cannot hold them all in any of their cells are left out; one that
 * is given need not hold them, as its cells stand here as JSON.
 */
export async function newestEntries(db: Database, asked: NewestAsked): Promise<LedgerEntry[]> {
  const { before, limit, words = [] } = asked;
  let places = entriesOf(db, asked).select('seq').orderBy('seq', 'desc').limit(limit);
  if (before !== null) places = places.where('seq', '<', before);
  for (const piece of words.flatMap(plainPieces)) places = places.where(sql<SqlBool>`instr(${text}, ${piece}) > 0`);
  const rows = await db
    .selectFrom('ledger')
    .selectAll()
    .where('campaign', '=', asked.campaign)
    .where('seq', 'in', places)
    .orderBy('seq', 'desc')
    .execute();
  return rows.map((row) => ({ ...row }));
}

/** How many entries a campaign's ledger holds. */
export async function countEntries(db: Database, asked: EntriesAsked): Promise<number> {
  const counted = await entriesOf(db, asked)
    .select(({ fn }) => fn.countAll().as('entries'))
    .executeTakeFirst();
  return Number(counted?.entries ?? 0);
}

export interface EntryOf {
  readonly campaign: string;
  readonly kind: string;
  readonly id: string;
}

/** The last entry about one record; null where the ledger tells of none. */
export async function lastEntryOf(db: Database, { campaign, kind, id }: EntryOf): Promise<LedgerEntry | null> {
  const entry = await db
    .selectFrom('ledger')
    .selectAll()
    .where('campaign', '=', campaign)
    .where('kind', '=', kind)
    .where('record', '=', id)
    .orderBy('seq', 'desc')
    .limit(1)
    .executeTakeFirst();
  return entry ? { ...entry } : null;
}

function entriesOf(db: Database, { campaign, kinds }: EntriesAsked) {
  const entries = db.selectFrom('ledger').where('campaign', '=', campaign);
  return kinds.length === 0 ? entries : entries.where('kind', 'in', kinds);
}

const cells = ['seq', 'at', 'who', 'action', 'kind', 'record', 'why', 'before', 'after'];
const text = sql`lower(${sql.join(
  cells.map((cell) => sql`coalesce(${sql.ref(cell)}, '')`),
  sql` || char(10) || `,
)})`;

/**
 * The pieces of a word that stand in JSON as they do outside of it, and that SQLite's lower(), which knows the letters of ASCII alone, finds
 * wherever JavaScript's does. JavaScript makes a k of the Kelvin sign and an i of a dotted capital I, so those two letters are passed over.
 */
function plainPieces(word: string): readonly string[] {
  return word.match(/[a-hjl-z0-9.:-]+/g) ?? [];
}
