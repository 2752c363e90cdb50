import {
  type CorrectionRequest,
  isBlind,
  type Kept,
  type KeptRevision,
  type Row,
  type WithdrawalRequest,
} from '@provinghouse/contract';
import { InputError } from '@provinghouse/core';
import {
  canonicalJson,
  heldRow,
  isStoreError,
  ledgerEntries,
  ledgerHead,
  reviseRecord,
  withdrawRecord,
} from '@provinghouse/store';
import type { Effects } from '../effects.ts';
import { campaignOf } from './book.ts';

/** Cells that stand for a step of the campaign, which has its own rules. */
const steps = ['plan_frozen_at', 'unblinded_at'] as const;

/**
 * Corrects a row of a book; the value before stays in the ledger. A change of the brief or of a claim after the plan was frozen is an
 * amendment. Sent a second time, the same correction is answered as kept.
 * @throws InputError `entry/blind`, `entry/step`; StoreError as `reviseRecord`
 */
export async function correctRow(book: string, request: CorrectionRequest, effects: Effects): Promise<KeptRevision> {
  const campaign = await campaignOf(effects.store, book);
  if (campaign) refuseWhileBlind(campaign, request.kind);
  if (campaign && request.kind === 'campaign') refuseSteps(campaign, request.body as Row<'campaign'>);
  const isAmendment = campaign?.plan_frozen_at != null && ['campaign', 'products'].includes(request.kind);
  try {
    return await reviseRecord(effects.store, {
      ...request,
      // Every row is cells by name; the union of the types of all tables is wider than TypeScript follows.
      body: { ...request.body },
      campaign: book,
      at: effects.now().toISOString(),
      action: isAmendment ? 'amend' : 'correct',
    });
  } catch (error) {
    const kept =
      isStoreError(error) && error.code === 'store/revision-conflict' && (await keptBefore(book, request, effects));
    if (kept) return kept;
    throw error;
  }
}

/** The answer that was lost on its way, where this very correction is what stands there. */
async function keptBefore(
  book: string,
  { kind, id, revision, body, who }: CorrectionRequest,
  { store }: Effects,
): Promise<KeptRevision | null> {
  const held = await heldRow(store, { campaign: book, kind, id });
  if (!held || held.revision !== revision + 1 || held.who !== who) return null;
  if (canonicalJson({ ...held.body }) !== canonicalJson({ ...body })) return null;
  return { revision: held.revision, ledgerSeq: (await ledgerHead(store, book)).head_seq };
}

/**
 * Takes a row out of a book; it stays in the ledger. Sent a second time, it is answered as kept.
 * @throws InputError `entry/blind`; StoreError as `withdrawRecord`
 */
export async function withdrawRow(book: string, request: WithdrawalRequest, effects: Effects): Promise<Kept> {
  const campaign = await campaignOf(effects.store, book);
  if (campaign) refuseWhileBlind(campaign, request.kind);
  try {
    return await withdrawRecord(effects.store, { ...request, campaign: book, at: effects.now().toISOString() });
  } catch (error) {
    if (isStoreError(error) && error.code === 'store/unknown-record' && (await isWithdrawn(book, request, effects)))
      return { ledgerSeq: (await ledgerHead(effects.store, book)).head_seq };
    throw error;
  }
}

async function isWithdrawn(book: string, { kind, id }: WithdrawalRequest, { store }: Effects): Promise<boolean> {
  const entries = await ledgerEntries(store, book, { limit: Number.MAX_SAFE_INTEGER });
  return entries.findLast((entry) => entry.kind === kind && entry.record === id)?.action === 'withdraw';
}

function refuseWhileBlind(campaign: Row<'campaign'>, kind: string): void {
  if (!isBlind(campaign) || !['products', 'samples', 'custody', 'pieces'].includes(kind)) return;
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
