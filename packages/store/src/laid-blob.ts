import { createHash } from 'node:crypto';
import { setTimeout as pause, setImmediate as yieldToOthers } from 'node:timers/promises';
import type { Database } from './database.ts';
import { isStoreError } from './errors.ts';
import { unknownBlob } from './unknown-blob.ts';

/** A longer blob is kept in parts of this size, each written in a transaction of its own. */
export const partSize_bytes = 2 ** 21;

/** Between two parts, so that another process that waits for its turn to write finds one; SQLite gives it no place in a queue. */
const pause_ms = 10;

/** Bytes that are ready to be named in one short transaction, see {@link nameBlob}. */
export interface LaidBlob {
  readonly sha256: string;
  readonly size: number;
  /** Null where the record holds them already. */
  readonly bytes: Uint8Array | null;
}

/**
 * Gets bytes ready to be kept: works out their hash, and writes all parts of a long blob but its first, which stands in the row that names
 * it. Until it is named nothing of it is part of the record. The SHA-256 of bytes that are held may stand for them. Not to be called
 * inside a transaction, since others write in between.
 * @throws StoreError `store/unknown-blob` for a SHA-256 of which nothing is held
 */
export async function layBlob(db: Database, content: Uint8Array | string): Promise<LaidBlob> {
  const sha256 = typeof content === 'string' ? content : await sha256OfLong(content);
  const held = await db.selectFrom('blob').select('size').where('sha256', '=', sha256).executeTakeFirst();
  if (held) return { sha256, size: held.size, bytes: null };
  if (typeof content === 'string') throw unknownBlob(content);
  const blob = { sha256, size: content.length, bytes: content };
  await orCleared(db, [blob], async () => {
    for (const part of furtherParts(blob)) {
      await db.transaction().execute((transaction) => writePart(transaction, part));
      await pause(pause_ms);
    }
  });
  return blob;
}

/** The same for files by their paths. */
export async function layFiles(
  db: Database,
  files: ReadonlyMap<string, Uint8Array | string>,
): Promise<ReadonlyMap<string, LaidBlob>> {
  const laid = new Map<string, LaidBlob>();
  await orCleared(db, laid.values(), async () => {
    for (const [path, content] of files) laid.set(path, await layBlob(db, content));
  });
  return laid;
}

/** What `work` gives; where it fails, nothing is left of what was laid down for it. */
export async function orCleared<T>(db: Database, laid: Iterable<LaidBlob>, work: () => Promise<T>): Promise<T> {
  try {
    return await work();
  } catch (error) {
    for (const { sha256 } of laid) await clear(db, sha256);
    throw error;
  }
}

/** Makes bytes that were laid down part of the record. Call it inside a transaction. */
export async function nameBlob(db: Database, { sha256, size, bytes }: LaidBlob): Promise<void> {
  if (bytes === null) return;
  const held = await db.selectFrom('blob').select('sha256').where('sha256', '=', sha256).executeTakeFirst();
  if (held) return;
  // All are there, unless somebody opened the record meanwhile and took them for leavings.
  for (const part of furtherParts({ sha256, bytes })) await writePart(db, part);
  await db
    .insertInto('blob')
    .values({ sha256, size, bytes: bytes.subarray(0, partSize_bytes) })
    .execute();
}

/** Clears what was laid down and never named: its process ended in between. */
export async function clearLeavings(db: Database): Promise<void> {
  const left = await db
    .selectFrom('blob_part')
    .select('sha256')
    .distinct()
    .where('sha256', 'not in', db.selectFrom('blob').select('sha256'))
    .execute();
  for (const { sha256 } of left) await clear(db, sha256);
}

/** A record that cannot be written now is cleared when it is opened next. */
async function clear(db: Database, sha256: string): Promise<void> {
  try {
    await db
      .deleteFrom('blob_part')
      .where('sha256', '=', sha256)
      .where('sha256', 'not in', db.selectFrom('blob').select('sha256'))
      .execute();
  } catch (error) {
    if (!isStoreError(error)) throw error;
  }
}

interface Part {
  readonly sha256: string;
  readonly place: number;
  readonly bytes: Uint8Array;
}

function* furtherParts({ sha256, bytes }: { readonly sha256: string; readonly bytes: Uint8Array }): Iterable<Part> {
  for (let place = 1; place * partSize_bytes < bytes.length; place += 1)
    yield { sha256, place, bytes: bytes.subarray(place * partSize_bytes, (place + 1) * partSize_bytes) };
}

/** Whoever writes the same bytes writes the same parts, so one that is there is not written again. */
async function writePart(db: Database, { sha256, place, bytes }: Part): Promise<void> {
  const parts = db.selectFrom('blob_part').select('place').where('sha256', '=', sha256).where('place', '=', place);
  const named = db.selectFrom('blob').select('size').where('sha256', '=', sha256);
  if ((await parts.executeTakeFirst()) || (await named.executeTakeFirst())) return;
  await db.insertInto('blob_part').values({ sha256, place, bytes }).execute();
}

/** SHA-256 of bytes, as 64 hexadecimal digits; others have their turn while a long one is worked out. */
export async function sha256OfLong(bytes: Uint8Array): Promise<string> {
  const hash = createHash('sha256');
  for (let from = 0; from < bytes.length; from += partSize_bytes) {
    if (from > 0) await yieldToOthers();
    hash.update(bytes.subarray(from, from + partSize_bytes));
  }
  return hash.digest('hex');
}
