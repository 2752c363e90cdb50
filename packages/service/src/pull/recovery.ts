import { readdir, readFile } from 'node:fs/promises';
import { join } from 'node:path';
import type { UnfinishedPull } from '@provinghouse/contract';
import { InputError } from '@provinghouse/core';
import { campaignRows } from '@provinghouse/store';
import type { Effects } from '../effects.ts';
import { putAside, spoolName, spoolPaths } from './keeper.ts';
import type { RecordingHead } from './ports.ts';
import { sealPullInThread } from './seal-in-thread.ts';
import type { SealedPull } from './seal-pull.ts';
import type { SpoolContent } from './spool-content.ts';

/** Where recordings lie, and what is known of them. */
export interface SpoolShelf {
  readonly folder: string;
  /** Folder of the record. */
  readonly home: string;
  readonly contentOf: (spool: string) => Promise<SpoolContent>;
  /** Ends what is read and sealed in threads. */
  readonly signal: AbortSignal;
}

/** Heads of the recordings that were not sealed into the record: those that run, and those that wait. */
export async function unfinishedHeads(folder: string): Promise<RecordingHead[]> {
  const names = await readdir(folder).catch(() => []);
  const heads = await Promise.all(names.filter((name) => name.endsWith('.json')).map((name) => headAt(folder, name)));
  return heads.filter((head) => head !== null).sort((a, b) => a.startedAt.localeCompare(b.startedAt));
}

/** The head of a recording; null where the file was not written to its end, and for a name that is not its own. */
async function headAt(folder: string, name: string): Promise<RecordingHead | null> {
  try {
    // What stands there was written by keepPull; a torn file is no JSON.
    const head = JSON.parse(await readFile(join(folder, name), 'utf8')) as RecordingHead;
    return `${spoolName(head)}.json` === name ? head : null;
  } catch {
    return null;
  }
}

/** What a recording that waits holds, for a screen to offer. */
export async function describeUnfinished(head: RecordingHead, shelf: SpoolShelf): Promise<UnfinishedPull> {
  const name = spoolName(head);
  const content = await shelf.contentOf(spoolPaths(shelf.folder, name).spool);
  const { pull, campaign, piece, isPractice, startedAt } = head;
  return { spool: name, pull, campaign, piece, isPractice, startedAt, ...content, canGoOn: canGoOn(content) };
}

function canGoOn({ samples, how, hasParted }: SpoolContent): boolean {
  return samples > 0 && how !== 'ended' && !hasParted;
}

interface Waiting {
  readonly rig: string;
  readonly spool: string;
}

/** A recording of a rig that waits. @throws InputError `pull/spool-unknown` */
async function waiting({ rig, spool }: Waiting, { folder }: SpoolShelf): Promise<RecordingHead> {
  const found = (await unfinishedHeads(folder)).find((one) => one.rig === rig && spoolName(one) === spool);
  if (found) return found;
  throw new InputError('pull/spool-unknown', `No recording "${spool}" of ${rig} waits to be recovered.`, { spool });
}

export interface ToGoOn {
  readonly head: RecordingHead;
  readonly last_s: number;
}

/**
 * A recording that may be gone on with.
 * @throws InputError `pull/spool-unknown`, `pull/cannot-go-on`
 */
export async function recordingToGoOn(input: Waiting, shelf: SpoolShelf, effects: Effects): Promise<ToGoOn> {
  const head = await waiting(input, shelf);
  const content = await shelf.contentOf(spoolPaths(shelf.folder, input.spool).spool);
  const isKept = await isHeld(head, effects);
  if (!isKept && canGoOn(content) && content.last_s !== null) return { head, last_s: content.last_s };
  const why = isKept
    ? 'the record holds it already'
    : content.hasParted
      ? 'its readings show that the piece has parted'
      : content.samples === 0
        ? 'nothing was recorded'
        : 'it had come to its end';
  throw new InputError('pull/cannot-go-on', `Pull ${head.pull} cannot be gone on with: ${why}. Keep it as it is.`, {
    spool: input.spool,
  });
}

const endWords = { silence: 'Ended by silence of the rig.', ended: 'Kept at a later try.' } as const;
const brokenWords = 'Recovered after it was broken off.';

/**
 * Seals a recording that waits into the record, with what is missing said in its note and above its readings.
 * @param progress told how far it is, 0 to 1
 * @returns null where there was nothing to seal: nothing came before it broke off, or the record held it already
 * @throws InputError `pull/spool-unknown`, `pull/practice-in-earnest`, `spool/*`; StoreError. The recording then stays as it is, to be tried again
 */
export async function recoverPull(
  input: Waiting & { readonly progress: (share: number) => void },
  shelf: SpoolShelf,
  effects: Effects,
): Promise<SealedPull | null> {
  const { folder, home, signal } = shelf;
  const head = await waiting(input, shelf);
  const { samples, how } = await shelf.contentOf(spoolPaths(folder, input.spool).spool);
  if (samples === 0 || (await isHeld(head, effects))) {
    await putAside(folder, head);
    return null;
  }
  const words = [how === 'silence' || how === 'ended' ? endWords[how] : brokenWords];
  const pull = { head, folder, words, marks: null, isBroken: true };
  return sealPullInThread(pull, { home, signal, progress: input.progress }, effects);
}

async function isHeld({ campaign, pull, piece }: RecordingHead, { store }: Effects): Promise<boolean> {
  const { pulls } = await campaignRows(store, campaign);
  return pulls.some((row) => row.pull === pull && row.piece === piece);
}
