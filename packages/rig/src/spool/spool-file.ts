import { type FileHandle, open } from 'node:fs/promises';
import { dirname } from 'node:path';
import { InputError } from '@provinghouse/core';

/** The little of a file that a spool needs. */
export interface SpoolFile {
  /** Writes all bytes at the place, or rejects; after a rejection the file may hold some of them. */
  write(bytes: Uint8Array, at: number): Promise<void>;
  /** Resolves once everything written lies on the disc itself. */
  sync(): Promise<void>;
  truncate(length: number): Promise<void>;
  close(): Promise<void>;
}

function spoolFile(handle: FileHandle): SpoolFile {
  return {
    async write(bytes, at) {
      let done = 0;
      while (done < bytes.length)
        done += (await handle.write(bytes, done, bytes.length - done, at + done)).bytesWritten;
    },
    sync: () => handle.datasync(),
    truncate: (length) => handle.truncate(length),
    close: () => handle.close(),
  };
}

function codeOf(error: unknown): string {
  return error instanceof Error && 'code' in error ? String(error.code) : '';
}

/** So that the name of a new file outlives a power cut. Some file systems refuse to sync a folder; the file itself is synced all the same. */
async function syncFolder(path: string): Promise<void> {
  const folder = await open(dirname(path), 'r');
  try {
    await folder.sync();
  } catch {
  } finally {
    await folder.close();
  }
}

/**
 * A new file for a record; one that is there already is never written over.
 * @throws InputError spool/exists, spool/unwritable
 */
export async function newSpoolFile(path: string): Promise<SpoolFile> {
  try {
    const handle = await open(path, 'wx', 0o600);
    await syncFolder(path);
    return spoolFile(handle);
  } catch (error) {
    if (codeOf(error) === 'EEXIST')
      throw new InputError('spool/exists', `There is a record at ${path} already; take it up again or seal it.`, {
        path,
      });
    const why = error instanceof Error ? error.message : String(error);
    throw new InputError('spool/unwritable', `No record can be kept at ${path}: ${why}`, { path });
  }
}

/** @throws InputError spool/unwritable */
export async function oldSpoolFile(path: string): Promise<SpoolFile> {
  try {
    return spoolFile(await open(path, 'r+'));
  } catch (error) {
    const why = error instanceof Error ? error.message : String(error);
    throw new InputError('spool/unwritable', `The record at ${path} cannot be gone on with: ${why}`, { path });
  }
}

/** Words for a write that failed. */
export function writeFault(error: unknown): string {
  const code = codeOf(error);
  if (code === 'ENOSPC' || code === 'EDQUOT') return 'The disc is full';
  return `The disc refuses (${error instanceof Error ? error.message : String(error)})`;
}

export { syncFolder };
