import assert from 'node:assert/strict';
import { spawnSync } from 'node:child_process';
import { join } from 'node:path';
import { test } from 'node:test';
import { fileURLToPath } from 'node:url';
import { tables, writeCell } from '@provinghouse/contract';
import { bringIn, exampleRows, exportPackage, packageFiles } from '../../src/package/index.ts';
import { exampleFiles, laboratory, temporaryFolder, writeFolder, writeZip } from './workshop.ts';

const script = fileURLToPath(new URL('reference/read_package.py', import.meta.url));
const noPython = spawnSync('python3', ['--version']).status === 0 ? false : 'python3 is not installed';

interface Found {
  readonly faults: readonly string[];
  readonly tables: Readonly<Record<string, readonly Readonly<Record<string, string>>[]>>;
}

function readOutside(path: string): Found {
  const { stdout, stderr, status } = spawnSync('python3', [script, path], { encoding: 'utf8' });
  assert.equal(status, 0, stderr);
  return JSON.parse(stdout);
}

test("Python's own ZIP, CSV and SHA-256 find every file and every cell of an export", { skip: noPython }, async (t) => {
  const folder = temporaryFolder(t);
  const { effects } = await laboratory(t);
  const rows = exampleRows();
  const hard = rows.people.map((row) => ({ ...row, role: 'says "no",\nthen yes; \u00e9\u{1f517}' }));
  const evidence = new Map([...exampleFiles()].filter(([path]) => path.includes('/')));
  const files = packageFiles({ rows: { ...rows, people: hard }, files: evidence });
  await bringIn({ path: writeFolder(join(folder, 'in'), files), who: 'gauger', why: 'test' }, effects);
  const out = join(folder, 'out.zip');
  await exportPackage({ campaign: 'MY-CAMPAIGN', out }, effects);

  const found = readOutside(out);
  assert.deepEqual(found.faults, []);
  const expected = Object.entries({ ...rows, people: hard }).map(([name, list]) => [
    name,
    list.map((row) => Object.fromEntries(Object.entries(row).map(([column, value]) => [column, writeCell(value)]))),
  ]);
  assert.deepEqual(Object.keys(found.tables), Object.keys(tables));
  assert.deepEqual(found.tables, Object.fromEntries(expected));
});

test('the outside reader would notice a changed file', { skip: noPython }, async (t) => {
  const files = exampleFiles();
  const path = join(temporaryFolder(t), 'changed.zip');
  await writeZip(path, files.set('traces/P-001.csv', Buffer.from('another')));
  assert.deepEqual(readOutside(path).faults, ['traces/P-001.csv: size', 'traces/P-001.csv: hash']);
});
