import type { CampaignAtRig, CampaignRows, PieceAtRig, Row } from '@provinghouse/contract';
import {
  isInputError,
  type OwnStandard,
  type RuleLine,
  type Specification,
  specificationFor,
} from '@provinghouse/core';
import { campaignCodes } from '@provinghouse/store';
import { rowsShown } from '../blind/rows-shown.ts';
import type { Effects } from '../effects.ts';
import { campaignRow, certificateOn } from '../judge/evidence.ts';
import { ownStandardsOf } from '../judge/own-standards.ts';

/** A piece may hold this much more than the least that is asked of it; the rig must be good for that. Common practice. */
export const expectedOverMinimum = 1.5;

/** What every campaign of the record that knows the rig says of it, on a day (YYYY-MM-DD). */
export async function campaignsAtRig(rig: string, day: string, { store }: Effects): Promise<CampaignAtRig[]> {
  const found: CampaignAtRig[] = [];
  for (const code of await campaignCodes(store)) {
    const rows = await rowsShown(code, { store });
    const at = campaignAtRig(rows, await ownStandardsOf(code, store), { rig, day });
    if (at) found.push(at);
  }
  return found;
}

/** What one campaign says of the rig; null where it does not know it as a rig that reads kN. */
export function campaignAtRig(
  rows: CampaignRows,
  own: readonly OwnStandard[],
  { rig, day }: { readonly rig: string; readonly day: string },
): CampaignAtRig | null {
  const row = rows.instruments.find((one) => one.instrument === rig && one.kind === 'rig' && one.unit === 'kN');
  if (!row) return null;
  const campaign = campaignRow(rows);
  const { table_speed_min_mm_per_min: slow, table_speed_max_mm_per_min: fast } = campaign;
  const newest = certificateOn(rows, rig, day) ?? certificateOn(rows, rig, null);
  return {
    campaign: campaign.campaign,
    title: campaign.title,
    marking: campaign.marking,
    isPlanOpen: campaign.plan_frozen_at === null && rows.pulls.length === 0,
    rangeMinimum_kN: row.range_minimum,
    rangeMaximum_kN: row.range_maximum,
    class: row.class,
    certificate: newest
      ? {
          number: newest.calibration,
          calibratedOn: newest.calibrated_on,
          dueOn: newest.due_on,
          isInForce: newest.calibrated_on <= day && day <= newest.due_on,
        }
      : null,
    tableSpeedLimits_mm_per_min: slow === null || fast === null ? null : [slow, fast],
    people: rows.people.map(({ person, name }) => ({ person, name })),
    pieces: rows.pieces.map((piece) => pieceAtRig(piece, rows, own)),
  };
}

function pieceAtRig(piece: Row<'pieces'>, rows: CampaignRows, own: readonly OwnStandard[]): PieceAtRig {
  const sample = rows.samples.find((one) => one.sample === piece.sample);
  const product = rows.products.find((one) => one.product === sample?.product);
  if (!product) throw new Error(`the record holds piece ${piece.piece} without its product`);
  const specification = specificationOf(product, own);
  const minimum_kN = limitOf(specification, 'breakingForce') ?? product.claimed_breaking_force_kN;
  return {
    piece: piece.piece,
    nominalSize_mm: product.nominal_size_mm,
    links: piece.links,
    minimumForce_kN: minimum_kN,
    expectedForce_kN: minimum_kN === null ? null : expectedOverMinimum * minimum_kN,
    ruleLines: ruleLinesOf(specification, minimum_kN),
    isPulled: rows.pulls.some((pull) => pull.piece === piece.piece),
  };
}

/** A specification that has become unreadable leaves the pieces without limits; bringing in has told its fault already. */
function specificationOf(product: Row<'products'>, own: readonly OwnStandard[]): Specification | null {
  try {
    return specificationFor({
      standard: product.specification,
      size_mm: product.nominal_size_mm,
      ...(product.grade === null ? {} : { grade: product.grade }),
      own,
    });
  } catch (error) {
    if (!isInputError(error)) throw error;
    return null;
  }
}

function limitOf(specification: Specification | null, quantity: 'proofForce' | 'breakingForce'): number | null {
  return specification?.limits.find((limit) => limit.quantity === quantity)?.lower ?? null;
}

function ruleLinesOf(specification: Specification | null, minimum_kN: number | null): RuleLine[] {
  const proof_kN = limitOf(specification, 'proofForce');
  return [
    ...(proof_kN === null ? [] : [{ name: 'proof force', force_kN: proof_kN }]),
    ...(minimum_kN === null ? [] : [{ name: 'minimum breaking force', force_kN: minimum_kN }]),
  ];
}
