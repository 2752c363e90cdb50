import type { CampaignFinding, Expectation, PlanInput, PlannedNumber, ProductFinding } from '@provinghouse/contract';
import { rectangular } from '@provinghouse/core';
import { figure } from '../judge/wording.ts';

/** Scatter of the breaking force taken before any piece is pulled, in per cent of the mean. */
export const assumedCov_pct = 4;
/** How far the mean is taken to lie above the minimum before any piece is pulled, in per cent. */
export const assumedMargin_pct = 10;

const covSource = 'memory: the breaking forces of pieces of one product commonly scatter by 2 to 5 %';
const marginSource = 'taken for planning, not measured and not published';

/** Scatter taken before any pull: of a product, or of the products of a size. */
export const assumedCov: PlannedNumber = {
  value: assumedCov_pct,
  unit: '%',
  sentence: `Before a pull a scatter of ${assumedCov_pct} % of the mean is taken.`,
  method: 'Assumed',
  inputs: [{ name: 'scatter', value: assumedCov_pct, unit: '%', source: covSource }],
};

/** Least breaking force the specification of a product asks for; null where it asks for none. */
export function minimumOf(product: ProductFinding): PlanInput | null {
  const limit = product.specification.limits.find(({ quantity }) => quantity === 'breakingForce');
  if (!limit || limit.lower === null) return null;
  return { name: 'minimum', value: limit.lower, unit: limit.unit, source: `${limit.standard}, ${limit.place}` };
}

/**
 * What the plan expects of a product: before any pull a usual margin and scatter, after two counted pieces also their own. Empty for a
 * product without a minimum.
 */
export function expectationsOf(product: ProductFinding, finding: CampaignFinding): Expectation[] {
  const minimum = minimumOf(product);
  if (minimum === null) return [];
  const assumed = assumedMean(product, minimum);
  const both = [{ basis: 'assumed' as const, mean: assumed, cov: assumedCov }, ...foundOf(product)];
  return both.map(({ basis, mean, cov }) => ({
    basis,
    mean_kN: mean,
    cov_pct: cov,
    guard_kN: guardOf(mean.value ?? 0, finding),
  }));
}

function assumedMean({ claimedBreakingForce_kN: claimed }: ProductFinding, minimum: PlanInput): PlannedNumber {
  const ground = Math.max(minimum.value, claimed ?? 0);
  const what = ground > minimum.value ? 'breaking force claimed' : 'minimum';
  return {
    value: ground * (1 + assumedMargin_pct / 100),
    unit: 'kN',
    sentence: `Before a pull the mean is taken ${assumedMargin_pct} % above the ${what}.`,
    method: 'Assumed: (1 + margin) times the greater of the minimum and the breaking force claimed',
    inputs: [
      minimum,
      ...(claimed === null ? [] : [{ name: 'claimed', value: claimed, unit: 'kN', source: 'the supplier' }]),
      { name: 'margin', value: assumedMargin_pct, unit: '%', source: marginSource },
    ],
  };
}

function foundOf({ breakingForce }: ProductFinding) {
  const { n, mean, sd, cov_pct } = breakingForce;
  if (mean === null || sd === null || cov_pct === null) return [];
  const counted = { name: 'counted pieces', value: n, unit: '', source: 'this campaign' };
  return [
    {
      basis: 'found' as const,
      mean: {
        value: mean,
        unit: 'kN',
        sentence: `The ${n} counted pieces have a mean of ${figure(mean)} kN.`,
        method: 'Mean of the counted pieces',
        inputs: [counted],
      },
      cov: {
        value: cov_pct,
        unit: '%',
        sentence: `The ${n} counted pieces scatter by ${figure(cov_pct, 2)} % of their mean; from so few the scatter itself is rough.`,
        method: 'Standard deviation (n - 1) over mean of the counted pieces',
        inputs: [counted, { name: 'standard deviation', value: sd, unit: 'kN', source: 'this campaign' }],
      },
    },
  ];
}

/** Guard band for what all pieces share: the expanded uncertainty of the rig's indication, by the worst class of the rigs at hand. */
function guardOf(mean_kN: number, { rule, campaign, instruments }: CampaignFinding): PlannedNumber {
  const classes = instruments.flatMap((one) => (one.kind === 'rig' && one.class !== null ? [one.class] : []));
  const none = { value: 0, unit: 'kN', inputs: [] };
  if (rule === 'simple acceptance')
    return { ...none, method: 'None', sentence: 'Simple acceptance sets no guard band: the minimum stands as it is.' };
  if (classes.length === 0)
    return { ...none, method: 'None', sentence: 'No class of a rig is known, so no guard band could be planned for.' };
  const worst = Math.max(...classes);
  const guard = campaign.coverage_factor * rectangular((worst / 100) * mean_kN);
  return {
    value: guard,
    unit: 'kN',
    sentence: `A force must clear the minimum by ${figure(guard, 2)} kN, the expanded uncertainty of a rig of class ${worst} at the mean expected.`,
    method: 'w = U = k (class / 100) mean / sqrt(3), the error of indication rectangular (JCGM 100:2008 4.3.7)',
    inputs: [
      { name: 'k', value: campaign.coverage_factor, unit: '', source: 'the campaign' },
      { name: 'class', value: worst, unit: '%', source: 'worst rig of the campaign; ISO 7500-1 (memory)' },
      { name: 'mean expected', value: mean_kN, unit: 'kN', source: 'the plan' },
    ],
  };
}
