import type { Database } from './database.ts';
import { type LaidBlob, nameBlob } from './laid-blob.ts';
import { mediaOf } from './media.ts';

export interface FileToAttach {
  readonly campaign: string;
  readonly path: string;
  readonly blob: LaidBlob;
}

/** Keeps a file under its hash and its path in the campaign; gives what its ledger entry says of it. Call it inside a transaction. */
export async function attach(
  db: Database,
  { campaign, path, blob }: FileToAttach,
): Promise<Record<string, string | number>> {
  const { sha256, size } = blob;
  await nameBlob(db, blob);
  const media = mediaOf(path);
  await db.insertInto('attachment').values({ campaign, path, sha256, media }).execute();
  return { path, media, sha256, size };
}
