import { open, rename, rm } from 'node:fs/promises';
import { InputError } from '@provinghouse/core';

/** Writes a file whole or not at all: under another name first, flushed to the disc, then renamed. */
export async function writeWhole(file: string, bytes: Uint8Array): Promise<void> {
  const unfinished = `${file}.unfinished`;
  try {
    const handle = await open(unfinished, 'w');
    try {
      await handle.writeFile(bytes);
      await handle.sync();
    } finally {
      await handle.close();
    }
    await rename(unfinished, file);
  } catch (error) {
    await rm(unfinished, { force: true });
    throw unwritable(error, file);
  }
}

const cures: Readonly<Record<string, string>> = {
  ENOENT: 'its folder does not exist; make it first',
  EACCES: 'writing there is not permitted',
  EISDIR: 'that is a folder; name a file',
  ENOSPC: 'the disc is full; make room and try again',
  EROFS: 'the disc may only be read',
};

function unwritable(error: unknown, file: string): unknown {
  const code = error instanceof Error && 'code' in error ? String(error.code) : '';
  const cure = cures[code];
  return cure === undefined ? error : new InputError('file/unwritable', `${file}: ${cure}.`, { file });
}
