import type { PieceFinding, ProductFinding, ProductJudgement, ProductSummary, Row } from '@provinghouse/contract';
import {
  combine,
  type DecisionRule,
  type Limit,
  type Quantity,
  quantityNames,
  type StrengthSplit,
  standingOf,
  summarise,
  tallyBreaks,
  type Verdict,
} from '@provinghouse/core';
import { type Claim, splitOf } from './claim.ts';
import { campaignRow, type Evidence } from './evidence.ts';
import { inferFrom, longChainOf } from './inference.ts';
import { rigContribution } from './measured-pull.ts';
import { list, plural, summarySentence } from './wording.ts';
import { zincOf } from './zinc.ts';

/** Everything found on one product from the findings on its pieces. */
export function judgeProduct(claim: Claim, pieces: readonly PieceFinding[], evidence: Evidence): ProductFinding {
  const { product, specification } = claim;
  const breakingForce = summaryOf(pieces, {
    what: 'breaking force',
    unit: 'kN',
    value: (piece) => piece.pull?.maximum ?? null,
  });
  const elongation = summaryOf(pieces, {
    what: 'elongation',
    unit: '%',
    value: (piece) => piece.pull?.elongation ?? null,
  });
  const steelStress = summaryOf(pieces, { what: 'mean stress over the gauged steel', unit: 'N/mm2', value: stressOf });
  const judgements = judgementsOf(pieces, specification.limits);
  const mass = massPerMetre(evidence.rows.samples.filter((sample) => sample.product === product.product));
  const minimum = specification.limits.find((limit) => limit.quantity === 'breakingForce')?.lower ?? null;
  const ratio = (by: number | null) => (breakingForce.mean === null || !by ? null : breakingForce.mean / by);
  const overMinimum = ratio(minimum);
  const rule = campaignRow(evidence.rows).decision_rule as DecisionRule; // the table allows these two words only
  return {
    product: product.product,
    supplier: product.supplier,
    description: product.description,
    nominalSize_mm: product.nominal_size_mm,
    specification,
    claimedBreakingForce_kN: product.claimed_breaking_force_kN,
    pricePerMetre: product.price_per_metre,
    currency: product.currency,
    massPerMetre_kg_per_m: mass,
    pieces: pieces.map((piece) => piece.piece),
    judgements,
    standing: standingOf(
      judgements.map((judgement) => judgement.verdict),
      judgements.filter((judgement) => judgement.quantity === 'breakingForce').map((judgement) => judgement.verdict),
    ),
    breakingForce,
    elongation,
    steelStress,
    inference: inferFrom(countedForces(pieces), { minimum_kN: minimum, rule, common_kN: commonOf(pieces) }),
    longChain: longChainOf(pieces, specification),
    split: meanSplit(pieces, claim, breakingForce),
    breaks: tallyBreaks(pieces.map((piece) => piece.breaks)),
    zinc: zincOf(
      evidence.rows,
      pieces.map((piece) => piece.piece),
    ),
    marginOverMinimum_pct: overMinimum === null ? null : 100 * (overMinimum - 1),
    forcePerMass_kN_m_per_kg: ratio(mass),
    forcePerPrice_kN_m: ratio(product.price_per_metre),
  };
}

/** Standard uncertainty that the forces of a product share, by the rig; the greatest where they were pulled on several. */
function commonOf(pieces: readonly PieceFinding[]): number {
  const parts = pieces
    .flatMap(({ pull }) => pull?.maximum?.contributions ?? [])
    .filter((part) => part.name === rigContribution);
  return Math.max(0, ...parts.map((part) => part.standardUncertainty));
}

function countedForces(pieces: readonly PieceFinding[]): number[] {
  return pieces.flatMap(({ pull }) => (pull?.maximum && pull.use === 'value' ? [pull.maximum.value] : []));
}

interface PieceValue {
  readonly value: number;
  readonly isAtLeast: boolean;
}

function stressOf(piece: PieceFinding): PieceValue | null {
  const force = piece.pull?.maximum;
  const area = piece.gauging?.steelArea_mm2;
  return force && area ? { value: (1000 * force.value) / area, isAtLeast: force.isAtLeast } : null;
}

interface Summarised {
  readonly what: string;
  readonly unit: string;
  readonly value: (piece: PieceFinding) => PieceValue | null;
}

/** Only plain values enter the mean: "at least" values and invalid pulls are listed beside it. */
function summaryOf(pieces: readonly PieceFinding[], { what, unit, value }: Summarised): ProductSummary {
  const known = pieces.map((piece) => ({ piece, found: value(piece) }));
  const plain = known.flatMap(({ found }) => (found && !found.isAtLeast ? [found.value] : []));
  const atLeast = known.flatMap(({ piece, found }) =>
    found?.isAtLeast ? [{ piece: piece.piece, value: found.value }] : [],
  );
  const excluded = known.flatMap(({ piece, found }) => (found ? [] : [{ piece: piece.piece, reason: absence(piece) }]));
  const summary = summarise(plain);
  const sentence = summarySentence(summary, { what, unit, atLeast: atLeast.length, excluded: excluded.length });
  return { ...summary, unit, atLeast, excluded, sentence };
}

function absence(piece: PieceFinding): string {
  if (!piece.pull) return 'The piece was not pulled.';
  return piece.pull.use === 'none' ? piece.pull.reasons.join(' ') : 'The pull or the gauging does not show it.';
}

function judgementsOf(pieces: readonly PieceFinding[], limits: readonly Limit[]): ProductJudgement[] {
  const quantities = limits.map((limit) => limit.quantity).filter((quantity) => quantity !== 'workingLoadLimit');
  return [...new Set(quantities)].map((quantity) => judgementOf(quantity, pieces));
}

function judgementOf(quantity: Quantity, pieces: readonly PieceFinding[]): ProductJudgement {
  const found = pieces.flatMap((piece) =>
    piece.judgements
      .filter((judgement) => judgement.limit.quantity === quantity)
      .map((judgement) => ({ piece: piece.piece, verdict: judgement.verdict })),
  );
  const count = (verdict: Verdict) => found.filter((one) => one.verdict === verdict).length;
  const verdict = standingOf(found.map((one) => one.verdict));
  const counts = {
    conforms: count('conforms'),
    'does not conform': count('does not conform'),
    inconclusive: count('inconclusive'),
    'not judged': count('not judged'),
  };
  const deciding =
    verdict === 'conforms' || verdict === 'not judged'
      ? []
      : found.filter((one) => one.verdict === verdict).map((one) => one.piece);
  return {
    quantity,
    verdict,
    counts,
    deciding,
    sentence: sentenceOf({ quantity, verdict, counts, deciding }, found.length),
  };
}

function sentenceOf(judgement: Omit<ProductJudgement, 'sentence'>, pieces: number): string {
  const { counts, deciding, verdict } = judgement;
  const name = quantityNames[judgement.quantity];
  const judged = pieces - counts['not judged'];
  const open =
    counts['not judged'] > 0 && judged > 0
      ? ` ${plural(counts['not judged'], 'piece was', 'pieces were')} not judged.`
      : '';
  if (verdict === 'not judged') return `The ${name} was not judged on any piece.`;
  if (verdict === 'conforms') return `The ${name} conforms on all ${plural(judged, 'piece', 'pieces')} judged.${open}`;
  const word = verdict === 'inconclusive' ? 'is inconclusive' : 'does not conform';
  return `The ${name} ${word} on ${list(deciding)}, ${deciding.length} of ${plural(judged, 'piece', 'pieces')} judged.${open}`;
}

function massPerMetre(samples: readonly Row<'samples'>[]): number | null {
  const weighed = samples.filter((sample) => sample.mass_kg !== null && sample.length_m !== null);
  const mass = weighed.reduce((sum, sample) => sum + (sample.mass_kg ?? 0), 0);
  const length = weighed.reduce((sum, sample) => sum + (sample.length_m ?? 0), 0);
  return length > 0 ? mass / length : null;
}

/**
 * The split of the mean counted piece; null unless every counted piece was gauged. The uncertainty of a single piece serves for the
 * mean too: it is mostly calibration, which all pieces share and no averaging removes.
 */
function meanSplit(pieces: readonly PieceFinding[], claim: Claim, force: ProductSummary): StrengthSplit | null {
  const counted = pieces.filter((piece) => piece.pull?.use === 'value' && piece.gauging?.steelArea_mm2 != null);
  if (force.mean === null || counted.length !== force.n) return null;
  const forces = counted.map((piece) => combine(piece.pull?.maximum?.contributions ?? []));
  const areas = counted.map((piece) => piece.gauging?.steelAreaUncertainty_mm2 ?? null);
  return splitOf(
    claim,
    { value: force.mean, isAtLeast: false, standardUncertainty: meanOfAll(forces) },
    {
      area_mm2: meanOfAll(counted.map((piece) => piece.gauging?.steelArea_mm2 ?? null)),
      uncertainty_mm2: meanOfAll(areas),
    },
  );
}

/** The mean when every value is known, else null. */
function meanOfAll(values: readonly (number | null)[]): number | null {
  const known = values.filter((value) => value !== null);
  return known.length === values.length ? summarise(known).mean : null;
}
