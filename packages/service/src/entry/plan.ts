import { isBlind, type KeptRevision, type Row, type StepRequest } from '@provinghouse/contract';
import { InputError } from '@provinghouse/core';
import { heldRow, reviseRecord } from '@provinghouse/store';
import type { Effects } from '../effects.ts';
import { rowsOf } from './book.ts';
import { codeRule } from './plan-rule.ts';

/**
 * Freezes the plan of a campaign: from now on a change of question, claims, rule or plan is an amendment, and a blind campaign names nobody.
 * @throws InputError `campaign/unknown`, `entry/frozen-already`, `entry/plan-incomplete`, `entry/code-tells`
 */
export async function freezePlan(campaign: string, request: StepRequest, effects: Effects): Promise<KeptRevision> {
  const { body } = await held(campaign, effects);
  if (body.plan_frozen_at !== null)
    throw new InputError('entry/frozen-already', `The plan was frozen already, at ${body.plan_frozen_at}.`);
  await refuseIncomplete(body, effects);
  const frozen = { ...body, blinding: body.blinding ?? 'open', plan_frozen_at: effects.now().toISOString() };
  return step(campaign, { request, body: frozen, action: 'freeze the plan' }, effects);
}

/** Unblinds a blind campaign: its products and suppliers are named again. @throws InputError `campaign/unknown`, `entry/not-blind` */
export async function unblind(campaign: string, request: StepRequest, effects: Effects): Promise<KeptRevision> {
  const { body } = await held(campaign, effects);
  if (!isBlind(body))
    throw new InputError('entry/not-blind', 'This campaign is not blind, so nothing is hidden in it.');
  return step(
    campaign,
    { request, body: { ...body, unblinded_at: effects.now().toISOString() }, action: 'unblind' },
    effects,
  );
}

async function refuseIncomplete(campaign: Row<'campaign'>, { store }: Effects): Promise<void> {
  const products = await rowsOf(store, campaign.campaign, 'products');
  const lacks = [
    ...(products.length === 0 ? ['a product'] : []),
    ...(campaign.pieces_per_product === null ? ['how many pieces of each product are pulled'] : []),
    ...(campaign.order_seed === null ? ['the seed of the order of pulls'] : []),
  ];
  if (lacks.length > 0)
    throw new InputError('entry/plan-incomplete', `The plan cannot be frozen yet: it lacks ${lacks.join(', ')}.`, {
      lacks,
    });
  const samples = await rowsOf(store, campaign.campaign, 'samples');
  const pieces = await rowsOf(store, campaign.campaign, 'pieces');
  codeRule(
    campaign,
    pieces.map(({ piece }) => piece),
    [...products.flatMap(({ product, supplier }) => [product, supplier]), ...samples.map(({ sample }) => sample)],
  );
}

async function held(campaign: string, { store }: Effects) {
  const row = await heldRow(store, { campaign, kind: 'campaign', id: campaign });
  if (row) return row;
  throw new InputError('campaign/unknown', `The record holds no campaign "${campaign}".`, { campaign });
}

interface Step {
  readonly request: StepRequest;
  readonly body: Row<'campaign'>;
  readonly action: string;
}

async function step(campaign: string, { request, body, action }: Step, effects: Effects): Promise<KeptRevision> {
  const { revision } = await held(campaign, effects);
  return reviseRecord(effects.store, {
    campaign,
    kind: 'campaign',
    id: campaign,
    revision,
    body: { ...body },
    who: request.who,
    why: request.why,
    at: effects.now().toISOString(),
    action,
  });
}
