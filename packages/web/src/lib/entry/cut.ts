import type { CutRequest } from '@provinghouse/contract';
import type { Fault } from '../request.ts';
import { text } from '../text.ts';
import { bookAddress } from './book.ts';
import { enqueue } from './outbox.ts';
import { personHere } from './person.ts';

type CutOutcome =
  | { readonly kept: true; readonly pieces: readonly string[] }
  | { readonly kept: false; readonly fault: Fault };

/** Cuts a sample into pieces and tells their codes. It waits in this browser like any entry, and counts once however often it is sent. */
export async function cutPieces(book: string, asked: Omit<CutRequest, 'who'>): Promise<CutOutcome> {
  const body: CutRequest = { ...asked, who: personHere() ?? text.entry.nobody };
  const label = text.samples.cut.entering(asked.sample);
  const outcome = await enqueue({ book, label, url: `${bookAddress(book)}/samples/cut`, body });
  if (!outcome.kept) return outcome;
  const codes = 'pieces' in outcome.answer && Array.isArray(outcome.answer.pieces) ? outcome.answer.pieces : [];
  return { kept: true, pieces: codes.map(String) };
}
