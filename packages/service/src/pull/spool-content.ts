import { stat } from 'node:fs/promises';
import type { UnfinishedHow } from '@provinghouse/contract';
import { isInputError, startWatch, step, viewOf, type WatchOptions } from '@provinghouse/core';
import { readAccount } from '@provinghouse/rig';
import type { Progress } from '../effects.ts';
import { inThread } from '../in-thread.ts';

/** What a recording that waits holds. */
export interface SpoolContent {
  readonly samples: number;
  readonly maximum_kN: number | null;
  readonly last_s: number | null;
  readonly how: UnfinishedHow;
  readonly hasParted: boolean;
}

/** A recording is written to no more once the program that kept it is gone. */
export const stoppedWords = 'the program was stopped while the pull ran';

const nothing: SpoolContent = { samples: 0, maximum_kN: null, last_s: null, how: 'broken off', hasParted: false };

/** Whether a piece has parted hangs on no rule line and on no limit. */
const plainWatch: WatchOptions = {
  ruleLines: [],
  tableSpeedLimits_mm_per_min: null,
  rangeMaximum_kN: null,
  fixtureLimit_kN: null,
  area_mm2: null,
  agreedDrop_pct: null,
  silence_s: 30,
};

/** Reads a recording through the watch. One that is not there was broken off in the moment before its first byte: nothing is in it. */
export async function spoolContent(spool: string): Promise<SpoolContent> {
  const watch = startWatch(plainWatch);
  let last_s: number | null = null;
  try {
    const { samples, closedWhy } = await readAccount(spool, (batch) => {
      for (const sample of batch) step(watch, sample);
      last_s = batch.at(-1)?.time_s ?? last_s;
    });
    const { maximumSoFar_kN, ended } = viewOf(watch);
    const maximum_kN = samples === 0 ? null : maximumSoFar_kN;
    return { samples, maximum_kN, last_s, how: howOf(closedWhy), hasParted: ended === 'parted' };
  } catch (error) {
    if (!isInputError(error)) throw error;
    return nothing;
  }
}

function howOf(closedWhy: string | null): UnfinishedHow {
  if (closedWhy === null) return 'broken off';
  if (closedWhy === stoppedWords) return 'stopped';
  return closedWhy === 'silence' ? 'silence' : 'ended';
}

/** A recording of fewer bytes is read in less time than a thread takes to begin. */
const threadFrom_bytes = 2 ** 21;

const noProgress: Progress = () => undefined;

/** Knows the content of recordings, each read once for as long as it does not change; a long one in a thread of its own. */
export function spoolContents(signal: AbortSignal): (spool: string) => Promise<SpoolContent> {
  const known = new Map<string, { readonly state: string; readonly content: Promise<SpoolContent> }>();
  return async (spool) => {
    const found = await stat(spool).catch(() => null);
    if (!found) return nothing;
    const state = `${found.size} ${found.mtimeMs}`;
    const held = known.get(spool);
    if (held?.state === state) return held.content;
    const content =
      found.size < threadFrom_bytes
        ? spoolContent(spool)
        : inThread<SpoolContent>(new URL('./content-thread.ts', import.meta.url), spool, {
            progress: noProgress,
            signal,
          });
    known.set(spool, { state, content });
    content.catch(() => known.delete(spool));
    return content;
  };
}
