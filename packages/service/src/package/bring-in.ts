import { type TableName, tables } from '@provinghouse/contract';
import { InputError } from '@provinghouse/core';
import { type BroughtIn, bringInCampaign, isStoreError } from '@provinghouse/store';
import type { Effects } from '../effects.ts';
import { type PackageReading, type ReadOptions, readPackage } from './read.ts';

export interface BringIn extends ReadOptions {
  /** Folder or ZIP. */
  readonly path: string;
  readonly who: string;
  readonly why: string;
}

export interface BringInResult {
  readonly campaign: string;
  /** Rows of each table. */
  readonly rows: Readonly<Record<TableName, number>>;
  /** Files that are not tables. */
  readonly files: number;
  /** True where the record held the same content already and nothing was written. */
  readonly alreadyHeld: boolean;
  readonly notes: readonly string[];
}

/**
 * Brings a data package into the record: all of it or nothing.
 * @throws InputError `package/faults`, `package/not-found`, and `package/campaign-differs` where the record holds other
 * content under the same code; StoreError where the record cannot be written
 */
export async function bringIn({ path, who, why, ...options }: BringIn, effects: Effects): Promise<BringInResult> {
  const reading = await readPackage(path, effects, options);
  effects.signal?.throwIfAborted();
  const { campaign, alreadyHeld } = await keep(reading, { who, why }, effects);
  const counts = (Object.keys(tables) as TableName[]).map((name) => [name, reading.rows[name].length]);
  return {
    campaign,
    // One count for each table, by the line above.
    rows: Object.fromEntries(counts) as Record<TableName, number>,
    files: reading.files.size,
    alreadyHeld,
    notes: alreadyHeld
      ? [...reading.notes, 'the record holds the same content already; nothing was written']
      : reading.notes,
  };
}

async function keep(reading: PackageReading, by: Pick<BringIn, 'who' | 'why'>, effects: Effects): Promise<BroughtIn> {
  const { rows, files, campaign } = reading;
  try {
    return await bringInCampaign(effects.store, {
      rows,
      files,
      ...by,
      at: effects.now().toISOString(),
      onProgress: (done, total) => {
        effects.signal?.throwIfAborted();
        effects.progress('writing the record', done, total);
      },
    });
  } catch (error) {
    if (!isStoreError(error) || error.code !== 'store/campaign-differs') throw error;
    const cure = 'give the package another code in campaign.csv, or export the campaign and compare the two';
    throw new InputError('package/campaign-differs', `the record holds another campaign "${campaign}"; ${cure}`, {
      campaign,
    });
  }
}
