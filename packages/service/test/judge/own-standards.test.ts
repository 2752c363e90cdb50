import assert from 'node:assert/strict';
import { type TestContext, test } from 'node:test';
import { benchBook, enterRows, holdFile } from '../../src/entry/index.ts';
import { type Effects, judgeCampaign } from '../../src/index.ts';
import { ownStandardsOf } from '../../src/judge/own-standards.ts';
import { campaignsAtRig } from '../../src/pull/campaign-at-rig.ts';
import { code, emptyRecord, piece, prepared, product, sample, who } from '../entry/desk.ts';

/** A rule of a lab's own (invented) that asks for so much force of any size. */
function rule(force_kN: number): Uint8Array {
  const about = { edition: '1', range: [6, 16], confidence: 'A', confidenceWhy: 'our own' };
  const force = { id: 'force', quantity: 'breakingForceMin', statement: 'force', value: force_kN, unit: 'kN' };
  const rules = [{ ...force, sources: [], crossChecked: false }];
  return new TextEncoder().encode(JSON.stringify({ id: 'Quay rule', title: 'Quay rule (invented)', ...about, rules }));
}

async function attach(book: string, force_kN: number, effects: Effects): Promise<void> {
  const { sha256 } = await holdFile(rule(force_kN), effects);
  await enterRows(book, { rows: {}, files: [{ path: 'specifications/quay.json', sha256 }], who }, effects);
}

async function claimed(t: TestContext): Promise<Effects> {
  const effects = await prepared(t);
  const own = { ...product, product: 'OWN-8', specification: 'quay-rule', grade: null };
  const rows = {
    products: [own],
    samples: [{ ...sample, sample: 'OWN-8-S1', product: 'OWN-8' }],
    pieces: [{ ...piece('OWN-8-1'), sample: 'OWN-8-S1' }],
  };
  await enterRows(code, { rows, who }, effects);
  return effects;
}

test('a campaign is judged and pulled by the own specification that it holds, whatever the bench holds under that name', async (t) => {
  const effects = await claimed(t);
  await attach(benchBook, 99, effects);
  await attach(code, 40, effects);
  const finding = await judgeCampaign({ campaign: code }, effects);
  const limits = finding.products.find(({ product: one }) => one === 'OWN-8')?.specification.limits;
  assert.equal(limits?.find(({ quantity }) => quantity === 'breakingForce')?.lower, 40);
  const [atRig] = await campaignsAtRig('RIG-1', '2026-03-09', effects);
  assert.equal(atRig?.pieces.find((one) => one.piece === 'OWN-8-1')?.minimumForce_kN, 40);
});

test('the specifications of the bench are none of a campaign’s: its finding follows from the campaign alone', async (t) => {
  const effects = await emptyRecord(t);
  await attach(benchBook, 99, effects);
  assert.deepEqual(await ownStandardsOf('QUAY-1', effects.store), []);
});
