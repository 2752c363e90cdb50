import type { Kept } from '@provinghouse/contract';
import { tellChange } from '../entry/change-news.ts';
import { send } from '../send.ts';

/** Brings the demo campaign of this installation into the record. */
export async function bringInDemo() {
  const reply = await send<Kept & { readonly campaign: string }>('/api/demo', {});
  if (reply.ok) tellChange(reply.record.campaign);
  return reply;
}
