import { tables } from '@provinghouse/contract';
import { contentHash } from './content.ts';
import type { Database } from './database.ts';
import { emptyHead } from './ledger.ts';

/**
 * Where the lab keeps what belongs to no campaign: its people, instruments, certificates, check readings and own specifications. It is a
 * book like a campaign's, with its own ledger; no campaign can have this code, as codes begin with a letter or a digit.
 */
export const benchBook = '_bench';

/** Opens the book of the bench where it is not there yet. */
export async function openBenchBook(db: Database, at: string): Promise<void> {
  const held = await db.selectFrom('campaign').select('code').where('code', '=', benchBook).executeTakeFirst();
  if (held) return;
  const none = Object.fromEntries(Object.keys(tables).map((name) => [name, []]));
  // No rows in any table, by the line above.
  const content = contentHash(none as unknown as Parameters<typeof contentHash>[0], {});
  await db
    .insertInto('campaign')
    .values({ code: benchBook, brought_in_at: at, content_sha256: content, ...emptyHead })
    .execute();
}
