import type { CampaignFinding, MadePull, OrderBrief, PieceFinding, PlannedNumber } from '@provinghouse/contract';
import { type PullOrder, pullOrder } from '@provinghouse/core';
import { seed } from '../judge/inference.ts';
import { list, plural } from '../judge/wording.ts';

/**
 * The order a lot gives, beside the one the pulls were made in. A block holds a piece of every product, and there are as many as the
 * product with the fewest pieces has: a change of rig, hand or day between blocks then meets all products alike.
 */
export function orderOf({ pieces }: CampaignFinding): OrderBrief | null {
  if (pieces.length === 0) return null;
  const blocks = Math.min(...[...Map.groupBy(pieces, ({ product }) => product).values()].map((own) => own.length));
  const drawn = pullOrder({ pieces: pieces.map(({ piece, product }) => ({ piece, product })), blocks, seed });
  const made = madeOf(pieces);
  const untimed = pieces.filter(({ pull }) => pull !== null && pull.pulledAt === null).map(({ piece }) => piece);
  return {
    drawn,
    made,
    untimed,
    likeNeighbours: made.length < 2 ? null : likeNeighbours(made),
    sentences: [lotSentence(drawn), ...sentencesOf(made, untimed)],
  };
}

function lotSentence({ order, blocks, seed: drawnWith, doubts }: PullOrder): string {
  const products = new Set(order.map(({ product }) => product)).size;
  const whole = doubts.length === 0 ? ', each with a piece of every product' : '';
  return `A lot drawn now with seed ${drawnWith} puts ${plural(order.length, 'piece', 'pieces')} of ${plural(products, 'product', 'products')} into ${plural(blocks, 'block', 'blocks')}${whole}: what drifts from block to block then meets all products alike.`;
}

function madeOf(pieces: readonly PieceFinding[]): MadePull[] {
  return pieces
    .flatMap(({ piece, product, pull }) =>
      pull === null || pull.pulledAt === null ? [] : [{ piece, product, rig: pull.rig, pulledAt: pull.pulledAt }],
    )
    .sort((a, b) => Date.parse(a.pulledAt) - Date.parse(b.pulledAt))
    .map((pull, index) => ({ ...pull, position: index + 1 }));
}

/** How often a pull followed one of the same product. Every pair is as likely to be neighbours, hence the mean over all orders. */
export function likeNeighbours(made: readonly Pick<MadePull, 'product'>[]): PlannedNumber {
  const groups = [...Map.groupBy(made, ({ product }) => product).values()];
  const alike = made.filter((pull, index) => pull.product === made[index - 1]?.product).length;
  const byLot = groups.reduce((sum, { length }) => sum + length * (length - 1), 0) / made.length;
  const most = made.length - groups.length;
  return {
    value: alike,
    unit: '',
    sentence: `${plural(alike, 'pull', 'pulls')} followed one of the same product; product by product it would be ${most}, by lot about ${Number(byLot.toPrecision(2))}.`,
    method: 'Count of like neighbours; mean over all orders: sum of n (n - 1) over the products, over all pulls',
    inputs: [
      { name: 'pulls', value: made.length, unit: '', source: 'with a time in the record' },
      { name: 'product by product', value: most, unit: '', source: 'pulls less products' },
      { name: 'by lot, in the mean', value: byLot, unit: '', source: 'over all orders' },
    ],
  };
}

function sentencesOf(made: readonly MadePull[], untimed: readonly string[]): string[] {
  if (made.length === 0)
    return [
      untimed.length === 0
        ? 'No piece has been pulled yet: the order drawn here can be kept.'
        : 'No pull has a time in the record, so the order they were made in is not known.',
    ];
  return [
    'Whether the pulls followed an order drawn by lot cannot be told from their times: no drawn order was recorded before the pulls. Any order may come out of a lot, and the order drawn here is one of many.',
    ...(untimed.length === 0 ? [] : [`${list(untimed)} were pulled at times not recorded and stand in no order.`]),
    ...rigsMixed(made),
  ];
}

/** Where a rig never met a product, what the rig does cannot be told from what the product is. */
function rigsMixed(made: readonly MadePull[]): string[] {
  const rigs = [...Map.groupBy(made, ({ rig }) => rig)];
  if (rigs.length < 2) return [];
  const products = [...new Set(made.map(({ product }) => product))];
  return rigs.flatMap(([rig, pulls]) => {
    const missed = products.filter((product) => !pulls.some((pull) => pull.product === product));
    const where = `${rig} made ${plural(pulls.length, 'pull', 'pulls')} (places ${placesOf(pulls)} in the order of time)`;
    return missed.length === 0
      ? [`${where}, of every product.`]
      : [`${where}, none of ${list(missed)}: a difference between the rigs would not meet all products alike.`];
  });
}

function placesOf(pulls: readonly MadePull[]): string {
  const places = pulls.map(({ position }) => position);
  const [first, last] = [Math.min(...places), Math.max(...places)];
  return last - first + 1 === places.length ? `${first} to ${last}` : list(places.map(String));
}
