import assert from 'node:assert/strict';
import { before, test } from 'node:test';
import type { CampaignFinding } from '@provinghouse/contract';
import { orderOf } from '../../src/brief/order.ts';
import { asPlanned } from '../../src/brief/planned-pieces.ts';
import { demoFinding, unpulled } from './fixture.ts';

let finding: CampaignFinding;

before(async () => {
  finding = await demoFinding();
});

/** The same campaign with a plan that was frozen with a seed of its own. */
function planned(cells: Partial<CampaignFinding['campaign']> = {}): CampaignFinding {
  const plan = { order_seed: 4711, plan_frozen_at: '2026-03-01T08:00:00.000Z' };
  return { ...finding, campaign: { ...finding.campaign, ...plan, ...cells } };
}

test('the order is drawn from the seed of the plan, and another seed gives another order', () => {
  const drawn = orderOf(planned())?.drawn;
  assert.equal(drawn?.seed, 4711);
  assert.notDeepEqual(orderOf(planned({ order_seed: 4712 }))?.drawn.order, drawn?.order);
});

test('the order does not hang on the names of the products, so that unblinding does not change it', () => {
  const open = orderOf(planned())?.drawn.order.map(({ piece }) => piece);
  const names = [...new Set(finding.pieces.map(({ product }) => product))];
  const masked = (product: string) => `Product ${String.fromCharCode(90 - names.indexOf(product))}`;
  const blind = planned();
  const pieces = blind.pieces.map((piece) => ({ ...piece, product: masked(piece.product) }));
  assert.deepEqual(
    orderOf({ ...blind, pieces })?.drawn.order.map(({ piece }) => piece),
    open,
  );
});

test('pulls made in the order drawn are said to follow it, and one that came late is counted', () => {
  const order = orderOf(planned())?.drawn.order.map(({ piece }) => piece) ?? [];
  const pulledIn = (sequence: readonly string[]) => ({
    ...planned(),
    pieces: finding.pieces.flatMap((piece) => {
      const at = sequence.indexOf(piece.piece);
      const pulledAt = new Date(Date.UTC(2026, 2, 2, 8, at)).toISOString();
      return piece.pull === null || at < 0 ? [] : [{ ...piece, pull: { ...piece.pull, pulledAt } }];
    }),
  });
  const pulled = order.filter((code) => finding.pieces.some(({ piece, pull }) => piece === code && pull !== null));
  const kept = orderOf(pulledIn(pulled))?.sentences.join(' ') ?? '';
  assert.match(kept, /made so far followed the order drawn/);
  const [first = '', second = '', ...rest] = pulled;
  const swapped = orderOf(pulledIn([second, first, ...rest]))?.sentences.join(' ') ?? '';
  assert.match(swapped, / 1 came after a piece that stands later/);
});

test('while no piece is prepared the plan is looked at with the pieces planned, and no longer', () => {
  const empty = unpulled(planned({ pieces_per_product: 3 }));
  const bare = { ...empty, products: empty.products.map((product) => ({ ...product, pieces: [] })) };
  assert.deepEqual([...new Set(asPlanned(bare).map(({ pieces }) => pieces.length))], [3]);
  assert.deepEqual(asPlanned(planned({ pieces_per_product: 99 })), finding.products);
});

test('while planned pieces are not cut yet it is said that the lot will change, and for whom', () => {
  const [first] = finding.products;
  assert.ok(first);
  const most = Math.max(...finding.products.map(({ pieces }) => pieces.length));
  const said = (pieces_per_product: number | null) =>
    orderOf(planned({ pieces_per_product }))?.sentences.join(' ') ?? '';
  assert.match(said(most + 1), new RegExp(`Not every planned piece is cut yet \\(.*${first.product}`));
  assert.doesNotMatch(said(1), /Not every planned piece/);
  assert.doesNotMatch(said(null), /Not every planned piece/);
});
