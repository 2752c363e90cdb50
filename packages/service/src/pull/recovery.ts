import { readdir, readFile } from 'node:fs/promises';
import { join } from 'node:path';
import type { UnfinishedPull } from '@provinghouse/contract';
import { InputError, isInputError } from '@provinghouse/core';
import { readSpool, recover } from '@provinghouse/rig';
import { isPracticeLine } from '@provinghouse/rig/practice';
import { campaignRows } from '@provinghouse/store';
import type { Effects } from '../effects.ts';
import { putAside, sealed, spoolName, spoolPaths } from './keeper.ts';
import type { RecordingHead } from './ports.ts';
import { sealPull } from './seal-pull.ts';

/** Heads of the recordings that were not sealed into the record: those that run, and those that were broken off. */
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

/** What an unfinished recording holds, for a screen to offer. */
export async function describeUnfinished(folder: string, head: RecordingHead): Promise<UnfinishedPull> {
  const name = spoolName(head);
  const { samples, maximum_kN } = await contentOf(spoolPaths(folder, name).spool);
  const { pull, campaign, piece, isPractice, startedAt } = head;
  return {
    spool: name,
    pull,
    campaign,
    piece,
    isPractice,
    startedAt,
    samples,
    maximum_kN,
  };
}

/** A head without its recording was written in the moment before it: nothing is in it. */
async function contentOf(spool: string): Promise<Pick<UnfinishedPull, 'samples' | 'maximum_kN'>> {
  try {
    const { samples, columns } = await recover(spool);
    const maximum_kN = columns.force_kN.reduce((most, force) => Math.max(most, force), Number.NEGATIVE_INFINITY);
    return { samples, maximum_kN: samples === 0 ? null : maximum_kN };
  } catch (error) {
    if (!isInputError(error)) throw error;
    return { samples: 0, maximum_kN: null };
  }
}

export interface RecoverInput {
  readonly rig: string;
  readonly spool: string;
  readonly folder: string;
}

/**
 * Seals a recording that was broken off into the record, with what is missing said in its note and above its readings.
 * @throws InputError `pull/spool-unknown`, `pull/practice-in-earnest`; StoreError
 */
export async function recoverPull({ rig, spool, folder }: RecoverInput, effects: Effects): Promise<void> {
  const found = (await unfinishedHeads(folder)).find((one) => one.rig === rig && spoolName(one) === spool);
  if (!found)
    throw new InputError('pull/spool-unknown', `No recording "${spool}" of ${rig} waits to be recovered.`, { spool });
  const { samples } = await contentOf(spoolPaths(folder, spool).spool);
  // Either nothing came before it broke off, or it broke off when the record held it already: nothing is to be added.
  if (samples === 0 || (await isHeld(found, effects))) {
    await putAside(folder, found);
    return;
  }
  const head = { ...found, isPractice: found.isPractice || (await saysPractice(spoolPaths(folder, spool).spool)) };
  const trace = await sealed(folder, head);
  const words = ['Recovered after it was broken off.', ...trace.notes];
  await sealPull({ head, sealed: trace, marks: [], words, folder }, effects);
}

/** True where among what could not be read stands a line that says that it is simulated; the head was written before any came. */
async function saysPractice(path: string): Promise<boolean> {
  for await (const found of readSpool(path)) {
    if (found.kind !== 'entry' || found.entry.kind !== 'rejected') continue;
    if (isPracticeLine(new TextDecoder().decode(found.entry.bytes))) return true;
  }
  return false;
}

async function isHeld({ campaign, pull, piece }: RecordingHead, { store }: Effects): Promise<boolean> {
  const { pulls } = await campaignRows(store, campaign);
  return pulls.some((row) => row.pull === pull && row.piece === piece);
}
