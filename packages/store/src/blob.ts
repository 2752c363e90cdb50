import { sha256 } from './canonical.ts';
import type { Database } from './database.ts';
import { StoreError } from './errors.ts';

/** Keeps bytes under their SHA-256; bytes that are there already are not written again. */
export async function writeBlob(db: Database, bytes: Uint8Array): Promise<{ sha256: string; size: number }> {
  const key = sha256(bytes);
  const held = await db.selectFrom('blob').select('sha256').where('sha256', '=', key).executeTakeFirst();
  if (!held) await db.insertInto('blob').values({ sha256: key, size: bytes.length, bytes }).execute();
  return { sha256: key, size: bytes.length };
}

/**
 * The bytes kept under a SHA-256.
 * @throws StoreError `store/unknown-blob`, or `store/damaged` where they no longer have that hash
 */
export async function readBlob(db: Database, key: string): Promise<Uint8Array> {
  const blob = await db.selectFrom('blob').select('bytes').where('sha256', '=', key).executeTakeFirst();
  if (!blob)
    throw new StoreError('store/unknown-blob', `the record holds no file with SHA-256 ${key}`, {
      context: { sha256: key },
    });
  if (sha256(blob.bytes) !== key)
    throw new StoreError(
      'store/damaged',
      `the file kept under SHA-256 ${key} has been altered; restore the record from a copy`,
      {
        context: { sha256: key },
      },
    );
  return blob.bytes;
}
