import assert from 'node:assert/strict';
import { test } from 'node:test';
import {
  consistencyFaults,
  exampleRecords,
  readSheet,
  type Sheet,
  type TableName,
  tables,
} from '../../src/package/index.ts';

const files = new Set(['traces/P-001.csv', 'photographs/ASH-8-1.png', 'photographs/BIRCH-8-1.png']);

/** The example package with some cells of the first row of some tables changed. */
function sheetsWith(changes: Partial<Record<TableName, Record<string, string>>>): Record<TableName, Sheet> {
  const entries = (Object.keys(tables) as TableName[]).map((name) => {
    const names = Object.keys(tables[name].fields);
    const [first = [], ...others] = exampleRecords(tables[name]);
    const changed = names.map((field, index) => changes[name]?.[field] ?? first[index] ?? '');
    return [name, readSheet(tables[name], [names, changed, ...others])];
  });
  return Object.fromEntries(entries);
}

test('the example package is consistent', () => {
  assert.deepEqual(consistencyFaults({ sheets: sheetsWith({}), files }), []);
});

const broken = [
  {
    table: 'samples',
    change: { product: 'ASH-9' },
    column: 'product',
    fault: /not in products; the nearest there is "ASH-8"/,
  },
  { table: 'pieces', change: { sample: 'CEDAR' }, column: 'sample', fault: /not in samples; add it/ },
  { table: 'breaks', change: { pull: 'P-003' }, column: 'pull', fault: /not in pulls/ },
  { table: 'breaks', change: { link: '6' }, column: 'link', fault: /the piece has 5 free links/ },
  { table: 'pulls', change: { rig: 'CAL-1' }, column: 'rig', fault: /is a calliper in mm; write a rig in kN/ },
  { table: 'gauging', change: { instrument: 'RIG-1' }, column: 'instrument', fault: /is a rig in kN/ },
  { table: 'pulls', change: { trace: 'P-001.csv' }, column: 'trace', fault: /begins with traces\// },
  { table: 'pulls', change: { trace: 'traces/../campaign.csv' }, column: 'trace', fault: /begins with traces\// },
  {
    table: 'pulls',
    change: { trace: 'traces/P-002.csv' },
    column: 'trace',
    fault: /the nearest there is "traces\/P-001.csv"/,
  },
  { table: 'photographs', change: { file: 'photographs/none.jpg' }, column: 'file', fault: /not in the package/ },
  { table: 'pulls', change: { trace: '', panel_maximum_kN: '' }, column: 'trace', fault: /maximum off the panel/ },
  { table: 'pulls', change: { valid: 'false' }, column: 'invalid_reason', fault: /say why/ },
  { table: 'gauging', change: { quantity: 'lengthOverLinks' }, column: 'over_links', fault: /number of links/ },
  {
    table: 'calibrations',
    change: { due_on: '2025-01-01' },
    column: 'due_on',
    fault: /must not be before calibrated_on/,
  },
  { table: 'instruments', change: { range_maximum: '5' }, column: 'range_maximum', fault: /must not be less/ },
  { table: 'products', change: { currency: '' }, column: 'currency', fault: /a price needs its currency/ },
  { table: 'zinc', change: { thickness_um: '' }, column: 'thickness_um', fault: /reads nothing/ },
  {
    table: 'campaign',
    change: { table_speed_min_mm_per_min: '90' },
    column: 'table_speed_max_mm_per_min',
    fault: /less/,
  },
] as const;

for (const { table, change, column, fault } of broken) {
  test(`${table} with ${JSON.stringify(change)} is a fault in row 2, column ${column}`, () => {
    const faults = consistencyFaults({ sheets: sheetsWith({ [table]: change }), files });
    const found = faults.filter((one) => one.table === table && one.row === 2 && one.column === column);
    assert.equal(found.length, 1, JSON.stringify(faults));
    assert.match(found[0]?.fault ?? '', fault);
  });
}

test('a campaign table without a row is a fault, and so is one with two', () => {
  const sheets = sheetsWith({});
  const [row] = sheets.campaign.rows;
  assert.ok(row);
  for (const rows of [[], [row, { ...row, row: 3 }]]) {
    const faults = consistencyFaults({ sheets: { ...sheets, campaign: { rows, faults: [] } }, files });
    assert.deepEqual(
      faults.map(({ table, fault }) => ({ table, fault })),
      [
        {
          table: 'campaign',
          fault: `holds ${rows.length} rows; a package is one campaign, so it must hold exactly one`,
        },
      ],
    );
  }
});

test('where a table could not be read, the rows that need it are not blamed', () => {
  const { pieces: _, ...others } = sheetsWith({});
  assert.deepEqual(consistencyFaults({ sheets: others, files }), []);
});
