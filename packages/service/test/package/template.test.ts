import assert from 'node:assert/strict';
import { readdirSync, readFileSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { test } from 'node:test';
import { tables } from '@provinghouse/contract';
import { bringIn, writeTemplate } from '../../src/package/index.ts';
import { laboratory, quiet, temporaryFolder } from './workshop.ts';

test('a template brings in without a fault as it is written', async (t) => {
  const dir = join(temporaryFolder(t), 'new', 'folder');
  const { effects } = await laboratory(t);
  const { files } = await writeTemplate({ dir }, quiet);
  for (const name of Object.keys(tables)) assert.ok(files.includes(`${name}.csv`), name);
  const { campaign, rows } = await bringIn({ path: dir, who: 'gauger', why: 'test' }, effects);
  assert.equal(campaign, 'MY-CAMPAIGN');
  for (const [name, count] of Object.entries(rows)) assert.equal(count, name === 'campaign' ? 1 : 2, name);
});

test('a template states no hash, since every file in it is meant to be changed', async (t) => {
  const dir = temporaryFolder(t);
  await writeTemplate({ dir }, quiet);
  assert.doesNotMatch(readFileSync(join(dir, 'datapackage.json'), 'utf8'), /sha256|"bytes"/);
});

test('a template says on its first table that it is invented', async (t) => {
  const dir = temporaryFolder(t);
  await writeTemplate({ dir }, quiet);
  assert.match(readFileSync(join(dir, 'campaign.csv'), 'utf8'), /invented example/);
});

test('a folder that holds anything is refused and left as it is', async (t) => {
  const dir = temporaryFolder(t);
  writeFileSync(join(dir, 'letter.txt'), 'mine');
  await assert.rejects(writeTemplate({ dir }, quiet), { code: 'template/not-empty' });
  await assert.rejects(writeTemplate({ dir: join(dir, 'letter.txt') }, quiet), { code: 'template/not-a-folder' });
  assert.deepEqual(readdirSync(dir), ['letter.txt']);
});
