import { createHash } from 'node:crypto';
import { readFile } from 'node:fs/promises';
import { InputError, isInputError, readTrace, type TraceOptions, type TraceReading } from '@provinghouse/core';

/** A reading together with the file it came from. */
export interface FileReading extends TraceReading {
  readonly file: string;
  readonly sha256: string;
}

/**
 * Reads one recording from disc.
 * @throws InputError, its message beginning with the file's name
 */
export async function readTraceFile(input: {
  readonly file: string;
  readonly options: TraceOptions;
}): Promise<FileReading> {
  const bytes = await bytesOf(input.file);
  const sha256 = createHash('sha256').update(bytes).digest('hex');
  try {
    return { file: input.file, sha256, ...readTrace(bytes, input.options) };
  } catch (error) {
    if (!isInputError(error)) throw error;
    throw new InputError(error.code, `${input.file}: ${error.message}`, { file: input.file, ...error.context });
  }
}

const cures: Readonly<Record<string, string>> = {
  ENOENT: 'there is no such file',
  EISDIR: 'that is a folder; name the recordings in it',
  EACCES: 'it may not be read; ask for permission to read it',
};

async function bytesOf(file: string): Promise<Uint8Array> {
  try {
    return await readFile(file);
  } catch (error) {
    const code = error instanceof Error && 'code' in error ? String(error.code) : '';
    const cure = cures[code];
    if (cure === undefined) throw error;
    throw new InputError('file/unreadable', `${file}: ${cure}.`, { file });
  }
}
