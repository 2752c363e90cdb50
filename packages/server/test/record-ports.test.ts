import assert from 'node:assert/strict';
import { mkdtemp, rm } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { after, before, test } from 'node:test';
import { fileURLToPath } from 'node:url';
import { briefOfCampaign, bringIn, type OpenRecord, openRecord } from '@provinghouse/service';
import { recordPorts } from '../src/record-ports.ts';

const demo = fileURLToPath(new URL('../../../examples/sallow-reach', import.meta.url));

let home = '';
let record: OpenRecord;
let campaign = '';

before(async () => {
  home = await mkdtemp(join(tmpdir(), 'provinghouse-ports-'));
  record = await openRecord({ home });
  campaign = (await bringIn({ path: demo, who: 'tester', why: 'to be served' }, record.effects)).campaign;
});

after(async () => {
  await record.close();
  await rm(home, { recursive: true, force: true });
});

test('the brief of the record is the one the service gives, and is worked out once for a ledger head', async () => {
  const ports = recordPorts(record.effects);
  const first = await ports.brief(campaign);
  assert.deepEqual(first, await briefOfCampaign({ campaign }, record.effects));
  assert.equal(await ports.brief(campaign), first);
});

test('a campaign the record does not hold has no brief', async () => {
  assert.equal(await recordPorts(record.effects).brief('NONE'), null);
});
