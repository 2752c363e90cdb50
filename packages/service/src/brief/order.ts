import type { CampaignFinding, MadePull, OrderBrief, PieceFinding, PlannedNumber } from '@provinghouse/contract';
import { type PullOrder, pullOrder } from '@provinghouse/core';
import { seed } from '../judge/inference.ts';
import { list, plural } from '../judge/wording.ts';

/**
 * The order a lot gives, beside the one the pulls were made in. A block holds a piece of every product, and there are as many as the
 * product with the fewest pieces has: a change of rig, hand or day between blocks then meets all products alike.
 */
export function orderOf(finding: Pick<CampaignFinding, 'pieces' | 'products' | 'campaign'>): OrderBrief | null {
  const { pieces, campaign } = finding;
  if (pieces.length === 0) return null;
  const drawn = drawnOf(pieces, campaign.order_seed);
  const made = madeOf(pieces);
  const untimed = pieces.filter(({ pull }) => pull !== null && pull.pulledAt === null).map(({ piece }) => piece);
  return {
    drawn,
    made,
    untimed,
    likeNeighbours: made.length < 2 ? null : likeNeighbours(made),
    sentences: [
      lotSentence(drawn, campaign.order_seed !== null),
      ...unfinished(finding),
      ...sentencesOf({ made, untimed, drawn, campaign }),
    ],
  };
}

/** Pieces that are planned and not cut yet will stand in the lot as well. */
function unfinished({ campaign, products }: Pick<CampaignFinding, 'products' | 'campaign'>): string[] {
  const planned = campaign.pieces_per_product;
  const open = products.filter(({ pieces }) => planned !== null && pieces.length < planned);
  if (campaign.order_seed === null || open.length === 0) return [];
  const names = list(open.map(({ product }) => product));
  return [
    `Not every planned piece is cut yet (${names}): with each that is added, the lot is drawn anew from its seed.`,
  ];
}

/**
 * The lot. With a seed of the campaign's own, products are put in by the first of their pieces and not by name: a blind campaign then has
 * the same order before and after its unblinding.
 */
function drawnOf(pieces: readonly PieceFinding[], own: number | null): PullOrder {
  const groups = [...Map.groupBy(pieces, ({ product }) => product)];
  const blocks = Math.min(...groups.map(([, all]) => all.length));
  if (own === null)
    return pullOrder({ pieces: pieces.map(({ piece, product }) => ({ piece, product })), blocks, seed });
  const firsts = new Map(groups.map(([product, all]) => [product, all.map(({ piece }) => piece).toSorted()[0] ?? '']));
  const names = new Map([...firsts].map(([product, first]) => [first, product]));
  const drawn = pullOrder({
    pieces: pieces.map(({ piece, product }) => ({ piece, product: firsts.get(product) ?? product })),
    blocks,
    seed: own,
  });
  return { ...drawn, order: drawn.order.map((one) => ({ ...one, product: names.get(one.product) ?? one.product })) };
}

function lotSentence({ order, blocks, seed: drawnWith, doubts }: PullOrder, isOfPlan: boolean): string {
  const products = new Set(order.map(({ product }) => product)).size;
  const whole = doubts.length === 0 ? ', each with a piece of every product' : '';
  const lot = isOfPlan ? `The lot of the plan, seed ${drawnWith},` : `A lot drawn now with seed ${drawnWith}`;
  return `${lot} puts ${plural(order.length, 'piece', 'pieces')} of ${plural(products, 'product', 'products')} into ${plural(blocks, 'block', 'blocks')}${whole}: what drifts from block to block then meets all products alike.`;
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

interface Made {
  readonly made: readonly MadePull[];
  readonly untimed: readonly string[];
  readonly drawn: PullOrder;
  readonly campaign: CampaignFinding['campaign'];
}

function sentencesOf({ made, untimed, drawn, campaign }: Made): string[] {
  if (made.length === 0)
    return [
      untimed.length === 0
        ? 'No piece has been pulled yet: the order drawn here can be kept.'
        : 'No pull has a time in the record, so the order they were made in is not known.',
    ];
  return [
    campaign.order_seed === null || campaign.plan_frozen_at === null
      ? 'Whether the pulls followed an order drawn by lot cannot be told from their times: no drawn order was recorded before the pulls. Any order may come out of a lot, and the order drawn here is one of many.'
      : followed(made, drawn),
    ...(untimed.length === 0 ? [] : [`${list(untimed)} were pulled at times not recorded and stand in no order.`]),
    ...rigsMixed(made),
  ];
}

/** How far the pulls kept to the order that was on record before them. */
function followed(made: readonly MadePull[], { order }: PullOrder): string {
  const rank = new Map(order.map(({ piece, position }) => [piece, position]));
  const ranks = made.map(({ piece }) => rank.get(piece) ?? 0);
  const early = ranks.filter((one, at) => one < Math.max(0, ...ranks.slice(0, at))).length;
  const drawn = 'The seed of the order was on record when the plan was frozen.';
  if (early === 0) return `${drawn} The ${plural(made.length, 'pull', 'pulls')} made so far followed the order drawn.`;
  return `${drawn} Of ${plural(made.length, 'pull', 'pulls')} made so far ${early} came after a piece that stands later in the order drawn.`;
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
