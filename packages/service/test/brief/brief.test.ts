import assert from 'node:assert/strict';
import { before, test } from 'node:test';
import type { BriefFinding, CampaignFinding, PlannedNumber, ProductBrief } from '@provinghouse/contract';
import { powerToShowConformity } from '@provinghouse/core';
import { briefOf } from '../../src/index.ts';
import { demoFinding, unpulled, withPieces } from './fixture.ts';

let finding: CampaignFinding;

let brief: BriefFinding;

before(async () => {
  finding = await demoFinding();
  brief = briefOf(finding);
});

/** Every number of a brief, wherever it stands, with the way to it. */
function numbersOf(value: unknown, path = 'brief'): { readonly path: string; readonly planned: PlannedNumber }[] {
  if (typeof value !== 'object' || value === null) return [];
  const own = 'sentence' in value && 'inputs' in value ? [{ path, planned: value as PlannedNumber }] : [];
  return [...own, ...Object.entries(value).flatMap(([key, inner]) => numbersOf(inner, `${path}.${key}`))];
}

function product(products: readonly ProductBrief[], name: string): ProductBrief {
  const found = products.find((one) => one.product === name);
  assert.ok(found, name);
  return found;
}

test('every number has a sentence and a method, and is finite or absent', () => {
  const numbers = numbersOf(brief);
  assert.ok(numbers.length > 150);
  for (const { path, planned } of numbers) {
    assert.ok(planned.value === null || Number.isFinite(planned.value), path);
    assert.ok(planned.sentence.endsWith('.'), `${path}: ${planned.sentence}`);
    assert.ok(planned.method.length > 0, path);
    assert.doesNotMatch(`${planned.sentence} ${planned.method}`, /NaN|undefined|null|Infinity/, path);
    for (const input of planned.inputs) assert.ok(Number.isFinite(input.value) && input.source !== '', path);
  }
});

test('the same finding gives the same brief', () => {
  assert.deepEqual(briefOf(structuredClone(finding)), brief);
});

test('a chance computed again from the inputs shown is the chance shown', () => {
  for (const { plans } of brief.products) {
    for (const { mean, share } of plans) {
      for (const { value, inputs } of [mean.chance, share.chance]) {
        const given = (name: string) => inputs.find((input) => input.name === name)?.value ?? Number.NaN;
        const part = inputs.find((input) => input.name === 'share above the minimum')?.value;
        const again = powerToShowConformity(given('pieces'), {
          expectedMean: given('mean expected'),
          cov_pct: given('scatter'),
          limit: given('minimum'),
          side: 'lower',
          confidence: given('confidence'),
          guard: given('guard band'),
          of: part === undefined ? 'mean' : { share: part },
        });
        assert.equal(value, again);
      }
    }
  }
});

test('before the first pull nothing is found, and everything that can be assumed is planned', () => {
  const early = briefOf(unpulled(finding));
  for (const { plans, passes } of early.products) {
    assert.deepEqual(
      plans.map(({ basis }) => basis),
      ['assumed'],
    );
    assert.equal(passes.found, null);
  }
  assert.ok(early.sizes.every(({ differences }) => differences.every(({ basis }) => basis === 'assumed')));
  assert.ok(early.rigs.every(({ checks }) => checks.length === 2));
  assert.deepEqual(early.order?.made, []);
});

test('what the plan assumes does not depend on what was found', () => {
  const assumed = (of: CampaignFinding) => briefOf(of).products.map(({ plans }) => plans[0]);
  assert.deepEqual(assumed(finding), assumed(unpulled(finding)));
});

test('one piece shows no bound and says why; no piece at all is no fault', () => {
  for (const count of [0, 1]) {
    const few = { ...finding, products: finding.products.map((one) => withPieces(one, count)) };
    for (const { plans } of briefOf(few).products) {
      for (const { mean, share } of plans) {
        assert.equal(mean.chance.value, null);
        assert.match(share.chance.sentence, /scatter of two at least/);
      }
    }
  }
  assert.equal(briefOf({ ...finding, products: [], pieces: [] }).order, null);
});

test('a product without a minimum is named, and nothing is planned against it', () => {
  const [first, ...rest] = finding.products;
  assert.ok(first);
  const limits = first.specification.limits.filter(({ quantity }) => quantity !== 'breakingForce');
  const bare = { ...first, specification: { ...first.specification, limits } };
  const open = briefOf({ ...finding, products: [bare, ...rest] });
  assert.deepEqual(product(open.products, first.product).plans, []);
  assert.match(open.assumptions.join(' '), new RegExp(`No minimum breaking force is known for ${first.product}`));
});

test('simple acceptance sets no guard band, and makes every chance greater', () => {
  const guarded = brief.products;
  const simple = briefOf({ ...finding, rule: 'simple acceptance' }).products;
  for (const { product: name, plans } of simple) {
    const [plan] = plans;
    const [other] = product(guarded, name).plans;
    assert.equal(plan?.guard_kN.value, 0);
    assert.ok((plan?.mean.chance.value ?? 0) > (other?.mean.chance.value ?? 1));
    assert.ok((plan?.allPass.value ?? 0) > (other?.allPass.value ?? 1));
  }
});

test('a claim above the minimum raises the mean that is expected', () => {
  const claimed = finding.products.map((one) => ({ ...one, claimedBreakingForce_kN: 100 }));
  for (const { plans } of briefOf({ ...finding, products: claimed }).products)
    assert.ok(Math.abs((plans[0]?.mean_kN.value ?? 0) - 110) < 1e-9);
});

test('the product near its limit cannot be expected to pass on all pieces if pulled again', () => {
  const found = product(brief.products, 'ELDER-10').plans.find(({ basis }) => basis === 'found');
  assert.ok((found?.allPass.value ?? 1) < 0.05);
  assert.equal(found?.mean.piecesFor90.value, null);
  assert.match(found?.mean.piecesFor90.sentence ?? '', /no number of pieces/);
});

test('the older rig is refused for 10 mm and suits 8 mm', () => {
  const { rigs, answers } = brief;
  const checks = rigs.find(({ rig }) => rig === 'RIG-2')?.checks ?? [];
  for (const { nominalSize_mm, check } of checks) assert.equal(check.isSuited, nominalSize_mm === 8, check.sentence);
  assert.ok(answers.includes('RIG-2 does not suit the forces expected of 10 mm.'));
});
