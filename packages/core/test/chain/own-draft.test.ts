import assert from 'node:assert/strict';
import { test } from 'node:test';
import {
  listSpecifications,
  type OwnDraft,
  type OwnLimit,
  ownCopy,
  ownStandardFrom,
  parseOwnStandard,
  type Quantity,
  type Specification,
  specificationFor,
} from '../../src/chain/index.ts';

const listed = listSpecifications();
const base = specificationFor({ standard: 'en-818-3', size_mm: 8 });

function draftOf(from: Specification, changes: Partial<Record<Quantity, Partial<OwnLimit>>> = {}): OwnDraft {
  return {
    name: 'Bridle rule 8',
    title: 'Bridle chain (invented)',
    edition: '2026-01',
    grade: from.grade?.split(' ')[0] ?? null,
    limits: ownCopy(from).limits.map((limit) => ({ ...limit, ...changes[limit.quantity] })),
  };
}

function lookedUp(from: Specification, draft: OwnDraft): Specification {
  const { standard, faults } = ownStandardFrom(from, draft);
  assert.deepEqual(faults, [], from.title);
  assert.ok(standard);
  // As a file that was written and read again.
  const own = [parseOwnStandard(JSON.parse(JSON.stringify(standard)), 'own.json')];
  return specificationFor({
    standard: draft.name,
    grade: draft.grade ?? undefined,
    size_mm: from.nominalSize_mm,
    own,
  });
}

test('a copy left as it is asks what the published specification asks, with the same sources and doubts', () => {
  for (const { specification: from } of listed) {
    const { limits, lost } = ownCopy(from);
    const copy = lookedUp(from, draftOf(from));
    for (const { quantity, lower, nominal, upper } of limits) {
      if (lower === null && nominal === null && upper === null) continue;
      const published = from.limits.find((limit) => limit.quantity === quantity);
      const own = copy.limits.find((limit) => limit.quantity === quantity);
      assert.ok(published && own, `${from.title}: ${quantity}`);
      assert.deepEqual(own.provenance.flags, published.provenance.flags, `${from.title}: ${quantity}`);
      assert.equal(own.provenance.crossChecked, published.provenance.crossChecked);
      assert.deepEqual(
        own.provenance.citations.map(({ id }) => id),
        published.provenance.citations.map(({ id }) => id),
      );
      assert.deepEqual(
        own.provenance.alternatives.map(({ value }) => value),
        published.provenance.alternatives.map(({ value }) => value),
      );
      if (lost.includes(published.statement)) continue;
      assert.deepEqual([own.lower, own.upper], [published.lower, published.upper], `${from.title}: ${quantity}`);
    }
  }
});

test('a changed limit must say where it comes from, and then rests on that alone', () => {
  const limit = base.limits.find(({ quantity }) => quantity === 'breakingForce');
  const higher = (limit?.lower ?? 0) * 1.1;
  const silent = ownStandardFrom(base, draftOf(base, { breakingForce: { lower: higher } }));
  assert.deepEqual(
    silent.faults.map(({ at }) => at),
    ['breakingForce'],
  );
  assert.equal(silent.standard, null);
  const source = 'Order of the co-operative (invented)';
  const own = lookedUp(base, draftOf(base, { breakingForce: { lower: higher, source } }));
  const found = own.limits.find(({ quantity }) => quantity === 'breakingForce');
  assert.ok(found && Math.abs((found.lower ?? 0) - higher) < 1e-9 * higher);
  assert.deepEqual(
    found.provenance.citations.map(({ text }) => text),
    [source],
  );
  assert.deepEqual(found.provenance.flags, []);
});

test('a limit left out must say why, and the specification tells it', () => {
  const none = { lower: null, nominal: null, upper: null };
  assert.equal(ownStandardFrom(base, draftOf(base, { elongation: none })).faults.length, 1);
  const draft = draftOf(base, { elongation: { ...none, source: 'not asked by the buyer' } });
  const { standard } = ownStandardFrom(base, draft);
  assert.match(standard?.confidenceWhy ?? '', /Left out: total ultimate elongation \(not asked by the buyer\)/);
  assert.ok(!lookedUp(base, draft).limits.some(({ quantity }) => quantity === 'elongation'));
});

test('an own specification can be made from an own one, and keeps its sources', () => {
  const source = 'first rule (invented)';
  const first = ownStandardFrom(base, draftOf(base, { elongation: { lower: 25, source } })).standard;
  assert.ok(first);
  const from = specificationFor({ standard: first.id, size_mm: 8, own: [first] });
  const second = lookedUp(from, { ...draftOf(from), name: 'Second rule' });
  const citation = second.limits.find(({ quantity }) => quantity === 'elongation')?.provenance.citations[0];
  assert.equal(citation?.text, source);
});

test('numbers that contradict each other are refused at their quantity', () => {
  const source = 'invented';
  const cases: readonly (readonly [Quantity, Partial<OwnLimit>])[] = [
    ['diameter', { lower: 7.9, upper: null, source }],
    ['diameter', { lower: 8.2, upper: 8.4, source }],
    ['pitch', { nominal: null, lower: 23, upper: 25, source }],
    ['pitch', { nominal: 24, lower: 25, upper: 26, source }],
    ['pitch', { nominal: 24, lower: null, upper: 25, source }],
    ['breakingForce', { lower: -4, source }],
    ['breakingForce', { lower: Number.NaN, source }],
  ];
  for (const [quantity, change] of cases) {
    const { standard, faults } = ownStandardFrom(base, draftOf(base, { [quantity]: change }));
    assert.equal(standard, null);
    assert.ok(faults.length > 0 && faults.every(({ at }) => at === quantity), `${quantity} ${JSON.stringify(change)}`);
  }
});

test('a draft without a name, or with that of a published standard, is refused at its name', () => {
  for (const name of ['', '  ', '...', 'EN 818-3']) {
    const { faults } = ownStandardFrom(base, { ...draftOf(base), name });
    assert.deepEqual(
      faults.map(({ at }) => at),
      ['name'],
      name,
    );
  }
});
