import type { PlannedPulls } from '@provinghouse/contract';
import { pullOrder } from '@provinghouse/core';
import type { Effects } from '../effects.ts';
import { knownCampaign, rowsOf } from '../entry/index.ts';

/**
 * The order in which the pieces of a campaign are to be pulled: in blocks that hold a piece of every product, drawn from the seed of the plan.
 * It is drawn with the true names even while the campaign is blind, so that it is the same before and after; the answer names pieces only.
 * @throws InputError `campaign/unknown`
 */
export async function plannedPulls(code: string, { store }: Pick<Effects, 'store'>): Promise<PlannedPulls> {
  const campaign = await knownCampaign(store, code);
  const seed = campaign.order_seed;
  const products = new Map((await rowsOf(store, code, 'samples')).map(({ sample, product }) => [sample, product]));
  const pieces = (await rowsOf(store, code, 'pieces')).flatMap(({ piece, sample }) => {
    const product = products.get(sample);
    return product === undefined ? [] : [{ piece, product }];
  });
  if (seed === null || pieces.length === 0) return { order: [], seed, sentence: null };
  const blocks = Math.min(...[...Map.groupBy(pieces, ({ product }) => product).values()].map((own) => own.length));
  const { order, sentence } = pullOrder({ pieces, blocks, seed });
  return { order: order.map(({ piece, block, position }) => ({ piece, block, position })), seed, sentence };
}
