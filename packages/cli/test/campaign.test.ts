import assert from 'node:assert/strict';
import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { test } from 'node:test';
import type { BriefFinding, CampaignFinding } from '@provinghouse/contract';
import { examples, provinghouse, withFolder } from './run-command.ts';

const demo = join(examples, 'sallow-reach');

test('a campaign brought in, exported and brought in again gives the same finding to the last digit', () =>
  withFolder((folder) => {
    const home = join(folder, 'first');
    const again = join(folder, 'second');
    const zip = join(folder, 'campaign.zip');

    const broughtIn = provinghouse(home, 'bring-in', demo, '--json');
    assert.equal(broughtIn.code, 0, broughtIn.err);
    const { campaign } = JSON.parse(broughtIn.out) as { campaign: string };

    const first = provinghouse(home, 'judge', campaign, '--json');
    assert.equal(first.code, 0, first.err);
    assert.equal(provinghouse(home, 'export', campaign, '--out', zip).code, 0);
    assert.equal(provinghouse(again, 'bring-in', zip).code, 0);
    const second = provinghouse(again, 'judge', campaign, '--json');
    assert.equal(second.out, first.out);

    const plan = provinghouse(home, 'plan', campaign, '--json');
    assert.equal(plan.code, 0, plan.err);
    assert.equal(provinghouse(again, 'plan', campaign, '--json').out, plan.out);
    const brief = JSON.parse(plan.out) as BriefFinding;
    assert.equal(brief.order?.drawn.order.length, 30);
    const told = provinghouse(home, 'plan', campaign).out.replace(/\s+/g, ' ');
    for (const sentence of brief.answers) assert.ok(told.includes(sentence), sentence);

    const pdf = join(folder, 'report.pdf');
    const published = provinghouse(home, 'publish', campaign, '--out', pdf, '--json');
    assert.equal(published.code, 0, published.err);
    assert.equal(readFileSync(pdf).subarray(0, 5).toString('latin1'), '%PDF-');

    const finding = JSON.parse(first.out) as CampaignFinding;
    assert.equal(finding.pieces.length, 30);
    assert.ok(!first.out.includes('NaN'));
  }));

test('the command says what went wrong, where, and what would be right, and keeps nothing', () =>
  withFolder((folder) => {
    const run = provinghouse(join(folder, 'home'), 'bring-in', join(folder, 'nowhere'));
    assert.equal(run.code, 1);
    assert.match(run.err, /nowhere/);
    const unknown = provinghouse(join(folder, 'home'), 'judge', 'NOBODY');
    assert.notEqual(unknown.code, 0);
    assert.match(unknown.err, /NOBODY/);
  }));
