import assert from 'node:assert/strict';
import { test } from 'node:test';
import { parse } from 'csv-parse/sync';
import { stringify } from 'csv-stringify/sync';
import { exampleTrace } from '../../src/package/example-trace.ts';
import { readPackage } from '../../src/package/index.ts';
import { type Refusal, testRefusals } from './refusal.ts';
import {
  exampleFiles,
  faultsOf,
  faultsWith,
  handWritten,
  placeOf,
  quiet,
  temporaryFolder,
  textOf,
  writeFolder,
} from './workshop.ts';

const table = (name: string) => textOf(exampleFiles(), `${name}.csv`);

/** An example table with one cell changed; rows count as a spreadsheet shows them. */
function withCell(name: string, [row, column]: readonly [number, string], text: string): string {
  const records: string[][] = parse(table(name));
  const cells = records[row - 1];
  const place = records[0]?.indexOf(column) ?? -1;
  if (!cells || place < 0) throw new Error(`${name} has no row ${row} with ${column}`);
  cells[place] = text;
  return stringify(records);
}

/** Packages with one wrong cell, where the fault must be told. */
const cells = [
  ['a comma in a number', 'gauging', [2, 'value_mm'], '8,02', /decimal point: 8\.02/],
  ['text in a number', 'gauging', [2, 'value_mm'], 'eight', /not a number/],
  ['a code that would climb', 'campaign', [2, 'campaign'], '../x', /letters A to Z/],
  ['an unknown piece', 'zinc', [2, 'piece'], 'ASH-8-7', /the nearest there is "ASH-8-1"/],
  ['a break of an unknown pull', 'breaks', [3, 'pull'], 'P-007', /not in pulls/],
  ['a piece of an unknown sample', 'pieces', [2, 'sample'], 'ASH-8-S9', /not in samples/],
  [
    'an unknown specification',
    'products',
    [2, 'specification'],
    'en-813-3',
    /not in the rulebook; the nearest is "en-818-3"/,
  ],
  ['a trace outside its folder', 'pulls', [2, 'trace'], 'campaign.csv', /begins with traces\//],
] as const;
testRefusals(
  cells.map(([wrong, name, place, text, fault]): Refusal => {
    const file = `${name}.csv`;
    return [wrong, { [file]: withCell(name, place, text) }, `${file} ${place.join(' ')}`, fault];
  }),
);

const [heads, first] = table('campaign').split('\n');
const openQuote = 'piece,link,reading,note\nASH-8-1,1,1,"open\n';
const latin1 = Buffer.from('person,name\ngauger,Andr\u00e9\nexaminer,B\n', 'latin1');
const utf16 = Buffer.from('\ufeffperson,name\n', 'utf16le');

/** Packages with one wrong table. */
testRefusals([
  [
    'semicolons',
    { 'people.csv': 'person;name\na;A\n' },
    'people.csv 1 -',
    /separated by semicolons; save it separated by commas/,
    'others',
  ],
  ['tabs', { 'people.csv': 'person\tname\na\tA\n' }, 'people.csv 1 -', /separated by tabs/, 'others'],
  ['Latin-1', { 'people.csv': latin1 }, 'people.csv - -', /not UTF-8 \(perhaps Latin-1\); save it as "CSV UTF-8"/],
  ['UTF-16', { 'people.csv': utf16 }, 'people.csv - -', /is UTF-16; save it/],
  ['an empty table file', { 'zinc.csv': '' }, 'zinc.csv 1 -', /is empty; the first row must name the columns/],
  ['an open quote', { 'zinc.csv': openQuote }, 'zinc.csv 2 -', /never closed/],
  [
    'an unknown column',
    { 'people.csv': 'person,name,roll\ngauger,A,r\nexaminer,B,r\n' },
    'people.csv 1 roll',
    /did you mean role\?/,
  ],
  [
    'a missing column',
    { 'people.csv': 'person,role\ngauger,r\nexaminer,r\n' },
    'people.csv 1 name',
    /column is missing/,
  ],
  [
    'a repeated key',
    { 'people.csv': 'person,name\ngauger,A\nexaminer,B\ngauger,C\n' },
    'people.csv 4 person',
    /repeats row 2/,
  ],
  [
    'two campaigns',
    { 'campaign.csv': `${table('campaign')}${first?.replace('MY-CAMPAIGN', 'OTHER')}\n` },
    'campaign.csv 3 -',
    /exactly one/,
  ],
  ['a campaign table with a header only', { 'campaign.csv': `${heads}\n` }, 'campaign.csv - -', /holds 0 rows/],
  ['no campaign table', { 'campaign.csv': null }, 'campaign.csv - -', /is missing; a package needs it/],
  ['pieces and samples but no product', { 'products.csv': null }, 'samples.csv 2 product', /not in products/, 'others'],
  ['a trace that is not there', { 'traces/P-001.csv': null }, 'pulls.csv 2 trace', /not in the package/],
  [
    'an invalid pull without a reason',
    { 'pulls.csv': withCell('pulls', [2, 'valid'], 'false') },
    'pulls.csv 2 invalid_reason',
    /say why/,
  ],
  [
    'a misspelt table',
    { 'gaugings.csv': table('gauging') },
    'gaugings.csv - -',
    /is no table of a package; the nearest is gauging\.csv/,
  ],
  [
    'an own specification that is no JSON',
    { 'specifications/own.json': '{' },
    'specifications/own.json - -',
    /is not JSON/,
  ],
  [
    'an own specification with nothing in it',
    { 'specifications/own.json': '[]' },
    'specifications/own.json - -',
    /must hold one object/,
  ],
]);

test('faults of several files are told at once, in the order of the list', async (t) => {
  const faults = await faultsWith(t, {
    'people.csv': 'person,name\ngauger,A\nexaminer,\n',
    'breaks.csv': withCell('breaks', [3, 'link'], 'x'),
    'zinc.csv': withCell('zinc', [2, 'thickness_um'], '-84'),
    'traces/P-001.csv': null,
  });
  assert.deepEqual(faults.map(placeOf), [
    'breaks.csv 3 link',
    'people.csv 3 name',
    'pulls.csv 2 trace',
    'zinc.csv 2 thickness_um',
  ]);
});

test('a package of more faults than a message can hold tells all of them to a program', async (t) => {
  const rows = Array.from({ length: 500 }, (_, i) => `NONE,${i + 1},1,5`);
  const files = handWritten({ 'zinc.csv': `piece,link,reading,thickness_um\n${rows.join('\n')}\n` });
  const path = writeFolder(temporaryFolder(t), files);
  assert.equal((await faultsOf(path)).length, 500);
  await assert.rejects(readPackage(path, quiet), /500 faults; nothing of it was kept[\s\S]*and 300 more$/);
});

test('a recording with two columns that could be the force is a fault of its pull, which says where to settle it', async (t) => {
  const trace = Buffer.from(exampleTrace()).toString('utf8').trimEnd().split('\n');
  const doubled = trace.map((line, index) => `${line},${index === 0 ? 'load_kN' : line.split(',')[1]}`).join('\n');
  const faults = await faultsWith(t, { 'traces/P-001.csv': `${doubled}\n` });
  assert.deepEqual(faults.map(placeOf), ['pulls.csv 2 trace']);
  assert.match(faults[0]?.fault ?? '', /2 columns could be the force.*force_column/);
});

for (const [what, change, column] of [
  ['a size the specification does not list', { from: ',8,en-818-3,', to: ',8.5,en-818-3,' }, 'nominal_size_mm'],
  ['a grade the specification does not have', { from: 'en-818-3,4,', to: 'en-818-3,80,' }, 'grade'],
] as const) {
  test(`${what} is a fault of its product`, async (t) => {
    const products = table('products').replace(change.from, change.to);
    const faults = await faultsWith(t, { 'products.csv': products });
    assert.deepEqual(faults.map(placeOf), [`products.csv 2 ${column}`]);
  });
}

test('a class that the standard of rigs does not have is a fault of its instrument', async (t) => {
  const instruments = table('instruments').replace(/(RIG-1,rig,.*?,kN,0\.02,10,100,)1,/, '$17,');
  const faults = await faultsWith(t, { 'instruments.csv': instruments });
  assert.match(
    faults.map((fault) => `${fault.column}: ${fault.fault}`).join(),
    /class: holds 7, which is no class of ISO 7500-1/,
  );
});
