import assert from 'node:assert/strict';
import { test } from 'node:test';
import type { CampaignRows } from '@provinghouse/contract';
import { nextPullCode } from '../../src/pull/pull-row.ts';

const pulls = (...codes: string[]) => codes.map((pull) => ({ pull })) as unknown as CampaignRows['pulls'];

test('the next pull takes the number after the greatest in use, in the record or under way', () => {
  assert.equal(nextPullCode(pulls()), 'P-001');
  assert.equal(nextPullCode(pulls('P-001', 'P-030', 'second try')), 'P-031');
  assert.equal(nextPullCode(pulls('P-030'), ['P-031']), 'P-032');
  assert.equal(nextPullCode(pulls('P-999')), 'P-1000');
});
