import assert from 'node:assert/strict';
import { test } from 'node:test';
import type { CampaignFinding } from '@provinghouse/contract';
import fc from 'fast-check';
import { partId, requirementsOf, shownOf, type View, viewCodec } from '../src/features/findings/view.ts';

const open: View = { by: 'product', product: '', requirement: '', verdict: '', words: '' };

const views = fc.record<View>(
  {
    by: fc.constantFrom('product', 'requirement'),
    product: fc.string(),
    requirement: fc.string(),
    verdict: fc.string(),
    words: fc.string(),
  },
  { noNullPrototype: true },
);

const verdicts = ['conforms', 'does not conform', 'inconclusive', 'not judged'] as const;
const quantities = ['diameter', 'breakingForce'] as const;

function limitOf(quantity: (typeof quantities)[number]) {
  return { quantity, statement: `${quantity} at least 1` };
}

/** Two products of three pieces, each held against two requirements; only what the view reads is there. */
function findingOf(given: readonly (typeof verdicts)[number][]): CampaignFinding {
  const products = ['ASH-8', 'BIRCH-8'].map((product) => ({
    product,
    supplier: `${product} Forge`,
    specification: { limits: [...quantities.map(limitOf), { quantity: 'workingLoadLimit', statement: 'nominal' }] },
    judgements: [],
  }));
  const pieces = products.flatMap(({ product }, of) =>
    [0, 1, 2].map((at) => ({
      piece: `${product}-${at + 1}`,
      product,
      judgements: quantities.map((quantity, which) => ({
        limit: limitOf(quantity),
        verdict: given[(6 * of + 2 * at + which) % given.length],
        reason: 'for a reason',
      })),
    })),
  );
  return { products, pieces } as unknown as CampaignFinding; // a finding is large, the view reads this much of it
}

const findings = fc.array(fc.constantFrom(...verdicts), { minLength: 1, maxLength: 12 }).map(findingOf);

test('a view written into an address is read back as it was', () => {
  fc.assert(
    fc.property(views, (view) => assert.deepEqual(viewCodec.read(viewCodec.write(view)), view)),
    { seed: 7, numRuns: 300 },
  );
});

test('what is shown without a filter is everything, and the address is empty', () => {
  assert.equal(viewCodec.write(open), '');
  fc.assert(
    fc.property(findings, (finding) => {
      const shown = shownOf(finding, open);
      assert.equal(shown.values, 12);
      assert.equal(shown.allValues, 12);
      assert.equal(shown.groups.length, 4);
    }),
    { seed: 7, numRuns: 20 },
  );
});

test('the filters for each verdict share out all values between them', () => {
  fc.assert(
    fc.property(findings, (finding) => {
      const counts = verdicts.map((verdict) => shownOf(finding, { ...open, verdict }).values);
      assert.equal(
        counts.reduce((sum, count) => sum + count, 0),
        12,
      );
    }),
    { seed: 7, numRuns: 50 },
  );
});

test('every word asked for stands in what is shown, whatever its case', () => {
  const finding = findingOf(['conforms', 'inconclusive']);
  const { groups } = shownOf(finding, { ...open, words: 'birch INCONCLUSIVE' });
  const values = groups.flatMap((group) => group.values);
  assert.ok(values.length > 0);
  for (const { product, judgement } of values) {
    assert.equal(product.product, 'BIRCH-8');
    assert.equal(judgement.verdict, 'inconclusive');
  }
});

test('a filter for a requirement keeps the groups of products without a value; one for a verdict does not', () => {
  const { products } = findingOf(['conforms']);
  const claimed = { products, pieces: [] } as unknown as CampaignFinding; // as above
  assert.equal(shownOf(claimed, { ...open, requirement: 'diameter' }).groups.length, 2);
  assert.equal(shownOf(claimed, { ...open, verdict: 'conforms' }).groups.length, 0);
});

test('the working load limit is no requirement: no pull can hold a piece against it', () => {
  assert.deepEqual(requirementsOf(findingOf(['conforms'])), [...quantities]);
});

test('the anchor of a part holds nothing that an address cannot', () => {
  assert.equal(partId('product', 'Product A/é'), 'product-Product-A-');
});
