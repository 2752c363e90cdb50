import { decisionBounds } from '../verdict/acceptance-limit.ts';
import { conformanceProbability } from '../verdict/conformance-probability.ts';
import { globalRisk } from '../verdict/global-risk.ts';
import { type Calculation, given, optional, positive } from './calculation.ts';
import { chanceOf, chancePct, from0, limitInputs, limitsOf, number, optionalNumber } from './chance-input.ts';

type Inputs = Readonly<Record<string, number>>;

const freedom = optional('degreesOfFreedom', '', 'of the standard uncertainty; the normal where left out');
const uncertaintyOf = (inputs: Inputs) => ({
  standardUncertainty: given(inputs, 'standardUncertainty'),
  degreesOfFreedom: inputs.degreesOfFreedom ?? null,
});

/** Chances and risks of decisions on conformity. */
export const conformityCalculations: readonly Calculation[] = [
  {
    name: 'conformity-probability',
    title: 'Chance that the true value meets its limits',
    formula:
      "P = Φ((upper − y) / u) − Φ((lower − y) / u), with Student's t in place of Φ where degrees of freedom are given",
    inputs: [
      number('measured', 'any', 'measured value'),
      from0('standardUncertainty', 'any', 'its standard uncertainty, in the same unit'),
      freedom,
      ...limitInputs,
    ],
    outputs: [
      { key: 'conforms_pct', unit: '%', meaning: 'chance that the true value lies inside the limits' },
      { key: 'below_pct', unit: '%', meaning: 'chance that it lies below the lower limit' },
      { key: 'above_pct', unit: '%', meaning: 'chance that it lies above the upper limit' },
      {
        key: 'distance',
        unit: '',
        meaning: 'to the nearer limit, in standard uncertainties; none without uncertainty',
      },
    ],
    source: 'JCGM 106:2012 7.1 to 7.4; Student where degrees of freedom are given',
    example: { measured: 33.2, standardUncertainty: 0.3, lowerLimit: 32 },
    compute: (inputs) => {
      const found = conformanceProbability(
        { value: given(inputs, 'measured'), ...uncertaintyOf(inputs) },
        limitsOf(inputs),
      );
      return {
        conforms_pct: found === null ? null : 100 * found.probability,
        below_pct: found === null ? null : 100 * found.below,
        above_pct: found === null ? null : 100 * found.above,
        distance: found?.distance ?? null,
      };
    },
  },
  {
    name: 'acceptance-for-risk',
    title: 'Acceptance limits for a stated risk of a wrong acceptance',
    formula:
      "w = z(1 − risk) · u, Student's t in place of z where degrees of freedom are given, a little more where a second limit is near; accepted from lower limit + w to upper limit − w",
    inputs: [
      positive('standardUncertainty', 'any', 'standard uncertainty of the value'),
      freedom,
      chancePct('risk_pct', 'largest chance that an accepted value does not conform; at most 50'),
      ...limitInputs,
    ],
    outputs: [
      { key: 'guardBand', unit: 'any', meaning: 'guard band, inward from the limits; none where they leave no room' },
      {
        key: 'lowerAcceptance',
        unit: 'any',
        meaning: 'lower limit plus the guard band; none without a lower limit or room',
      },
      {
        key: 'upperAcceptance',
        unit: 'any',
        meaning: 'upper limit less the guard band; none without an upper limit or room',
      },
    ],
    source: 'JCGM 106:2012 8.3.2, 8.3.3; ILAC-G8:09/2019',
    example: { standardUncertainty: 0.3, risk_pct: 2.5, lowerLimit: 32 },
    compute: (inputs) => {
      const risk = Math.min(0.5, chanceOf(inputs, 'risk_pct'));
      const known = { ...uncertaintyOf(inputs), expandedUncertainty: null };
      const found = decisionBounds(limitsOf(inputs), { kind: 'stated risk', risk }, known);
      const guardBand = found?.acceptanceGuard ?? null;
      return {
        guardBand,
        lowerAcceptance: guardBand === null ? null : (found?.acceptance.lower ?? null),
        upperAcceptance: guardBand === null ? null : (found?.acceptance.upper ?? null),
      };
    },
  },
  {
    name: 'global-risk',
    title: "Consumer's and producer's risk over all pieces of a product",
    formula:
      "consumer's risk = ∫ f(x) P(accepted | x) dx outside the limits; producer's risk = ∫ f(x) P(rejected | x) dx inside them",
    inputs: [
      number('productMean', 'any', 'mean of the true values of such pieces'),
      positive('productScatter', 'any', 'their standard deviation'),
      from0('standardUncertainty', 'any', 'standard uncertainty of one measurement'),
      optionalNumber('guardBand', 'any', 'inward from the limits; 0, simple acceptance, where left out'),
      ...limitInputs,
    ],
    outputs: [
      { key: 'consumersRisk_pct', unit: '%', meaning: 'of all pieces: accepted although they do not conform' },
      { key: 'producersRisk_pct', unit: '%', meaning: 'of all pieces: rejected although they conform' },
      { key: 'conforming_pct', unit: '%', meaning: 'of all pieces: conforming' },
      { key: 'accepted_pct', unit: '%', meaning: 'of all pieces: accepted' },
      { key: 'sentence', unit: '', meaning: 'the risks in words' },
    ],
    source: 'JCGM 106:2012 9.5.2, normal prior and measurement',
    example: { productMean: 35, productScatter: 1, standardUncertainty: 0.3, guardBand: 0.6, lowerLimit: 32 },
    compute: (inputs) => {
      const limits = limitsOf(inputs);
      const guard = inputs.guardBand ?? 0;
      const found = globalRisk({
        prior: {
          kind: 'normal',
          mean: given(inputs, 'productMean'),
          standardDeviation: given(inputs, 'productScatter'),
        },
        standardUncertainty: given(inputs, 'standardUncertainty'),
        limits,
        acceptance: {
          lower: limits.lower === null ? null : limits.lower + guard,
          upper: limits.upper === null ? null : limits.upper - guard,
        },
      });
      return {
        consumersRisk_pct: 100 * found.consumersRisk,
        producersRisk_pct: 100 * found.producersRisk,
        conforming_pct: 100 * found.conformingShare,
        accepted_pct: 100 * found.acceptedShare,
        sentence: found.sentence,
      };
    },
  },
];
