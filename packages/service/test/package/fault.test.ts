import assert from 'node:assert/strict';
import { symlinkSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { test } from 'node:test';
import { campaignCodes } from '@provinghouse/store';
import { parse } from 'csv-parse/sync';
import { stringify } from 'csv-stringify/sync';
import { exampleTrace } from '../../src/package/example-trace.ts';
import { bringIn, readPackage } from '../../src/package/index.ts';
import {
  exampleFiles,
  faultsOf,
  handWritten,
  laboratory,
  quiet,
  temporaryFolder,
  textOf,
  writeFolder,
} from './workshop.ts';

const example = exampleFiles();
const table = (name: string) => textOf(example, `${name}.csv`);

/** An example table with one cell changed; rows count as a spreadsheet shows them. */
function withCell(name: string, [row, column]: readonly [number, string], text: string): string {
  const records: string[][] = parse(table(name));
  const cells = records[row - 1];
  const place = records[0]?.indexOf(column) ?? -1;
  if (!cells || place < 0) throw new Error(`${name} has no row ${row} with ${column}`);
  cells[place] = text;
  return stringify(records);
}

const descriptor = (resources: unknown) => JSON.stringify({ resources });

/** A package with one thing wrong, and the one fault that must be told for it. */
const cases = [
  {
    wrong: 'no datapackage.json',
    change: { 'datapackage.json': null, drop: true },
    file: 'datapackage.json',
    fault: /is missing; it lists the files/,
  },
  {
    wrong: 'a descriptor that is no JSON',
    change: { 'datapackage.json': '{"resources": [' },
    file: 'datapackage.json',
    fault: /is not JSON/,
  },
  {
    wrong: 'a descriptor without resources',
    change: { 'datapackage.json': '{}' },
    file: 'datapackage.json',
    column: 'resources',
    fault: /must be the list of the files/,
  },
  {
    wrong: 'a newer layout',
    change: { 'datapackage.json': '{"resources": [{"path": "campaign.csv"}], "provinghouse:format": 2}' },
    file: 'datapackage.json',
    column: 'provinghouse:format',
    fault: /newer/,
  },
  {
    wrong: 'a comma in a number',
    change: { 'gauging.csv': withCell('gauging', [2, 'value_mm'], '8,02') },
    file: 'gauging.csv',
    row: 2,
    column: 'value_mm',
    fault: /decimal point: 8\.02/,
  },
  {
    wrong: 'text in a number',
    change: { 'gauging.csv': withCell('gauging', [2, 'value_mm'], 'eight') },
    file: 'gauging.csv',
    row: 2,
    column: 'value_mm',
    fault: /not a number/,
  },
  {
    wrong: 'semicolons',
    change: { 'people.csv': 'person;name\na;A\n' },
    file: 'people.csv',
    row: 1,
    fault: /separated by semicolons; save it separated by commas/,
    others: true,
  },
  {
    wrong: 'tabs',
    change: { 'people.csv': 'person\tname\na\tA\n' },
    file: 'people.csv',
    row: 1,
    fault: /separated by tabs/,
    others: true,
  },
  {
    wrong: 'Latin-1',
    change: { 'people.csv': Buffer.from('person,name\ngauger,Andr\u00e9\nexaminer,B\n', 'latin1') },
    file: 'people.csv',
    fault: /not UTF-8 \(perhaps Latin-1\); save it as "CSV UTF-8"/,
  },
  {
    wrong: 'UTF-16',
    change: { 'people.csv': Buffer.from('\ufeffperson,name\n', 'utf16le') },
    file: 'people.csv',
    fault: /is UTF-16; save it/,
  },
  {
    wrong: 'an empty table file',
    change: { 'zinc.csv': '' },
    file: 'zinc.csv',
    row: 1,
    fault: /is empty; the first row must name the columns/,
  },
  {
    wrong: 'an open quote',
    change: { 'zinc.csv': 'piece,link,reading,note\nASH-8-1,1,1,"open\n' },
    file: 'zinc.csv',
    row: 2,
    fault: /never closed/,
  },
  {
    wrong: 'an unknown column',
    change: { 'people.csv': 'person,name,roll\ngauger,A,r\nexaminer,B,r\n' },
    file: 'people.csv',
    row: 1,
    column: 'roll',
    fault: /did you mean role\?/,
  },
  {
    wrong: 'a missing column',
    change: { 'people.csv': 'person,role\ngauger,r\nexaminer,r\n' },
    file: 'people.csv',
    row: 1,
    column: 'name',
    fault: /column is missing/,
  },
  {
    wrong: 'a repeated key',
    change: { 'people.csv': 'person,name\ngauger,A\nexaminer,B\ngauger,C\n' },
    file: 'people.csv',
    row: 4,
    column: 'person',
    fault: /repeats row 2/,
  },
  {
    wrong: 'two campaigns',
    change: {
      'campaign.csv': `${table('campaign')}${table('campaign').split('\n')[1]?.replace('MY-CAMPAIGN', 'OTHER')}\n`,
    },
    file: 'campaign.csv',
    row: 3,
    fault: /exactly one/,
  },
  {
    wrong: 'a campaign table with a header only',
    change: { 'campaign.csv': `${table('campaign').split('\n')[0]}\n` },
    file: 'campaign.csv',
    fault: /holds 0 rows/,
  },
  {
    wrong: 'no campaign table',
    change: { 'campaign.csv': null },
    file: 'campaign.csv',
    fault: /is missing; a package needs it/,
  },
  {
    wrong: 'a code that would climb',
    change: { 'campaign.csv': withCell('campaign', [2, 'campaign'], '../x') },
    file: 'campaign.csv',
    row: 2,
    column: 'campaign',
    fault: /letters A to Z/,
  },
  {
    wrong: 'an unknown piece',
    change: { 'zinc.csv': withCell('zinc', [2, 'piece'], 'ASH-8-7') },
    file: 'zinc.csv',
    row: 2,
    column: 'piece',
    fault: /the nearest there is "ASH-8-1"/,
  },
  {
    wrong: 'a break of an unknown pull',
    change: { 'breaks.csv': withCell('breaks', [3, 'pull'], 'P-007') },
    file: 'breaks.csv',
    row: 3,
    column: 'pull',
    fault: /not in pulls/,
  },
  {
    wrong: 'a piece of an unknown sample',
    change: { 'pieces.csv': withCell('pieces', [2, 'sample'], 'ASH-8-S9') },
    file: 'pieces.csv',
    row: 2,
    column: 'sample',
    fault: /not in samples/,
  },
  {
    wrong: 'pieces and samples but no product',
    change: { 'products.csv': null },
    file: 'samples.csv',
    row: 2,
    column: 'product',
    fault: /not in products/,
    others: true,
  },
  {
    wrong: 'an unknown specification',
    change: { 'products.csv': withCell('products', [2, 'specification'], 'en-813-3') },
    file: 'products.csv',
    row: 2,
    column: 'specification',
    fault: /not in the rulebook; the nearest is "en-818-3"/,
  },
  {
    wrong: 'a trace that is not there',
    change: { 'traces/P-001.csv': null },
    file: 'pulls.csv',
    row: 2,
    column: 'trace',
    fault: /not in the package/,
  },
  {
    wrong: 'a trace outside its folder',
    change: { 'pulls.csv': withCell('pulls', [2, 'trace'], 'campaign.csv') },
    file: 'pulls.csv',
    row: 2,
    column: 'trace',
    fault: /begins with traces\//,
  },
  {
    wrong: 'an invalid pull without a reason',
    change: { 'pulls.csv': withCell('pulls', [2, 'valid'], 'false') },
    file: 'pulls.csv',
    row: 2,
    column: 'invalid_reason',
    fault: /say why/,
  },
  {
    wrong: 'a misspelt table',
    change: { 'gaugings.csv': table('gauging') },
    file: 'gaugings.csv',
    fault: /is no table of a package; the nearest is gauging\.csv/,
  },
  {
    wrong: 'an own specification that is no JSON',
    change: { 'specifications/own.json': '{' },
    file: 'specifications/own.json',
    fault: /is not JSON/,
  },
  {
    wrong: 'an own specification with nothing in it',
    change: { 'specifications/own.json': '[]' },
    file: 'specifications/own.json',
    fault: /must hold one object/,
  },
  {
    wrong: 'a file listed but not there',
    change: {
      'datapackage.json': descriptor(
        [...example.keys()]
          .filter((p) => p !== 'datapackage.json')
          .concat('certificates/c.pdf')
          .map((path) => ({ path })),
      ),
    },
    file: 'certificates/c.pdf',
    fault: /is listed in datapackage.json but is not in the package/,
  },
  {
    wrong: 'a table that is not listed',
    change: {
      'datapackage.json': descriptor(
        [...example.keys()].filter((p) => p !== 'datapackage.json' && p !== 'zinc.csv').map((path) => ({ path })),
      ),
    },
    file: 'zinc.csv',
    fault: /is not listed; add \{"path": "zinc.csv"\}/,
  },
] as const;

for (const { wrong, change, file, fault, ...place } of cases) {
  test(`a package with ${wrong} is refused, with the place and the cure, and nothing of it is kept`, async (t) => {
    const { effects } = await laboratory(t);
    const files = handWritten(change as Record<string, string | Uint8Array | null>);
    if ('drop' in change) files.delete('datapackage.json');
    files.delete('drop');
    const path = writeFolder(temporaryFolder(t), files);
    const faults = await faultsOf(path);
    const found = faults.find((one) => one.file === file && fault.test(one.fault));
    assert.ok(found, JSON.stringify(faults, null, 1));
    assert.deepEqual(
      { row: found.row, column: found.column },
      { row: 'row' in place ? place.row : null, column: 'column' in place ? place.column : null },
    );
    if (!('others' in place)) assert.equal(faults.length, 1, JSON.stringify(faults, null, 1));
    await assert.rejects(bringIn({ path, who: 'x', why: 'y' }, effects), { code: 'package/faults' });
    assert.deepEqual(await campaignCodes(effects.store), []);
  });
}

test('faults of several files are told at once, in the order of the list', async (t) => {
  const files = handWritten({
    'people.csv': 'person,name\ngauger,A\nexaminer,\n',
    'breaks.csv': withCell('breaks', [3, 'link'], 'x'),
    'zinc.csv': withCell('zinc', [2, 'thickness_um'], '-84'),
    'traces/P-001.csv': null,
  });
  const faults = await faultsOf(writeFolder(temporaryFolder(t), files));
  assert.deepEqual(
    faults.map(({ file, row, column }) => `${file} ${row} ${column}`),
    ['breaks.csv 3 link', 'people.csv 3 name', 'pulls.csv 2 trace', 'zinc.csv 2 thickness_um'],
  );
});

test('a package of more faults than a message can hold tells all of them to a program', async (t) => {
  const rows = Array.from({ length: 500 }, (_, i) => `NONE,${i + 1},1,5`);
  const files = handWritten({ 'zinc.csv': `piece,link,reading,thickness_um\n${rows.join('\n')}\n` });
  const path = writeFolder(temporaryFolder(t), files);
  assert.equal((await faultsOf(path)).length, 500);
  await assert.rejects(readPackage(path, quiet), /500 faults; nothing of it was kept[\s\S]*and 300 more$/);
});

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
  const resources = [...example.keys()]
    .filter((path) => path !== 'datapackage.json')
    .map((path) => ({ path, hash: path === 'people.csv' ? 'd41d8cd98f00b204e9800998ecf8427e' : undefined }));
  const faults = await faultsOf(
    writeFolder(temporaryFolder(t), handWritten({ 'datapackage.json': descriptor(resources) })),
  );
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
    writeFileSync(join(folder, 'people.csv'), table('people'));
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
  files.set('datapackage.json', Buffer.from(descriptor(listed.map((path) => ({ path })))));
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

test('a recording with two columns that could be the force is a fault of its pull, which says where to settle it', async (t) => {
  const trace = Buffer.from(exampleTrace()).toString('utf8').trimEnd().split('\n');
  const doubled = trace.map((line, index) => `${line},${index === 0 ? 'load_kN' : line.split(',')[1]}`).join('\n');
  const faults = await faultsOf(writeFolder(temporaryFolder(t), handWritten({ 'traces/P-001.csv': `${doubled}\n` })));
  assert.deepEqual(
    faults.map(({ file, row, column }) => ({ file, row, column })),
    [{ file: 'pulls.csv', row: 2, column: 'trace' }],
  );
  assert.match(faults[0]?.fault ?? '', /2 columns could be the force.*force_column/);
});

for (const [what, change, column] of [
  ['a size the specification does not list', { from: ',8,en-818-3,', to: ',8.5,en-818-3,' }, 'nominal_size_mm'],
  ['a grade the specification does not have', { from: 'en-818-3,4,', to: 'en-818-3,80,' }, 'grade'],
] as const) {
  test(`${what} is a fault of its product`, async (t) => {
    const products = textOf(handWritten(), 'products.csv').replace(change.from, change.to);
    const faults = await faultsOf(writeFolder(temporaryFolder(t), handWritten({ 'products.csv': products })));
    assert.deepEqual(
      faults.map((fault) => ({ file: fault.file, row: fault.row, column: fault.column })),
      [{ file: 'products.csv', row: 2, column }],
    );
  });
}

test('a class that the standard of rigs does not have is a fault of its instrument', async (t) => {
  const instruments = textOf(handWritten(), 'instruments.csv').replace(/(RIG-1,rig,.*?,kN,0\.02,10,100,)1,/, '$17,');
  const faults = await faultsOf(writeFolder(temporaryFolder(t), handWritten({ 'instruments.csv': instruments })));
  assert.match(
    faults.map((fault) => `${fault.column}: ${fault.fault}`).join(),
    /class: holds 7, which is no class of ISO 7500-1/,
  );
});
