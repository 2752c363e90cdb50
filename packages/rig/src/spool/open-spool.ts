import { randomInt } from 'node:crypto';
import { InputError } from '@provinghouse/core';
import { benchNow_s } from '../clock/bench-clock.ts';
import type { SpoolEntry, SpoolHeader } from './spool-entry.ts';
import { newSpoolFile, oldSpoolFile, type SpoolFile } from './spool-file.ts';
import { channelNames } from './spool-payload.ts';
import { readSpool } from './spool-reader.ts';
import { type SpoolWriter, spoolWriter } from './spool-writer.ts';

export interface SpoolOutlets {
  /** Entries whose frames are written, in order. */
  released(entries: readonly SpoolEntry[]): void;
  trouble(words: string): void;
}

export interface OpenSpool {
  readonly writer: SpoolWriter;
  readonly header: SpoolHeader;
  /** Bench clock at the start of the record. */
  readonly zero_s: number;
}

/**
 * Begins a record. The header is written twice, so that one bad sector does not cost the whole.
 * @param file stands in for the disc in tests
 * @throws InputError spool/exists, spool/unwritable
 */
export async function beginSpool(
  path: string,
  header: SpoolHeader,
  outlets: SpoolOutlets,
  file?: SpoolFile,
): Promise<OpenSpool> {
  const zero_s = benchNow_s();
  const writer = spoolWriter({
    file: file ?? (await newSpoolFile(path)),
    names: channelNames(header),
    salt: randomInt(2 ** 32),
    length: 0,
    sequence: 0,
    zero_s,
    ...outlets,
  });
  writer.append({ kind: 'header', header });
  writer.append({ kind: 'header', header });
  return { writer, header, zero_s };
}

/** What a caller sees of the old part before anything is written. */
export interface ResumeChecks {
  earlier(entry: SpoolEntry): void;
  /** Throws when the record cannot be gone on with. */
  accept(header: SpoolHeader): void;
}

interface Ending {
  readonly header: SpoolHeader;
  readonly salt: number;
  readonly sequence: number;
  readonly end: number;
  readonly last_s: number;
  readonly torn: Uint8Array;
  readonly tornBytes: number;
}

async function endingOf(path: string, each: (entry: SpoolEntry) => void): Promise<Ending> {
  let header: SpoolHeader | null = null;
  let last = { salt: 0, sequence: -1, end: 0, last_s: 0 };
  let torn = { torn: new Uint8Array(0) as Uint8Array, tornBytes: 0 };
  for await (const found of readSpool(path)) {
    if (found.kind === 'torn') torn = { torn: found.tail, tornBytes: found.bytes };
    if (found.kind !== 'entry') continue;
    const { entry, salt, sequence, end } = found;
    if (entry.kind === 'header') header ??= entry.header;
    last = { salt, sequence, end, last_s: entry.time_s };
    each(entry);
  }
  if (!header)
    throw new InputError('spool/no-header', `The record at ${path} has lost its header and cannot be gone on with.`, {
      path,
    });
  return { header, ...last, ...torn };
}

/**
 * Goes on with a record that broke off, by the same sources: the torn tail is cut away (and kept as rejected bytes), and the gap is marked, its
 * length by the wall clock. Whoever calls sees to it that nobody else is writing.
 * @param now the wall clock, ISO 8601
 * @throws InputError spool/unreadable, spool/unwritable, spool/no-header
 */
export async function resumeSpool(path: string, now: string, outlets: SpoolOutlets & ResumeChecks): Promise<OpenSpool> {
  const ending = await endingOf(path, outlets.earlier);
  outlets.accept(ending.header);
  const file = await oldSpoolFile(path);
  await file.truncate(ending.end);
  const elapsed_s = (Date.parse(now) - Date.parse(ending.header.startedAt)) / 1000;
  const zero_s = benchNow_s() - Math.max(ending.last_s, Number.isFinite(elapsed_s) ? elapsed_s : 0);
  const { header, salt, end: length } = ending;
  const writer = spoolWriter({
    file,
    names: channelNames(header),
    salt,
    length,
    sequence: ending.sequence + 1,
    zero_s,
    ...outlets,
  });
  writer.append({ kind: 'resumed', at: now, tornBytes: ending.tornBytes });
  if (ending.tornBytes > 0)
    writer.append({
      kind: 'rejected',
      source: 0,
      bytes: ending.torn,
      why: 'the unfinished frame at which it broke off',
    });
  return { writer, header, zero_s };
}
