import type {
  CorrectionRequest,
  EntryRequest,
  HeldFile,
  RowHeld,
  StepRequest,
  TableName,
  WithdrawalRequest,
} from '@provinghouse/contract';
import { faultOf, type Reply } from '../request.ts';
import { text } from '../text.ts';
import { bookAddress } from './book.ts';
import { enqueue, type Outcome } from './outbox.ts';
import { personHere } from './person.ts';

/** What an entry is called while it is on its way. */
interface Labelled {
  readonly book: string;
  readonly label: string;
}

/** Whoever enters without having said who they are is written down as that. */
function who(): string {
  return personHere() ?? text.entry.nobody;
}

/** Enters new rows; they wait in this browser until the ledger has them. */
export function enter(at: Labelled, request: Omit<EntryRequest, 'who'>): Promise<Outcome> {
  return post(at, 'records', { ...request, who: who() });
}

/** Corrects a row from the revision it was seen in. */
export function correct<T extends TableName>(
  at: Labelled,
  request: Omit<CorrectionRequest<T>, 'who'>,
): Promise<Outcome> {
  return post(at, 'corrections', { ...request, who: who() });
}

/** Takes a row out of the record; it stays in the ledger. */
export function withdraw(at: Labelled, request: Omit<WithdrawalRequest, 'who'>): Promise<Outcome> {
  return post(at, 'withdrawals', { ...request, who: who() });
}

export type CampaignStep = 'plan/freeze' | 'unblind';

/** Takes a step of a campaign that is taken once. */
export function takeStep(at: Labelled, step: CampaignStep, why: string): Promise<Outcome> {
  const request: StepRequest = { who: who(), why };
  return post(at, step, request);
}

function post({ book, label }: Labelled, path: string, body: object): Promise<Outcome> {
  return enqueue({ book, label, url: `${bookAddress(book)}/${path}`, body });
}

/** Corrects the cells named and leaves the others as they were seen. */
export function correctCells<T extends TableName>(
  at: Labelled,
  held: RowHeld<T>,
  change: { readonly kind: T; readonly cells: Partial<RowHeld<T>['body']>; readonly why: string },
): Promise<Outcome> {
  const { kind, cells, why } = change;
  return correct(at, { kind, id: held.id, revision: held.revision, body: { ...held.body, ...cells }, why });
}

/** Sends the bytes of a file ahead of the row that names it. Large files do not fit into the browser's own store, so this needs the server. */
export async function sendFile(bytes: Blob): Promise<Reply<HeldFile>> {
  try {
    const headers = { 'content-type': 'application/octet-stream' };
    const reply = await fetch('/api/files', { method: 'PUT', cache: 'no-store', headers, body: bytes });
    if (!reply.ok) return { ok: false, fault: await faultOf(reply) };
    // The server of the same build sends the shape of the contract.
    const record: HeldFile = await reply.json();
    return { ok: true, record };
  } catch {
    return { ok: false, fault: { code: 'no-answer', detail: text.fault.offline } };
  }
}
