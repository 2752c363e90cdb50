import { writeBlob } from './blob.ts';
import type { Database } from './database.ts';
import { mediaOf } from './media.ts';

export interface FileToAttach {
  readonly campaign: string;
  readonly path: string;
  readonly bytes: Uint8Array;
}

/** Keeps a file under its hash and its path in the campaign; gives what its ledger entry says of it. Call it inside a transaction. */
export async function attach(
  db: Database,
  { campaign, path, bytes }: FileToAttach,
): Promise<Record<string, string | number>> {
  const blob = await writeBlob(db, bytes);
  const media = mediaOf(path);
  await db.insertInto('attachment').values({ campaign, path, sha256: blob.sha256, media }).execute();
  return { path, media, ...blob };
}
