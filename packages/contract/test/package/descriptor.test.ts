import assert from 'node:assert/strict';
import { readFileSync } from 'node:fs';
import { test } from 'node:test';
import { Ajv } from 'ajv';
import {
  describePackage,
  descriptorSchema,
  packageFormat,
  packageFormatKey,
  type TableName,
  tableSchema,
  tables,
} from '../../src/package/index.ts';

const sha256 = 'a'.repeat(64);
const files = [
  ...(Object.keys(tables) as TableName[]).map((table) => ({
    path: `${table}.csv`,
    bytes: 9,
    sha256,
    mediatype: 'text/csv',
    table,
  })),
  { path: 'traces/Pull 1.csv', bytes: 9, sha256, mediatype: 'text/csv' },
  { path: 'traces/pull-1.csv', bytes: 9, sha256, mediatype: 'text/csv' },
];
const descriptor = describePackage({ campaign: 'My-Campaign', title: 'T', files });
const resources = descriptor.resources as Record<string, unknown>[];

/** The profiles are written for draft 04 of JSON Schema; they use nothing that later drafts read differently. */
function profile(name: string) {
  const { $schema: _, ...schema } = JSON.parse(
    readFileSync(new URL(`reference/${name}.json`, import.meta.url), 'utf8'),
  );
  return new Ajv({ strict: false, validateFormats: false }).compile(schema);
}

test('a descriptor is valid by the published profile of the Data Package standard', () => {
  const valid = profile('data-package');
  assert.ok(valid(descriptor), JSON.stringify(valid.errors));
});

test('each table is valid by the published profile of a tabular data resource', () => {
  const valid = profile('tabular-data-resource');
  for (const resource of resources.slice(0, Object.keys(tables).length))
    assert.ok(valid(resource), `${resource.name}: ${JSON.stringify(valid.errors)}`);
});

test('the published profile would notice a schema that is wrong', () => {
  const valid = profile('tabular-data-resource');
  assert.ok(!valid({ ...resources[0], schema: { fields: [{ name: 'x', type: 'kilonewton' }] } }));
});

test('names of resources are unique although their paths differ by capitals only', () => {
  const names = resources.map(({ name }) => name);
  assert.equal(new Set(names).size, names.length);
});

test('a descriptor read back is accepted', () => {
  assert.ok(descriptorSchema.safeParse(JSON.parse(JSON.stringify(descriptor))).success);
});

test('the least a stranger must write is accepted', () => {
  assert.ok(descriptorSchema.safeParse({ resources: [{ path: 'campaign.csv' }] }).success);
});

test('a package of a newer layout is refused', () => {
  const newer = { resources: [{ path: 'campaign.csv' }], [packageFormatKey]: packageFormat + 1 };
  const { error } = descriptorSchema.safeParse(newer);
  assert.match(error?.issues[0]?.message ?? '', /is newer than this program reads/);
});

test('a primary key is stated only where none of its fields may be empty', () => {
  assert.deepEqual(tableSchema(tables.breaks).primaryKey, ['pull', 'link', 'examiner']);
  assert.equal(tableSchema(tables.gauging).primaryKey, undefined);
});

test('every reference names a table with one key field', () => {
  for (const table of Object.values(tables)) {
    for (const { reference } of (tableSchema(table).foreignKeys ?? []) as {
      reference: { resource: string; fields: string[] };
    }[]) {
      assert.ok(Object.hasOwn(tables, reference.resource), `${table.name} -> ${reference.resource}`);
      assert.equal(reference.fields.length, 1);
    }
  }
});
