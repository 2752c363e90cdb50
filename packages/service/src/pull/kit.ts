import { readdir, readFile } from 'node:fs/promises';
import { basename, join } from 'node:path';
import { InputError, isInputError } from '@provinghouse/core';
import { openSource, type SourceConfiguration, sourceConfiguration } from '@provinghouse/rig';
import type { WiredRig } from './wired-rig.ts';

/**
 * The rigs of a bench as they are kept in Kit: a file `kit/RIG.json` below the folder of the record for each, `{"sources": [...]}` with one or
 * several sources as their configuration describes them. No folder means no rig.
 * @throws InputError `pull/kit` naming the file and what is wrong in it
 */
export async function readKit(home: string): Promise<WiredRig[]> {
  const folder = join(home, 'kit');
  const names = (await readdir(folder).catch(() => [])).filter((name) => name.endsWith('.json')).sort();
  return Promise.all(names.map((name) => readRig(join(folder, name))));
}

async function readRig(file: string): Promise<WiredRig> {
  try {
    return rigOf(basename(file, '.json'), JSON.parse(await readFile(file, 'utf8')));
  } catch (error) {
    if (!isInputError(error) && !(error instanceof SyntaxError)) throw error;
    throw new InputError('pull/kit', `${file}: ${error.message}`, { file });
  }
}

function rigOf(rig: string, value: unknown): WiredRig {
  const given: unknown = typeof value === 'object' && value !== null ? Reflect.get(value, 'sources') : null;
  if (!Array.isArray(given) || given.length === 0)
    throw new InputError('pull/kit', 'it must hold {"sources": [...]} with one source or several.');
  const configurations: SourceConfiguration[] = given.map(sourceConfiguration);
  // Opened once here, so that a pattern or a unit that cannot be is told when the bench is opened and not when somebody arms.
  const describe = configurations.map((one) => openSource(one).describe).join(', ');
  return {
    rig,
    describe,
    isPractice: false,
    open: async () => ({ sources: configurations.map(openSource), close: async () => undefined }),
  };
}
