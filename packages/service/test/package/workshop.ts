import { createWriteStream, mkdirSync, mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { dirname, join } from 'node:path';
import { pipeline } from 'node:stream/promises';
import type { TestContext } from 'node:test';
import { isInputError } from '@provinghouse/core';
import { openStore } from '@provinghouse/store';
import yazl from 'yazl';
import type { Effects } from '../../src/effects.ts';
import { exampleTrace } from '../../src/package/example-trace.ts';
import { exampleRows, type PackageFault, packageFiles, readPackage } from '../../src/package/index.ts';

/** A folder that is gone after the test. */
export function temporaryFolder(t: TestContext): string {
  const folder = mkdtempSync(join(tmpdir(), 'provinghouse-package-'));
  t.after(() => rmSync(folder, { recursive: true, force: true }));
  return folder;
}

export interface Laboratory {
  readonly effects: Effects;
  readonly steps: string[];
}

/** An empty record of its own, a clock that stands still, and a note of the progress told. */
export async function laboratory(t: TestContext): Promise<Laboratory> {
  const store = await openStore(temporaryFolder(t));
  t.after(() => store.close());
  const steps: string[] = [];
  const effects: Effects = {
    store: store.db,
    now: () => new Date('2026-03-10T08:00:00Z'),
    who: 'tester',
    progress: (label, done, total) => steps.push(`${label} ${done}/${total}`),
  };
  return { effects, steps };
}

export type Files = Map<string, Uint8Array>;

/** The example package with hashes, as an export would write it. */
export function exampleFiles(): Files {
  return packageFiles({
    rows: exampleRows(),
    files: new Map([
      ['traces/P-001.csv', exampleTrace()],
      ['photographs/ASH-8-1.png', Uint8Array.from([137, 80, 78, 71, 0, 255])],
      ['photographs/BIRCH-8-1.png', Uint8Array.from([137, 80, 78, 71, 1, 254])],
    ]),
  });
}

/** What to write into files of the example package; null leaves one out. */
export type Changes = Readonly<Record<string, string | Uint8Array | null>>;

/** A list of files as datapackage.json holds it. */
export const descriptor = (resources: unknown) => JSON.stringify({ resources });

/** The example package as a stranger writes it: a list of files and no more. */
export function handWritten(changes: Changes = {}): Files {
  const files = exampleFiles();
  for (const [path, content] of Object.entries(changes)) {
    if (content === null) files.delete(path);
    else files.set(path, typeof content === 'string' ? new TextEncoder().encode(content) : content);
  }
  const listed = [...files.keys()].filter((path) => path !== 'datapackage.json' && !path.startsWith('.'));
  if (changes['datapackage.json'] === undefined)
    files.set('datapackage.json', new TextEncoder().encode(descriptor(listed.map((path) => ({ path })))));
  return files;
}

/** Text of one of the files. */
export function textOf(files: Files, path: string): string {
  return new TextDecoder().decode(files.get(path));
}

export function writeFolder(folder: string, files: Files): string {
  for (const [path, bytes] of files) {
    mkdirSync(dirname(join(folder, path)), { recursive: true });
    writeFileSync(join(folder, path), bytes);
  }
  return folder;
}

/** Packs files as they are; `prepare` may add more. */
export async function writeZip(path: string, files: Files, prepare?: (zip: yazl.ZipFile) => void): Promise<string> {
  const zip = new yazl.ZipFile();
  for (const [name, bytes] of files) zip.addBuffer(Buffer.from(bytes), name);
  prepare?.(zip);
  zip.end();
  await pipeline(zip.outputStream, createWriteStream(path));
  return path;
}

export const quiet = { progress: () => undefined };

/** The faults of a package that must have some. */
export async function faultsOf(path: string): Promise<readonly PackageFault[]> {
  try {
    await readPackage(path, quiet);
  } catch (error) {
    if (isInputError(error) && error.code === 'package/faults') return error.context.faults as readonly PackageFault[];
    throw error;
  }
  throw new Error('the package was read without a fault');
}

/** The faults of the example package as a stranger writes it, with these changes. */
export function faultsWith(t: TestContext, changes: Changes): Promise<readonly PackageFault[]> {
  return faultsOf(writeFolder(temporaryFolder(t), handWritten(changes)));
}

/** Where a fault is: file, row and column, with a dash for what it does not name. */
export function placeOf({ file, row, column }: PackageFault): string {
  return `${file} ${row ?? '-'} ${column ?? '-'}`;
}
