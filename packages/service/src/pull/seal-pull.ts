import { InputError } from '@provinghouse/core';
import { addRecords, campaignRows } from '@provinghouse/store';
import type { Effects } from '../effects.ts';
import { putAside, sealed } from './keeper.ts';
import type { RecordingHead, TimedMark } from './ports.ts';
import { isMarkedUnreal } from './practice-mark.ts';
import { pullRow, readabilityOf, tracePath } from './pull-row.ts';

export interface PullToSeal {
  readonly head: RecordingHead;
  /** As they were told; null takes those on disc. */
  readonly marks: readonly TimedMark[] | null;
  /** What its note must say first. */
  readonly words: readonly string[];
  /** Its note says gaps, losses and troubles too: it was broken off somewhere. */
  readonly isBroken: boolean;
  readonly folder: string;
}

export interface SealedPull {
  readonly samples: number;
  readonly rejected: number;
  /** Of its file in the record; null when nothing entered the record. */
  readonly sha256: string | null;
  /** Why nothing entered the record; null when it did. */
  readonly fault: string | null;
}

/** Shares of the work: making the trace, reading it, writing it. Measured with ten minutes at 10 kHz; the record tells no progress within the last two. */
const traceShare = 0.7;
const readShare = 0.85;

/**
 * Seals a recording that is no longer written to into the record: its file, its row of pulls and their ledger entries, all in one transaction. A
 * recording in which nothing was loaded is no pull: it is put aside and said so.
 * @throws InputError `pull/practice-in-earnest` where it was simulated and the campaign is meant in earnest; `spool/*`; StoreError where the record cannot be written. The recording then stays where and as it is
 */
export async function sealPull(pull: PullToSeal, effects: Effects): Promise<SealedPull> {
  const { folder, words } = pull;
  const { progress } = effects;
  const trace = await sealed({
    ...pull,
    progress: (label, done, total) => progress(label, total === 0 ? 0 : (traceShare * done) / total, 1),
  });
  const head = { ...pull.head, isPractice: trace.isPractice };
  const counts = { samples: trace.samples, rejected: trace.rejected };
  const reads = readabilityOf(trace.bytes);
  if (reads.kind === 'nothing loaded') {
    await putAside(folder, head);
    const fault = `Nothing was loaded, so piece ${head.piece} counts as not pulled. ${reads.words}`;
    return { ...counts, sha256: null, fault };
  }
  progress('reading', readShare, 1);
  await refuseInEarnest(head, effects);
  const marks = trace.marks.map((mark) => `At ${mark.time_s.toFixed(1)} s: ${mark.words}.`);
  const notes = [...words, ...(pull.isBroken ? trace.notes : []), ...marks];
  await addRecords(effects.store, {
    campaign: head.campaign,
    rows: { pulls: [pullRow({ head, reads, notes })] },
    files: new Map([[tracePath(head.pull), trace.bytes]]),
    who: head.operator ?? effects.who,
    why: `${head.isPractice ? 'practice pull' : 'pulled'} on ${head.rig}`,
    at: effects.now().toISOString(),
  });
  await putAside(folder, head);
  return { ...counts, sha256: trace.sha256, fault: null };
}

async function refuseInEarnest({ isPractice, campaign: code }: RecordingHead, { store }: Effects): Promise<void> {
  if (!isPractice) return;
  const [campaign] = (await campaignRows(store, code)).campaign;
  if (campaign !== undefined && isMarkedUnreal(campaign)) return;
  throw new InputError(
    'pull/practice-in-earnest',
    `It was simulated, and campaign ${code} is not marked as practice or invented: it does not enter the record.`,
  );
}
