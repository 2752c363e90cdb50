import { readdir, readFile } from 'node:fs/promises';
import { basename, join } from 'node:path';
import { InputError, isInputError } from '@provinghouse/core';
import { openSource, type SourceConfiguration, sourceConfiguration } from '@provinghouse/rig';
import type { WiredRig } from './wired-rig.ts';

/**
 * The rigs of a bench as they are kept in Kit: a file `kit/RIG.json` below the folder of the record for each, `{"sources": [...]}` with one or
 * several sources as their configuration describes them, and where they are known `fixtureLimit_kN` (force its fixture must not see) and
 * `agreedDrop` (fall from the maximum, a share between 0 and 1, that ends a pull although nothing parted). No folder means no rig.
 * @throws InputError `pull/kit` naming the file and what is wrong in it
 */
export async function readKit(home: string): Promise<WiredRig[]> {
  const folder = join(home, 'kit');
  const names = (await readdir(folder).catch(() => [])).filter((name) => name.endsWith('.json')).sort();
  return Promise.all(names.map((name) => readRig(join(folder, name))));
}

/**
 * One rig out of its file, named as the file is.
 * @throws InputError `pull/kit`
 */
export async function readRig(file: string): Promise<WiredRig> {
  try {
    return rigOf(basename(file, '.json'), JSON.parse(await readFile(file, 'utf8')));
  } catch (error) {
    if (!isInputError(error) && !(error instanceof SyntaxError) && !isFileFault(error)) throw error;
    throw new InputError('pull/kit', `${file}: ${error.message}`, { file });
  }
}

function isFileFault(error: unknown): error is Error {
  return error instanceof Error && 'syscall' in error;
}

const members: readonly string[] = ['sources', 'fixtureLimit_kN', 'agreedDrop'];

/** A number of the file that may be left out; bounds excluded. */
function numberOf(value: object, name: string, most: number): number | null {
  const given: unknown = Reflect.get(value, name) ?? null;
  if (given === null) return null;
  if (typeof given === 'number' && given > 0 && given < most) return given;
  const wanted = most === 1 ? 'a share between 0 and 1, such as 0.2' : 'a number above zero';
  throw new InputError('pull/kit', `${name} is ${JSON.stringify(given)}; give ${wanted}, or leave it out.`);
}

function rigOf(rig: string, value: unknown): WiredRig {
  if (typeof value !== 'object' || value === null)
    throw new InputError('pull/kit', 'it must hold {"sources": [...]} with one source or several.');
  const unknown = Object.keys(value).filter((name) => !members.includes(name));
  if (unknown.length > 0)
    throw new InputError('pull/kit', `it holds ${unknown.join(', ')}; known are ${members.join(', ')}.`);
  const given: unknown = Reflect.get(value, 'sources');
  if (!Array.isArray(given) || given.length === 0)
    throw new InputError('pull/kit', 'it must hold {"sources": [...]} with one source or several.');
  const configurations: SourceConfiguration[] = given.map(sourceConfiguration);
  // Opened once here, so that a pattern or a unit that cannot be is told when the bench is opened and not when somebody arms.
  const describe = configurations.map((one) => openSource(one).describe).join(', ');
  return {
    rig,
    describe,
    isPractice: false,
    fixtureLimit_kN: numberOf(value, 'fixtureLimit_kN', Number.POSITIVE_INFINITY),
    agreedDrop: numberOf(value, 'agreedDrop', 1),
    open: async () => ({ sources: configurations.map(openSource), close: async () => undefined }),
  };
}
