import type { CorrectionRequest, Kept, KeptRevision, Row, TableName, WithdrawalRequest } from '@provinghouse/contract';
import { InputError } from '@provinghouse/core';
import {
  canonicalJson,
  heldRow,
  isStoreError,
  lastEntryOf,
  ledgerHead,
  type Revision,
  reviseRecord,
  withdrawRecord,
} from '@provinghouse/store';
import type { Masks } from '../blind/blind.ts';
import { masksNow } from '../blind/masks-now.ts';
import { idMeant, refuseUnseen, rowMeant } from '../blind/meant.ts';
import { namingNobody } from '../blind/naming-nobody.ts';
import type { Effects } from '../effects.ts';
import { campaignOf } from './book.ts';

/** Cells that stand for a step of the campaign, which has its own rules. */
const steps = ['plan_frozen_at', 'unblinded_at'] as const;

/**
 * Corrects a row of a book; the value before stays in the ledger. A change of the brief or of a claim after the plan was frozen is an
 * amendment. While the campaign is blind the row may come as a blind screen shows it: what was not shown stays as it is. Sent a second time,
 * the same correction is answered as kept.
 * @throws InputError `entry/blind`, `entry/step`; StoreError as `reviseRecord`
 */
export async function correctRow(book: string, request: CorrectionRequest, effects: Effects): Promise<KeptRevision> {
  const campaign = await campaignOf(effects.store, book);
  const masks = await masksNow(campaign, effects.store);
  if (masks !== null) refuseNamed(request.kind);
  const isAmendment = campaign?.plan_frozen_at != null && ['campaign', 'products'].includes(request.kind);
  return namingNobody(masks, async () => {
    const revision = await revisionMeant(book, request, masks, effects);
    if (campaign && request.kind === 'campaign') refuseSteps(campaign, request.body as Row<'campaign'>);
    try {
      return await reviseRecord(effects.store, { ...revision, action: isAmendment ? 'amend' : 'correct' });
    } catch (error) {
      const isOvertaken = isStoreError(error) && error.code === 'store/revision-conflict';
      const kept = isOvertaken && (await keptBefore(revision, effects));
      if (kept) return kept;
      throw error;
    }
  });
}

async function revisionMeant(
  book: string,
  { id: named, body, ...request }: CorrectionRequest,
  masks: Masks | null,
  { store, now }: Effects,
): Promise<Revision> {
  const { kind } = request;
  const id = masks === null ? named : idMeant(kind, named, masks);
  const held = masks === null ? null : await heldRow(store, { campaign: book, kind, id });
  // Every row is cells by name; the union of the types of all tables is wider than TypeScript follows.
  const meant = rowMeant({ kind, body: { ...body } }, masks, held?.body ?? null);
  if (masks !== null && held !== null) refuseUnseen({ kind, body: meant }, masks, held.body);
  return { ...request, id, body: meant, campaign: book, at: now().toISOString() };
}

/** The answer that was lost on its way, where this very correction is what stands there. */
async function keptBefore(
  { campaign, kind, id, revision, body, who }: Revision,
  { store }: Effects,
): Promise<KeptRevision | null> {
  const held = await heldRow(store, { campaign, kind, id });
  if (!held || held.revision !== revision + 1 || held.who !== who) return null;
  if (canonicalJson({ ...held.body }) !== canonicalJson({ ...body })) return null;
  return { revision: held.revision, ledgerSeq: (await ledgerHead(store, campaign)).head_seq };
}

/**
 * Takes a row out of a book; it stays in the ledger. While the campaign is blind it may be named as a blind screen names it. Sent a second
 * time, it is answered as kept.
 * @throws InputError `entry/blind`; StoreError as `withdrawRecord`
 */
export async function withdrawRow(book: string, request: WithdrawalRequest, effects: Effects): Promise<Kept> {
  const { store, now } = effects;
  const masks = await masksNow(await campaignOf(store, book), store);
  if (masks !== null) refuseNamed(request.kind);
  const meant = masks === null ? request : { ...request, id: idMeant(request.kind, request.id, masks) };
  return namingNobody(masks, async () => {
    try {
      return await withdrawRecord(store, { ...meant, campaign: book, at: now().toISOString() });
    } catch (error) {
      if (isStoreError(error) && error.code === 'store/unknown-record' && (await isWithdrawn(book, meant, effects)))
        return { ledgerSeq: (await ledgerHead(store, book)).head_seq };
      throw error;
    }
  });
}

async function isWithdrawn(book: string, { kind, id }: WithdrawalRequest, { store }: Effects): Promise<boolean> {
  return (await lastEntryOf(store, { campaign: book, kind, id }))?.action === 'withdraw';
}

/** What says whose a sample is stays as it is while that is hidden. */
function refuseNamed(kind: TableName): void {
  if (kind !== 'products' && kind !== 'samples') return;
  throw new InputError(
    'entry/blind',
    `This campaign is blind now: ${kind} are corrected before the plan is frozen, or after unblinding.`,
  );
}

function refuseSteps(held: Row<'campaign'>, body: Row<'campaign'>): void {
  const step = steps.find((name) => held[name] !== body[name]);
  const isBlindingLate = held.plan_frozen_at !== null && held.blinding !== body.blinding;
  if (step === undefined && !isBlindingLate) return;
  throw new InputError(
    'entry/step',
    `${step ?? 'blinding'} is not corrected by hand: the plan is frozen and the campaign unblinded by their own steps in the Brief.`,
  );
}
