import { type EntryRequest, isBlind, type Row } from '@provinghouse/contract';
import { InputError } from '@provinghouse/core';

/** What holds for entries because of the plan of the campaign. @throws InputError `entry/plan-not-frozen`, `entry/plan-frozen`, `entry/blind` */
export function planRule(campaign: Row<'campaign'>, { rows, why }: EntryRequest, hasPulls: boolean): void {
  if (campaign.plan_frozen_at === null) {
    // A campaign that was brought in with its pulls has no frozen plan, and goes on as it is.
    if ((rows.pulls ?? []).length > 0 && !hasPulls)
      throw new InputError(
        'entry/plan-not-frozen',
        'Freeze the plan in the Brief before the first pull: what was planned must be on record before a result is known.',
      );
    return;
  }
  if ((rows.products ?? []).length > 0 && (why ?? '').trim() === '')
    throw new InputError(
      'entry/plan-frozen',
      `The plan was frozen at ${campaign.plan_frozen_at}. A product added now is an amendment: give its reason.`,
    );
  if (isBlind(campaign) && [...(rows.products ?? []), ...(rows.samples ?? [])].length > 0)
    throw new InputError(
      'entry/blind',
      'This campaign is blind now. Products and samples are entered before the plan is frozen, or after unblinding.',
    );
}

/** In a blind campaign the code of a piece must not tell whose it is. @throws InputError `entry/code-tells` */
export function codeRule(campaign: Row<'campaign'>, codes: readonly string[], telling: readonly string[]): void {
  if (campaign.blinding !== 'blind' || campaign.unblinded_at !== null) return;
  for (const [at, code] of codes.entries()) {
    const told = telling.find((name) => name.length > 1 && code.toLowerCase().includes(name.toLowerCase()));
    if (told === undefined) continue;
    // Whoever is not to know whose it is does not read the name in the refusal either.
    const [which, what] = isBlind(campaign)
      ? [`Code ${at + 1} of those sent`, 'the name of a product, a supplier or a sample']
      : [`The code "${code}"`, `"${told}"`];
    throw new InputError(
      'entry/code-tells',
      `${which} tells whose the piece is: it holds ${what}. In a blind campaign let the codes be drawn.`,
    );
  }
}
