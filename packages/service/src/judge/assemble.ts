import type { CampaignFinding, PieceFinding, ProductFinding, Row } from '@provinghouse/contract';
import { type DecisionRule, specificationFor } from '@provinghouse/core';
import { agreementOf } from './agreement.ts';
import type { Claim } from './claim.ts';
import { compareProducts } from './comparison.ts';
import { doubtsOf } from './doubts.ts';
import { campaignRow, type Evidence } from './evidence.ts';
import { judgePiece } from './piece.ts';
import { judgeProduct } from './product.ts';
import { capital, figure, list } from './wording.ts';

/**
 * The finding of a campaign from its evidence alone: no clock, no random number, no database, so that anybody who holds the data
 * package derives the same figures.
 */
export function assembleFinding(
  evidence: Evidence,
  onPiece: (done: number, total: number) => void = () => undefined,
): CampaignFinding {
  const { rows } = evidence;
  const campaign = campaignRow(rows);
  const claims = rows.products.map((product) => claimOf(product, evidence));
  const rowsOfPieces = claims.flatMap((claim) => piecesOf(claim, evidence).map((row) => ({ row, claim })));
  const pieces = rowsOfPieces.map(({ row, claim }, index) => {
    onPiece(index, rowsOfPieces.length);
    return judgePiece(row, claim, evidence);
  });
  const products = claims.map((claim) =>
    judgeProduct(
      claim,
      pieces.filter((piece) => piece.product === claim.product.product),
      evidence,
    ),
  );
  return {
    campaign,
    rule: campaign.decision_rule as DecisionRule, // the table allows these two words only
    ruleSentence: ruleSentence(campaign),
    people: rows.people,
    instruments: rows.instruments,
    calibrations: rows.calibrations,
    samples: rows.samples,
    products,
    pieces,
    comparisons: compareProducts({ products, pieces, samples: rows.samples }),
    agreement: agreementOf(rows),
    answers: products.map(answer),
    photographs: rows.photographs,
    limitsOfTheFinding: limitsOf(products, pieces),
    doubts: doubtsOf(evidence, products, pieces),
  };
}

function claimOf(product: Row<'products'>, evidence: Evidence): Claim {
  const specification = specificationFor({
    standard: product.specification,
    size_mm: product.nominal_size_mm,
    ...(product.grade === null ? {} : { grade: product.grade }),
    own: evidence.ownStandards,
  });
  return { product, specification };
}

function piecesOf(claim: Claim, { rows }: Evidence): Row<'pieces'>[] {
  const samples = new Set(
    rows.samples.filter((sample) => sample.product === claim.product.product).map((sample) => sample.sample),
  );
  return rows.pieces.filter((piece) => samples.has(piece.sample));
}

function ruleSentence(campaign: Row<'campaign'>): string {
  const k = figure(campaign.coverage_factor, 2);
  return campaign.decision_rule === 'simple acceptance'
    ? `Simple acceptance: a value conforms when it lies inside its limits; near a limit the risk of a wrong verdict reaches one in two (JCGM 106:2012 8.2).`
    : `Guarded acceptance: a value conforms when it clears its limit by its expanded uncertainty U (k = ${k}, guard band w = U), does not conform when it fails the limit by U, and is inconclusive between (JCGM 106:2012 8.3; ILAC-G8:09/2019 4.2).`;
}

function answer(product: ProductFinding): string {
  const force = product.judgements.find((judgement) => judgement.quantity === 'breakingForce');
  const others = product.judgements.filter(
    (judgement) => judgement.quantity !== 'breakingForce' && judgement.deciding.length > 0,
  );
  const mean =
    product.breakingForce.mean === null ? '' : ` Mean breaking force ${figure(product.breakingForce.mean)} kN.`;
  const split = product.split ? ` ${capital(product.split.sentence)}` : '';
  return [
    `${product.product}: ${force?.sentence ?? 'The specification sets no breaking force.'}${mean}`,
    ...others.map((judgement) => judgement.sentence),
  ]
    .join(' ')
    .concat(split);
}

function limitsOf(products: readonly ProductFinding[], pieces: readonly PieceFinding[]): string[] {
  const fewest = Math.min(...products.map((product) => product.breakingForce.n));
  const links = [...new Set(pieces.map((piece) => piece.links))].sort((a, b) => a - b);
  return [
    'The results hold for the pieces tested, as received; they say nothing of other lots, other purchases or the supplier as a whole.',
    `The smallest number of counted pieces of a product is ${Number.isFinite(fewest) ? fewest : 0}: means and scatters from so few are rough.`,
    `Pieces of ${list(links.map(String))} links were pulled. A longer chain holds more links, its weakest is likely to be weaker than these; what the part on long chain says of it follows from these few pieces and its model alone.`,
    'A break beside or in the weld above the minimum force is reported, and is not by itself a nonconformity.',
    'Flaking of zinc on a link pulled to parting is a described behaviour; no adherence requirement was judged.',
    'Limits of the rulebook come from public pages, formulas and memory as marked, not from the text of the standards: check them against bought copies before publication.',
  ];
}
