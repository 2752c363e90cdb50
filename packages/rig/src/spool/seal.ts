import { createHash } from 'node:crypto';
import { chmod, type FileHandle, open, rename, rm, stat } from 'node:fs/promises';
import { InputError, type WatchSample } from '@provinghouse/core';
import { readAccount, type SpoolAccount } from './account.ts';
import { syncFolder } from './spool-file.ts';
import { readSpool } from './spool-reader.ts';

export interface SealedTrace extends SpoolAccount {
  readonly path: string;
  /** Of the bytes of the trace, hexadecimal. */
  readonly sha256: string;
  readonly bytes: number;
}

export type SealProgress = (doneBytes: number, totalBytes: number) => void;

type Column = 'table_mm' | 'extension_mm';

const PRACTICE = '# practice: simulated, not the record of a real piece\n';

/** A length to the nanometre. */
function lengthCell(value: number | null): string {
  return value === null ? '' : String(Number(value.toFixed(6)));
}

function rowOf(sample: WatchSample, columns: readonly Column[]): string {
  const lengths = columns.map((column) => `,${lengthCell(sample[column])}`).join('');
  return `${sample.time_s.toFixed(6)},${sample.force_kN}${lengths}\n`;
}

/** What the first lines of a trace say; known for certain only once the whole record was read. */
interface Shape {
  /** Columns that hold at least one number: one without would be no column to whoever reads the trace. */
  readonly columns: readonly Column[];
  readonly isPractice: boolean;
}

interface Written {
  readonly account: SpoolAccount;
  readonly sha256: string;
  readonly bytes: number;
  readonly found: Shape;
}

type Passed = (bytes: number) => void;

async function writeTrace(
  spoolPath: string,
  file: FileHandle,
  { shape: { columns, isPractice }, passed }: { readonly shape: Shape; readonly passed: Passed },
): Promise<Written> {
  const hash = createHash('sha256');
  const used = new Set<Column>();
  let bytes = 0;
  const write = async (text: string) => {
    hash.update(text);
    bytes += (await file.write(text)).bytesWritten;
  };
  await write(`${isPractice ? PRACTICE : ''}${['time_s', 'force_kN', ...columns].join(',')}\n`);
  const take = (batch: readonly WatchSample[]) => {
    for (const column of columns)
      if (!used.has(column) && batch.some((sample) => sample[column] !== null)) used.add(column);
    return write(batch.map((sample) => rowOf(sample, columns)).join(''));
  };
  const account = await readAccount(spoolPath, take, passed);
  const found = { columns: columns.filter((column) => used.has(column)), isPractice: account.isPractice };
  return { account, sha256: hash.digest('hex'), bytes, found };
}

/** What the record is likely to be, by what stands before its first reading. */
async function likelyShape(spoolPath: string): Promise<Shape> {
  let columns: readonly Column[] = ['table_mm', 'extension_mm'];
  let isPractice = false;
  for await (const found of readSpool(spoolPath)) {
    if (found.kind !== 'entry' || found.entry.kind === 'readings') break;
    const { entry } = found;
    if (entry.kind === 'practice') isPractice = true;
    if (entry.kind !== 'header') continue;
    const signals = entry.header.sources.flatMap((source) => source.channels.map((channel) => `${channel.signal}_mm`));
    columns = columns.filter((column) => signals.includes(column));
    isPractice ||= entry.header.isPractice;
  }
  return { columns, isPractice };
}

/** Written as the record is likely to be, and once more when it turns out to be otherwise. */
async function writeShaped(spoolPath: string, file: FileHandle, passed: Passed): Promise<Written> {
  const shape = await likelyShape(spoolPath);
  const first = await writeTrace(spoolPath, file, { shape, passed });
  const { found } = first;
  if (found.columns.length === shape.columns.length && found.isPractice === shape.isPractice) return first;
  await file.truncate(0);
  return writeTrace(spoolPath, file, { shape: found, passed });
}

async function writePart(spoolPath: string, part: string, progress: SealProgress): Promise<Written> {
  const file = await open(part, 'a', 0o600);
  const total = await stat(spoolPath).then(
    ({ size }) => size,
    () => 0,
  );
  try {
    const written = await writeShaped(spoolPath, file, (bytes) => progress(bytes, total));
    await file.sync();
    return written;
  } finally {
    await file.close();
  }
}

/**
 * Turns a spool into a plain trace: `time_s,force_kN` and `table_mm`, `extension_mm` where there are any, with its SHA-256. A practice record says
 * so in its first line. The spool stays as it is. The trace is whole or not there: it is written under another name, synced and renamed, and then
 * may only be read. Forces are written as they were read, lengths to a nanometre, times to a microsecond.
 * @param progress told often, in bytes of the spool; a record that is not what its beginning promised is gone through twice
 * @throws InputError spool/unreadable, spool/nothing-recorded, spool/unwritable
 */
export async function sealSpool(
  spoolPath: string,
  tracePath: string,
  progress: SealProgress = () => {},
): Promise<SealedTrace> {
  const part = `${tracePath}.part`;
  try {
    await rm(part, { force: true });
    const { account, sha256, bytes } = await writePart(spoolPath, part, progress);
    if (account.samples === 0)
      throw new InputError('spool/nothing-recorded', `The record at ${spoolPath} holds no force reading.`, {
        notes: account.notes,
      });
    await chmod(part, 0o400);
    await rename(part, tracePath);
    await syncFolder(tracePath);
    return { ...account, path: tracePath, sha256, bytes };
  } catch (error) {
    await rm(part, { force: true });
    if (error instanceof InputError) throw error;
    const why = error instanceof Error ? error.message : String(error);
    throw new InputError('spool/unwritable', `No trace can be kept at ${tracePath}: ${why}`, { path: tracePath });
  }
}
