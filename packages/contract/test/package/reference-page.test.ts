import assert from 'node:assert/strict';
import { readFileSync } from 'node:fs';
import { test } from 'node:test';
import { pageFile, referencePage } from '../../make-reference.ts';
import { tables } from '../../src/package/index.ts';

test('the reference page is what the table definitions say (node packages/contract/make-reference.ts writes it)', () => {
  assert.equal(readFileSync(pageFile, 'utf8'), referencePage());
});

test('the reference page has a row for each field of each table', () => {
  const page = referencePage();
  for (const table of Object.values(tables)) {
    const section = page.split(`### ${table.name}.csv\n`)[1]?.split('\n### ')[0] ?? '';
    for (const name of Object.keys(table.fields))
      assert.ok(section.includes(`| \`${name}\` |`), `${table.name}.${name}`);
  }
});

test('every field says what it is', () => {
  for (const table of Object.values(tables))
    for (const [name, field] of Object.entries(table.fields))
      assert.ok(field.description.length >= 3, `${table.name}.${name}`);
});
