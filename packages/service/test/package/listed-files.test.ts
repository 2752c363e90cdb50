import assert from 'node:assert/strict';
import { symlinkSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { test } from 'node:test';
import { exampleTrace } from '../../src/package/example-trace.ts';
import { readPackage } from '../../src/package/index.ts';
import { testRefusals } from './refusal.ts';
import {
  descriptor,
  exampleFiles,
  faultsOf,
  faultsWith,
  handWritten,
  quiet,
  temporaryFolder,
  textOf,
  writeFolder,
} from './workshop.ts';

const paths = [...exampleFiles().keys()].filter((path) => path !== 'datapackage.json');
const listing = (listed: readonly string[]) => ({ 'datapackage.json': descriptor(listed.map((path) => ({ path }))) });
const newer = '{"resources": [{"path": "campaign.csv"}], "provinghouse:format": 2}';

testRefusals([
  ['no datapackage.json', { 'datapackage.json': null }, 'datapackage.json - -', /is missing; it lists the files/],
  ['a descriptor that is no JSON', { 'datapackage.json': '{"resources": [' }, 'datapackage.json - -', /is not JSON/],
  [
    'a descriptor without resources',
    { 'datapackage.json': '{}' },
    'datapackage.json - resources',
    /must be the list of the files/,
  ],
  ['a newer layout', { 'datapackage.json': newer }, 'datapackage.json - provinghouse:format', /newer/],
  [
    'a file listed but not there',
    listing([...paths, 'certificates/c.pdf']),
    'certificates/c.pdf - -',
    /is listed in datapackage.json but is not in the package/,
  ],
  [
    'a table that is not listed',
    listing(paths.filter((path) => path !== 'zinc.csv')),
    'zinc.csv - -',
    /is not listed; add \{"path": "zinc.csv"\}/,
  ],
]);

const hashed = ['sha256:', 'bytes'] as const;
for (const what of hashed) {
  test(`a file that is not the one of its ${what.replace(':', '')} is refused`, async (t) => {
    const files = exampleFiles();
    const trace = textOf(files, 'traces/P-001.csv');
    files.set(
      'traces/P-001.csv',
      Buffer.from(what === 'bytes' ? `${trace}9999.0,0.000,99.000\n` : trace.replace('0.000', '0.001')),
    );
    const faults = await faultsOf(writeFolder(temporaryFolder(t), files));
    assert.equal(faults.length, 1);
    assert.equal(faults[0]?.file, 'traces/P-001.csv');
    assert.match(
      faults[0]?.fault ?? '',
      what === 'bytes' ? /bytes where datapackage.json says/ : /its sha256 is [0-9a-f]{64}, not [0-9a-f]{64}/,
    );
  });
}

test('an MD5, as the standard allows, is checked too', async (t) => {
  const hash = 'd41d8cd98f00b204e9800998ecf8427e';
  const resources = paths.map((path) => (path === 'people.csv' ? { path, hash } : { path }));
  const faults = await faultsWith(t, { 'datapackage.json': descriptor(resources) });
  assert.match(faults.map(({ fault }) => fault).join(), /its md5 is/);
});

const climbing = [
  '../people.csv',
  '/etc/hostname',
  'C:/people.csv',
  'c:people.csv',
  'data\\people.csv',
  'data/../../people.csv',
  './people.csv',
  'https://example.org/people.csv',
  '',
];
for (const path of climbing) {
  test(`a list that names ${JSON.stringify(path)} is refused and nothing outside is read`, async (t) => {
    const resources = [{ path: 'campaign.csv' }, { name: 'people', path }];
    const folder = temporaryFolder(t);
    writeFileSync(join(folder, 'people.csv'), textOf(exampleFiles(), 'people.csv'));
    const inner = writeFolder(
      join(folder, 'package'),
      new Map(
        [...handWritten({ 'datapackage.json': descriptor(resources) })].filter(([p]) =>
          /^(campaign|datapackage)/.test(p),
        ),
      ),
    );
    const faults = await faultsOf(inner);
    assert.deepEqual(
      faults.map(({ file }) => file),
      [path],
    );
  });
}

test('a link that leads out of the folder is refused, one inside it is followed', async (t) => {
  const folder = temporaryFolder(t);
  writeFileSync(join(folder, 'outside.csv'), 'time_s,force_kN\n');
  const inner = writeFolder(join(folder, 'package'), handWritten({ 'traces/P-001.csv': null }));
  symlinkSync(join(folder, 'outside.csv'), join(inner, 'traces-link'));
  writeFolder(inner, new Map([['traces/real.csv', exampleTrace()]]));
  symlinkSync('real.csv', join(inner, 'traces', 'P-001.csv'));
  const faults = await faultsOf(inner);
  assert.deepEqual(faults, [
    {
      file: 'traces-link',
      row: null,
      column: null,
      fault: 'is a link that leads out of the package; put the file itself there',
    },
  ]);
});

test('a byte order mark, CR LF, blank rows, columns left out and files of the system are no faults', async (t) => {
  const files = handWritten({
    'people.csv': '\ufeffname,person\r\n"Second, person",examiner\r\n,\r\nFirst,gauger\r\n\r\n',
    'photographs.csv': null,
    'zinc.csv': null,
    'breaks.csv': null,
    '.DS_Store': 'x',
  });
  const { rows, notes } = await readPackage(writeFolder(temporaryFolder(t), files), quiet);
  assert.deepEqual(rows.people, [
    { person: 'examiner', name: 'Second, person', role: null },
    { person: 'gauger', name: 'First', role: null },
  ]);
  assert.deepEqual([rows.zinc, rows.breaks, rows.photographs], [[], [], []]);
  assert.deepEqual(notes, [
    'no file has a hash in datapackage.json: nothing tells whether they were changed on the way',
  ]);
});

test('a table may lie anywhere under any name if the list names it', async (t) => {
  const files = handWritten();
  const people = files.get('people.csv') ?? new Uint8Array();
  files.delete('people.csv');
  files.set('data/who was there.csv', people);
  const paths = [...files.keys()].filter((path) => path !== 'datapackage.json');
  const resources = paths.map((path) => (path.startsWith('data/') ? { name: 'people', path } : { path }));
  files.set('datapackage.json', Buffer.from(descriptor(resources)));
  const { rows } = await readPackage(writeFolder(temporaryFolder(t), files), quiet);
  assert.deepEqual(
    rows.people.map(({ person }) => person),
    ['gauger', 'examiner'],
  );
});

test('evidence need not be listed, another listed file is kept, and what is neither is named', async (t) => {
  const files = handWritten({ 'certificates/C-1001.txt': 'valid', 'traces/spare.csv': 'a', 'readme.txt': 'hello' });
  const listed = [...files.keys()]
    .filter((path) => path.endsWith('.csv') && !path.includes('/'))
    .concat('certificates/C-1001.txt');
  files.set('datapackage.json', Buffer.from(listing(listed)['datapackage.json']));
  const reading = await readPackage(writeFolder(temporaryFolder(t), files), quiet);
  assert.deepEqual([...reading.files.keys()].sort(), [
    'certificates/C-1001.txt',
    'photographs/ASH-8-1.png',
    'photographs/BIRCH-8-1.png',
    'traces/P-001.csv',
    'traces/spare.csv',
  ]);
  assert.match(reading.notes.join('\n'), /not kept: readme\.txt/);
  assert.match(reading.notes.join('\n'), /no pull names: traces\/spare\.csv/);
});

test('a path that leads nowhere is told as such', async (t) => {
  await assert.rejects(readPackage(join(temporaryFolder(t), 'none'), quiet), { code: 'package/not-found' });
});
