import type { FilesHeld } from '@provinghouse/contract';
import { isInputError, type OwnStandard, parseOwnStandard, standardId } from '@provinghouse/core';
import { bookAddress, fileAddress } from './entry/book.ts';
import type { HeldResult } from './entry/use-held.ts';
import { type Reply, readRecord } from './request.ts';

export const specificationFolder = 'specifications/';

/** Specifications by the hash of their file: the same bytes are read once, however often the list of files is. */
const byHash = new Map<string, readonly OwnStandard[]>();

/** The own specifications that a book holds as files, by path; a file that is none is left out. */
export async function readStandards(book: string): Promise<HeldResult<OwnStandard>> {
  const files: FilesHeld['files'][number][] = [];
  for (let after: string | null = ''; after !== null; ) {
    const asked: string = `under=${specificationFolder}&after=${encodeURIComponent(after)}`;
    const reply: Reply<FilesHeld> = await readRecord<FilesHeld>(`${bookAddress(book)}/files?${asked}`);
    if (!reply.ok) return { fault: reply.fault };
    files.push(...reply.record.files);
    after = reply.record.next;
  }
  const rows: OwnStandard[] = [];
  for (const { path, sha256 } of files) {
    const known = byHash.get(sha256);
    const reply = known === undefined ? await readRecord<unknown>(fileAddress(book, path)) : null;
    if (reply !== null && !reply.ok) return { fault: reply.fault };
    const found = known ?? soundStandard(reply?.record, path);
    byHash.set(sha256, found);
    rows.push(...found);
  }
  return { rows };
}

/** A specification from a file; none where it is not one. */
export function soundStandard(json: unknown, place: string): readonly OwnStandard[] {
  try {
    return [parseOwnStandard(json, place)];
  } catch (error) {
    if (isInputError(error)) return [];
    throw error;
  }
}

/** Of specifications of one name the first: the one that `chooseStandard` of core takes. */
export function firstOfEachName(all: readonly OwnStandard[]): readonly OwnStandard[] {
  const named = new Map<string, OwnStandard>();
  for (const one of all) if (!named.has(standardId(one.id))) named.set(standardId(one.id), one);
  return [...named.values()];
}
