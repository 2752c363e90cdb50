import { setImmediate as yieldToOthers } from 'node:timers/promises';
import type { Database } from './database.ts';
import { StoreError } from './errors.ts';
import { type LaidBlob, layBlob, nameBlob, orCleared, sha256OfLong } from './laid-blob.ts';
import { unknownBlob } from './unknown-blob.ts';

/** Keeps bytes under their SHA-256; bytes that are there already are not written again. Others write while a long blob is written. */
export async function writeBlob(db: Database, bytes: Uint8Array): Promise<Pick<LaidBlob, 'sha256' | 'size'>> {
  const laid = await layBlob(db, bytes);
  await orCleared(db, [laid], () => db.transaction().execute((transaction) => nameBlob(transaction, laid)));
  return { sha256: laid.sha256, size: laid.size };
}

/**
 * The bytes kept under a SHA-256.
 * @throws StoreError `store/unknown-blob`, or `store/damaged` where they no longer have that hash
 */
export async function readBlob(db: Database, key: string): Promise<Uint8Array> {
  const bytes = await bytesKept(db, key);
  if (!bytes) throw unknownBlob(key);
  if ((await sha256OfLong(bytes)) !== key)
    throw new StoreError(
      'store/damaged',
      `the file kept under SHA-256 ${key} has been altered; restore the record from a copy`,
      {
        context: { sha256: key },
      },
    );
  return bytes;
}

/** The bytes as they are, whether they still have that hash or not; null where nothing is kept under it. */
export async function bytesKept(db: Database, key: string): Promise<Uint8Array | null> {
  const blob = await db.selectFrom('blob').select(['size', 'bytes']).where('sha256', '=', key).executeTakeFirst();
  if (!blob) return null;
  if (blob.bytes.length === blob.size) return blob.bytes;
  const parts = [blob.bytes];
  const ofBlob = db.selectFrom('blob_part').where('sha256', '=', key);
  for (const { place } of await ofBlob.select('place').orderBy('place').execute()) {
    await yieldToOthers();
    parts.push((await ofBlob.select('bytes').where('place', '=', place).executeTakeFirstOrThrow()).bytes);
  }
  return Buffer.concat(parts);
}
