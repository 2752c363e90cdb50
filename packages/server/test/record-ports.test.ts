import assert from 'node:assert/strict';
import { test } from 'node:test';
import { fileURLToPath } from 'node:url';
import { briefOfCampaign, bringIn } from '@provinghouse/service';
import { recordPorts } from '../src/record-ports.ts';
import { emptyRecord } from './bench.ts';

const demo = fileURLToPath(new URL('../../../examples/sallow-reach', import.meta.url));
const { effects } = await emptyRecord();
const { campaign } = await bringIn({ path: demo, who: 'tester', why: 'to be served' }, effects);

test('the brief of the record is the one the service gives, and is worked out once for a ledger head', async () => {
  const ports = recordPorts(effects);
  const first = await ports.brief(campaign);
  assert.deepEqual(first, await briefOfCampaign({ campaign }, effects));
  assert.equal(await ports.brief(campaign), first);
});

test('a campaign the record does not hold has no brief', async () => {
  assert.equal(await recordPorts(effects).brief('NONE'), null);
});
