import assert from 'node:assert/strict';
import { test } from 'node:test';
import fc from 'fast-check';
import {
  compareSpecifications,
  type LimitRelation,
  listSpecifications,
  rulebook,
  specificationFor,
} from '../../src/chain/index.ts';

const specifications = listSpecifications().map(({ specification }) => specification);
const any = fc.constantFrom(...specifications);

const turned: Readonly<Record<LimitRelation, LimitRelation>> = {
  same: 'same',
  higher: 'lower',
  lower: 'higher',
  narrower: 'wider',
  wider: 'narrower',
  apart: 'apart',
  'first only': 'second only',
  'second only': 'first only',
};

test('a specification is the same as itself in every quantity', () => {
  for (const one of specifications) {
    for (const { relation, change_pct } of compareSpecifications(one, one)) {
      assert.equal(relation, 'same', one.title);
      assert.ok(change_pct === 0 || change_pct === null);
    }
  }
});

test('turned round, higher is lower and narrower is wider', () => {
  fc.assert(
    fc.property(any, any, (first, second) => {
      const back = compareSpecifications(second, first);
      for (const { quantity, links, relation } of compareSpecifications(first, second)) {
        const other = back.find((row) => row.quantity === quantity && row.links === links);
        assert.equal(other?.relation, turned[relation], `${first.title}, ${second.title}: ${quantity}`);
      }
    }),
    { seed: 7, numRuns: 400 },
  );
});

test('every limit of either specification stands in exactly one row', () => {
  fc.assert(
    fc.property(any, any, (first, second) => {
      const rows = compareSpecifications(first, second);
      assert.equal(rows.filter((row) => row.first !== null).length, first.limits.length);
      assert.equal(rows.filter((row) => row.second !== null).length, second.limits.length);
    }),
    { seed: 7, numRuns: 200 },
  );
});

test('the change of the breaking force is the ratio of the published tables', () => {
  const published = (id: string) => {
    const row = rulebook.standards
      .find((standard) => standard.id === id)
      ?.tables.find((table) => table.id === 'loads')
      ?.rows.find(({ d }) => d === 10);
    return Number(row?.breakingForce);
  };
  const [row] = compareSpecifications(
    specificationFor({ standard: 'en-818-3', size_mm: 10 }),
    specificationFor({ standard: 'en-818-2', size_mm: 10 }),
  ).filter(({ quantity }) => quantity === 'breakingForce');
  assert.equal(row?.relation, 'higher');
  const ratio = published('EN 818-2') / published('EN 818-3');
  assert.ok(Number.isFinite(ratio));
  assert.ok(Math.abs((row?.change_pct ?? Number.NaN) - 100 * (ratio - 1)) < 1e-9);
});

test('freed of the size, one grade asks one stress of every size', () => {
  const of = (size_mm: number) => specificationFor({ standard: 'grade-definition', grade: '40', size_mm });
  const [row] = compareSpecifications(of(8), of(13));
  assert.equal(row?.relation, 'higher');
  assert.ok(Math.abs(row?.bySize?.change_pct ?? 1) < 1e-9);
  assert.ok(Math.abs((row?.bySize?.first ?? 0) - (of(8).gradeStress_N_per_mm2 ?? 0)) < 1e-6);
});
