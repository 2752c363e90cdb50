import { InputError } from '../errors.ts';
import { type ConformityQuestion, chanceAllPass, piecesToShowConformity } from '../plan/conformity-plan.ts';
import { detectableDifference, piecesToTellApart, powerToTellApart } from '../plan/difference-plan.ts';
import { piecesToBoundFraction, piecesToTellSharesApart } from '../plan/fraction-plan.ts';
import { checkMachine } from '../plan/machine-check.ts';
import { forceClasses } from '../uncertainty/instrument-class.ts';
import { type Calculation, type CalculationInput, given, optional, positive } from './calculation.ts';
import { chanceOf, chancePct, countOf, from0 } from './chance-input.ts';

type Inputs = Readonly<Record<string, number>>;

const expected: readonly CalculationInput[] = [
  positive('expectedMean_kN', 'kN', 'mean breaking force expected'),
  from0('scatter_pct', '%', 'scatter expected, standard deviation over mean'),
  positive('limit_kN', 'kN', 'least breaking force of the specification'),
  optional('guardBand_kN', 'kN', 'inward from the limit; 0 where left out'),
];

const power = {
  ...chancePct('power_pct', 'chance of showing it if it is as expected; 90 where left out'),
  required: false,
};
const confidence = chancePct('confidence_pct', 'confidence of the statement');

const questionOf = (inputs: Inputs, of: ConformityQuestion['of']): ConformityQuestion => ({
  expectedMean: given(inputs, 'expectedMean_kN'),
  cov_pct: given(inputs, 'scatter_pct'),
  limit: given(inputs, 'limit_kN'),
  side: 'lower',
  confidence: chanceOf(inputs, 'confidence_pct'),
  guard: inputs.guardBand_kN ?? 0,
  of,
});

function conformity(inputs: Inputs, of: ConformityQuestion['of']) {
  const {
    pieces,
    power: reached,
    sentence,
  } = piecesToShowConformity(questionOf(inputs, of), chanceOf(inputs, 'power_pct', 90));
  return { pieces, power_pct: reached === null ? null : 100 * reached, sentence };
}

const planOutputs = [
  { key: 'pieces', unit: '', meaning: 'pieces needed; none where no number is enough' },
  { key: 'power_pct', unit: '%', meaning: 'chance that this number shows it; none without scatter' },
  { key: 'sentence', unit: '', meaning: 'the plan in words' },
];

const scatters: readonly CalculationInput[] = [
  positive('scatter_kN', 'kN', 'standard deviation of the pieces of the first product'),
  optional('secondScatter_kN', 'kN', 'of the second; as the first where left out'),
  { ...chancePct('alpha_pct', 'chance of telling equal products apart; 5 where left out'), required: false },
];

const comparison = (inputs: Inputs) => {
  const first = given(inputs, 'scatter_kN');
  return {
    standardDeviations: [first, inputs.secondScatter_kN ?? first],
    alpha: chanceOf(inputs, 'alpha_pct', 5),
  } as const;
};

const noncentral = 'two-sample t test, noncentral t; Welch degrees of freedom for unequal scatters';

/** How many pieces to pull, and on which rig. */
export const planningCalculations: readonly Calculation[] = [
  {
    name: 'pieces-for-share',
    title: 'Pieces needed to show that a share of all pieces holds the limit',
    formula:
      'least n with P(T ≥ k √n) ≥ power: T noncentral t with n − 1 degrees of freedom and δ = √n (mean − limit − guard band) / s, k the one-sided tolerance factor',
    doubts: () => ['The scatter is expected, not known: a wrong guess changes the number.'],
    inputs: [...expected, chancePct('share_pct', 'share of all pieces that must hold'), confidence, power],
    outputs: planOutputs,
    source: 'Power of the one-sided normal tolerance bound, noncentral t (factors of ISO 16269-6)',
    example: { expectedMean_kN: 35, scatter_pct: 3, limit_kN: 32, share_pct: 95, confidence_pct: 90 },
    compute: (inputs) => conformity(inputs, { share: chanceOf(inputs, 'share_pct') }),
  },
  {
    name: 'pieces-for-mean',
    title: 'Pieces needed to show that the mean of a product holds the limit',
    formula:
      'least n with P(T ≥ t(C, n − 1)) ≥ power: T noncentral t with n − 1 degrees of freedom and δ = √n (mean − limit − guard band) / s',
    doubts: () => ['The scatter is expected, not known: a wrong guess changes the number.'],
    inputs: [...expected, confidence, power],
    outputs: planOutputs,
    source: 'Power of the one-sided t test, noncentral t',
    example: { expectedMean_kN: 35, scatter_pct: 3, limit_kN: 32, confidence_pct: 95 },
    compute: (inputs) => conformity(inputs, 'mean'),
  },
  {
    name: 'chance-all-pass',
    title: 'Chance that every piece of a number passes',
    formula: 'one piece: Φ((mean − limit − guard band) / s); all n: the n-th power of it',
    doubts: () => ['The pieces are taken as normal and independent.'],
    inputs: [...expected, positive('pieces', '', 'number of pieces')],
    outputs: [
      { key: 'single_pct', unit: '%', meaning: 'chance that one piece passes' },
      { key: 'all_pct', unit: '%', meaning: 'chance that all pass' },
      { key: 'sentence', unit: '', meaning: 'the chances in words' },
    ],
    source: 'Normal distribution of the pieces, independent',
    example: { expectedMean_kN: 35, scatter_pct: 3, limit_kN: 32, guardBand_kN: 0.6, pieces: 5 },
    compute: (inputs) => {
      const { side, ...question } = questionOf({ ...inputs, confidence_pct: 95 }, 'mean');
      const { single, all, sentence } = chanceAllPass(countOf(inputs, 'pieces', 1), { ...question, side });
      return { single_pct: 100 * single, all_pct: 100 * all, sentence };
    },
  },
  {
    name: 'pieces-for-difference',
    title: 'Pieces of each product needed to tell two products apart',
    formula: 'least n with P(T ≥ t(1 − α/2, ν)) ≥ power: T noncentral t with δ = difference / √(s₁²/n + s₂²/n)',
    inputs: [positive('difference_kN', 'kN', 'difference of the means that must not be missed'), ...scatters, power],
    outputs: planOutputs,
    source: noncentral,
    example: { difference_kN: 2, scatter_kN: 1 },
    compute: (inputs) => {
      const question = { ...comparison(inputs), difference: given(inputs, 'difference_kN') };
      const { pieces, power: reached, sentence } = piecesToTellApart(question, chanceOf(inputs, 'power_pct', 90));
      return { pieces, power_pct: reached === null ? null : 100 * reached, sentence };
    },
  },
  {
    name: 'difference-power',
    title: 'Chance that a number of pieces tells two products apart',
    formula: 'P(T ≥ t(1 − α/2, ν)): T noncentral t with δ = difference / √(s₁²/n + s₂²/n)',
    inputs: [
      positive('difference_kN', 'kN', 'difference of the means'),
      ...scatters,
      positive('pieces', '', 'pieces of each product, from 2 on'),
    ],
    outputs: [
      { key: 'power_pct', unit: '%', meaning: 'chance of telling them apart' },
      { key: 'detectable_kN', unit: 'kN', meaning: 'difference that this number shows with a chance of 90 %' },
    ],
    source: noncentral,
    example: { difference_kN: 2, scatter_kN: 1, pieces: 5 },
    compute: (inputs) => {
      const pieces = countOf(inputs, 'pieces', 2);
      const found = powerToTellApart(pieces, { ...comparison(inputs), difference: given(inputs, 'difference_kN') });
      return {
        power_pct: found === null ? null : 100 * found,
        detectable_kN: detectableDifference(pieces, comparison(inputs)),
      };
    },
  },
  {
    name: 'pieces-for-fraction',
    title: 'Pieces to proof test so that a share of all pieces is known to hold',
    formula:
      'least n with P(at most c of n fail) ≤ 1 − C, each failing with chance 1 − R; without failures n = ln(1 − C) / ln R',
    inputs: [
      chancePct('reliability_pct', 'share of all pieces that must hold'),
      confidence,
      {
        key: 'allowedFailures',
        unit: '',
        meaning: 'failures forgiven; 0 where left out',
        required: false,
        minimum: 0,
        mayBeMinimum: true,
      },
    ],
    outputs: [
      { key: 'pieces', unit: '', meaning: 'pieces to be tested; none above 100000' },
      { key: 'reached_pct', unit: '%', meaning: 'confidence that this number gives' },
      { key: 'sentence', unit: '', meaning: 'the plan in words' },
    ],
    source: 'Success run n = ln(1 - C) / ln R; with failures the binomial distribution (Clopper and Pearson 1934)',
    example: { reliability_pct: 90, confidence_pct: 95 },
    compute: (inputs) => {
      const found = piecesToBoundFraction({
        reliability: chanceOf(inputs, 'reliability_pct'),
        confidence: chanceOf(inputs, 'confidence_pct'),
        allowedFailures: inputs.allowedFailures === undefined ? 0 : countOf(inputs, 'allowedFailures', 0),
      });
      return {
        pieces: found.pieces,
        reached_pct: found.confidence === null ? null : 100 * found.confidence,
        sentence: found.sentence,
      };
    },
  },
  {
    name: 'pieces-for-shares',
    title: 'Pieces of each product needed to tell two failing shares apart',
    formula:
      'n = ((z(1 − α/2) √(2 p (1 − p)) + z(power) √(p₁ (1 − p₁) + p₂ (1 − p₂))) / (p₁ − p₂))², with p the mean of the two shares',
    doubts: () => ['Normal approximation: rough below ten expected failures.'],
    inputs: [
      chancePct('first_pct', 'failing share of the first product'),
      chancePct('second_pct', 'failing share of the second'),
      { ...chancePct('alpha_pct', 'chance of telling equal shares apart; 5 where left out'), required: false },
      power,
    ],
    outputs: [{ key: 'pieces', unit: '', meaning: 'pieces of each; none for equal shares' }],
    source: 'Two-sample test of proportions, normal approximation; rough below ten expected failures',
    example: { first_pct: 50, second_pct: 75 },
    compute: (inputs) => ({
      pieces:
        piecesToTellSharesApart(
          {
            first: chanceOf(inputs, 'first_pct'),
            second: chanceOf(inputs, 'second_pct'),
            alpha: chanceOf(inputs, 'alpha_pct', 5),
          },
          chanceOf(inputs, 'power_pct', 90),
        )?.pieces ?? null,
    }),
  },
  {
    name: 'rig-check',
    title: 'Whether a rig suits the forces expected',
    formula:
      'least force ≥ beginning of the verified range; margin · greatest force ≤ its end; step / least force within the share that the class allows',
    inputs: [
      positive('least_kN', 'kN', 'least force expected'),
      positive('greatest_kN', 'kN', 'greatest force expected'),
      optional('margin', '', 'factor by which a piece may surpass it; 1.25 where left out (common practice)'),
      optional('rangeMinimum_kN', 'kN', 'beginning of the verified range'),
      optional('rangeMaximum_kN', 'kN', 'end of the verified range'),
      {
        key: 'class',
        unit: '',
        meaning: 'class of ISO 7500-1',
        required: false,
        choices: forceClasses.map((one) => one.class),
      },
      optional('resolution_kN', 'kN', 'smallest step'),
    ],
    outputs: [
      { key: 'suits', unit: '', meaning: 'yes, no, or not known' },
      { key: 'sentence', unit: '', meaning: 'what fails or is not known' },
    ],
    source:
      'Verified range of the certificate; classes and resolution of ISO 7500-1 Table 2, memory; class 1 common practice',
    example: {
      least_kN: 25,
      greatest_kN: 70,
      rangeMinimum_kN: 10,
      rangeMaximum_kN: 100,
      class: 1,
      resolution_kN: 0.02,
    },
    compute: rigCheck,
  },
];

function rigCheck(inputs: Inputs) {
  const [least_kN, greatest_kN, margin = 1.25] = [
    given(inputs, 'least_kN'),
    given(inputs, 'greatest_kN'),
    inputs.margin,
  ];
  if (least_kN > greatest_kN)
    throw new InputError('reckon/force-order', `least_kN ${least_kN} lies above greatest_kN ${greatest_kN}.`);
  if (margin < 1) throw new InputError('reckon/margin', `margin must be at least 1, not ${margin}.`, { margin });
  const found = checkMachine(
    {
      instrument: 'The rig',
      rangeMinimum_kN: inputs.rangeMinimum_kN ?? null,
      rangeMaximum_kN: inputs.rangeMaximum_kN ?? null,
      class: inputs.class ?? null,
      resolution_kN: inputs.resolution_kN ?? null,
    },
    { least_kN, greatest_kN, margin },
  );
  return { suits: found.isSuited === null ? 'not known' : found.isSuited ? 'yes' : 'no', sentence: found.sentence };
}
