import { mkdir, readdir, writeFile } from 'node:fs/promises';
import { dirname, join } from 'node:path';
import { type CampaignRows, exampleRecords, readSheet, type TableName, tables } from '@provinghouse/contract';
import { InputError } from '@provinghouse/core';

import { examplePicture } from './example-picture.ts';
import { exampleTrace } from './example-trace.ts';
import type { WorkEffects } from './work-effects.ts';
import { packageFiles } from './write.ts';

export interface Template {
  /** A folder that is empty or not there yet. */
  readonly dir: string;
}

export interface TemplateResult {
  readonly dir: string;
  /** Paths written, sorted. */
  readonly files: readonly string[];
}

/**
 * Writes an example package: every table with two example rows, one example trace, two example pictures. It is
 * consistent, so it can be brought in as it is.
 * @throws InputError `template/not-empty` where the folder holds anything, `template/not-a-folder`
 */
export async function writeTemplate({ dir }: Template, effects: WorkEffects): Promise<TemplateResult> {
  await refuseFull(dir);
  const files = withoutHashes(packageFiles({ rows: exampleRows(), files: exampleFiles() }));
  let done = 0;
  for (const [path, bytes] of files) {
    effects.signal?.throwIfAborted();
    const place = join(dir, path);
    await mkdir(dirname(place), { recursive: true });
    await writeFile(place, bytes, { flag: 'wx' });
    done += 1;
    effects.progress('writing the template', done, files.size);
  }
  return { dir, files: [...files.keys()] };
}

async function refuseFull(dir: string): Promise<void> {
  const names = await readdir(dir).catch((error: unknown) => {
    if (error instanceof Error && 'code' in error && error.code === 'ENOENT') return [];
    if (error instanceof Error && 'code' in error && error.code === 'ENOTDIR')
      throw new InputError('template/not-a-folder', `${dir} is a file; name a folder`, { dir });
    throw error;
  });
  if (names.length > 0)
    throw new InputError(
      'template/not-empty',
      `${dir} is not empty; name a new folder, so that nothing is overwritten`,
      { dir },
    );
}

/** The example rows of every table, read as they would be from a package. */
export function exampleRows(): CampaignRows {
  const entries = (Object.keys(tables) as TableName[]).map((name) => {
    const table = tables[name];
    const { rows } = readSheet(table, [Object.keys(table.fields), ...exampleRecords(table)]);
    return [name, rows.map(({ cells }) => cells)];
  });
  // The examples in the table definitions are right; a test brings the template in.
  return Object.fromEntries(entries) as unknown as CampaignRows;
}

function exampleFiles(): Map<string, Uint8Array> {
  const { pulls, photographs } = exampleRows();
  const traces = pulls.flatMap(({ trace }) => (trace === null ? [] : [[trace, exampleTrace()] as const]));
  return new Map([...traces, ...photographs.map(({ file }) => [file, examplePicture()] as const)]);
}

/** Everything in a template is meant to be changed, and a stated hash would then be wrong. */
function withoutHashes(files: ReadonlyMap<string, Uint8Array>): Map<string, Uint8Array> {
  const entries = [...files].map(([path, bytes]) => {
    if (path !== 'datapackage.json') return [path, bytes] as const;
    const bare = JSON.parse(Buffer.from(bytes).toString('utf8'), (key, value) =>
      key === 'hash' || key === 'bytes' ? undefined : value,
    );
    return [path, Buffer.from(`${JSON.stringify(bare, null, 2)}\n`)] as const;
  });
  return new Map(entries);
}
