import type { BriefFinding, CampaignFinding, ProductFinding } from '@provinghouse/contract';
import type { Effects } from '../effects.ts';
import { judgeCampaign } from '../judge/judge-campaign.ts';
import { list } from '../judge/wording.ts';
import { answersOf } from './answer.ts';
import { conformityPlan } from './conformity.ts';
import { sizesOf } from './difference.ts';
import { assumedCov_pct, assumedMargin_pct, expectationsOf, minimumOf } from './expectation.ts';
import { orderOf } from './order.ts';
import { passesOf } from './passes.ts';
import { asPlanned } from './planned-pieces.ts';
import { rigsOf } from './rig.ts';

/**
 * What was asked of a campaign, and what its pieces can show at all: from the finding alone, without clock or chance, so that the same
 * record gives the same brief. Limits are not repeated: they stand in the finding, by product.
 */
export function briefOf(finding: CampaignFinding): BriefFinding {
  const { campaign } = finding;
  const prepared = asPlanned(finding);
  const expected = prepared.map((product) => ({ product, expectations: expectationsOf(product, finding) }));
  const products = expected.map(({ product, expectations }) => {
    const minimum = minimumOf(product);
    const pieces = product.pieces.length;
    return {
      product: product.product,
      pieces,
      counted: product.breakingForce.n,
      minimum_kN: minimum?.value ?? null,
      plans: minimum === null ? [] : expectations.map((one) => conformityPlan(one, { pieces, minimum })),
      passes: passesOf(product),
    };
  });
  const sizes = sizesOf(prepared);
  const rigs = rigsOf(finding, expected);
  return {
    campaign: campaign.campaign,
    question: campaign.question,
    askedBy: campaign.client,
    laboratory: campaign.laboratory,
    rule: finding.rule,
    ruleSentence: finding.ruleSentence,
    method: campaign.method,
    sampling: campaign.sampling,
    answers: answersOf({ products, sizes, rigs }),
    products,
    sizes,
    rigs,
    order: orderOf(finding),
    assumptions: assumptionsOf(finding.products),
  };
}

function assumptionsOf(products: readonly ProductFinding[]): string[] {
  const open = products.filter((product) => minimumOf(product) === null).map(({ product }) => product);
  return [
    `Before a pull a scatter of ${assumedCov_pct} % is taken (memory: 2 to 5 % is common) and a mean ${assumedMargin_pct} % above the minimum or the claim (for planning only). A product nearer its minimum needs more pieces, or can never be shown.`,
    'Chances hold for normally scattered forces. A product with a rare weld fault does not scatter so: few pieces miss the fault, and no chance given here counts it.',
    'Lines marked "found" plan a further campaign with the mean and scatter of this one. They are no second judgement of the pieces already pulled.',
    'Two scatters are taken alike when products are compared.',
    ...(open.length === 0
      ? []
      : [`No minimum breaking force is known for ${list(open)}: nothing can be planned against it.`]),
  ];
}

/**
 * Judges a campaign of the record and gives its brief.
 * @throws InputError, StoreError as judging does
 */
export async function briefOfCampaign(input: { readonly campaign: string }, effects: Effects): Promise<BriefFinding> {
  return briefOf(await judgeCampaign(input, effects));
}
