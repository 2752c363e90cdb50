import { isBlind, type Row } from '@provinghouse/contract';
import type { Effects } from '../effects.ts';
import { rowsOf } from '../entry/book.ts';
import { type Masks, masksOf } from './blind.ts';

/** The masks of a campaign; null where nothing is hidden, as in the book of the bench, which has no campaign row. */
export async function masksNow(campaign: Row<'campaign'> | null, store: Effects['store']): Promise<Masks | null> {
  if (!campaign || !isBlind(campaign)) return null;
  const code = campaign.campaign;
  return masksOf(
    { products: await rowsOf(store, code, 'products'), samples: await rowsOf(store, code, 'samples') },
    campaign,
  );
}
