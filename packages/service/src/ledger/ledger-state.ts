import type { LedgerState } from '@provinghouse/contract';
import { benchBook, campaignCodes, emptyHead, ledgerHead, verifyLedger } from '@provinghouse/store';
import type { Effects } from '../effects.ts';

/** A bench at which nothing was entered yet has no book, and nothing in it can be wrong. */
const nothingEntered: LedgerState = { verified: true, entries: 0, head: emptyHead.head_hash, disagreements: [] };

/** Whether the ledger of a book is whole, worked out from its first entry on; null for an unknown campaign. */
export async function ledgerState(book: string, { store }: Pick<Effects, 'store'>): Promise<LedgerState | null> {
  if (!(await isBook(book, store))) return book === benchBook ? nothingEntered : null;
  const { ok, head, entries, disagreements } = await verifyLedger(store, book);
  return { verified: ok, head, entries, disagreements };
}

/** Hash of the last entry of a campaign's ledger, unverified: it changes with every change of the campaign. Null for an unknown campaign. */
export async function ledgerHeadOf(campaign: string, { store }: Effects): Promise<string | null> {
  if (!(await isBook(campaign, store))) return null;
  return (await ledgerHead(store, campaign)).head_hash;
}

/** A campaign of the record, or the book of the bench once something was entered into it. */
export async function isBook(book: string, store: Effects['store']): Promise<boolean> {
  if (book !== benchBook) return (await campaignCodes(store)).includes(book);
  const held = await store.selectFrom('campaign').select('code').where('code', '=', benchBook).executeTakeFirst();
  return held !== undefined;
}
