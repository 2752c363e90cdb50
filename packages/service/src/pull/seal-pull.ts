import { InputError } from '@provinghouse/core';
import { addRecords, campaignRows } from '@provinghouse/store';
import type { Effects } from '../effects.ts';
import { putAside } from './keeper.ts';
import type { RecordingHead, SealedRecording, TimedMark } from './ports.ts';
import { isMarkedUnreal } from './practice-mark.ts';
import { pullRow, readabilityOf, tracePath } from './pull-row.ts';

export interface PullToSeal {
  readonly head: RecordingHead;
  readonly sealed: SealedRecording;
  readonly marks: readonly TimedMark[];
  /** What else its note must say. */
  readonly words: readonly string[];
  readonly folder: string;
}

/**
 * Writes a sealed recording into the record: its file, its row of pulls and their ledger entries, all in one transaction. A recording in which
 * nothing was loaded is no pull: it is put aside and said so.
 * @returns why nothing entered the record; null when it did
 * @throws InputError `pull/practice-in-earnest` where it was simulated and the campaign is meant in earnest; StoreError where the record cannot be written; the recording then stays where it is
 */
export async function sealPull(
  { head, sealed, marks, words, folder }: PullToSeal,
  effects: Effects,
): Promise<string | null> {
  const reads = readabilityOf(sealed.bytes);
  if (reads.kind === 'nothing loaded') {
    await putAside(folder, head);
    return `Nothing was loaded, so piece ${head.piece} counts as not pulled. ${reads.words}`;
  }
  if (head.isPractice && !(await isUnreal(head.campaign, effects)))
    throw new InputError(
      'pull/practice-in-earnest',
      `It was simulated, and campaign ${head.campaign} is not marked as practice or invented: it does not enter the record.`,
    );
  const notes = [...words, ...marks.map((mark) => `At ${mark.time_s.toFixed(1)} s: ${mark.words}.`)];
  await addRecords(effects.store, {
    campaign: head.campaign,
    rows: { pulls: [pullRow({ head, reads, notes })] },
    files: new Map([[tracePath(head.pull), sealed.bytes]]),
    who: head.operator ?? effects.who,
    why: `${head.isPractice ? 'practice pull' : 'pulled'} on ${head.rig}`,
    at: effects.now().toISOString(),
  });
  await putAside(folder, head);
  return null;
}

async function isUnreal(code: string, { store }: Effects): Promise<boolean> {
  const [campaign] = (await campaignRows(store, code)).campaign;
  return campaign !== undefined && isMarkedUnreal(campaign);
}
