import type {
  DifferenceBrief,
  PlanBasis,
  PlanInput,
  PlannedNumber,
  ProductFinding,
  SizeBrief,
} from '@provinghouse/contract';
import { detectableDifference, piecesToTellApart, powerAmongProducts } from '@provinghouse/core';
import { seed } from '../judge/inference.ts';
import { figure } from '../judge/wording.ts';
import { chanceWords } from './chance-words.ts';
import { assumedCov } from './expectation.ts';

/** Difference of two means that a buyer would care about, in per cent. */
const difference_pct = 5;
const alpha = 0.05;
const trials = 500;
const practice = 'common practice';

/** How well the products of each size can be told apart. */
export function sizesOf(products: readonly ProductFinding[]): SizeBrief[] {
  const sizes = [...Map.groupBy(products, ({ nominalSize_mm }) => nominalSize_mm)].sort(([a], [b]) => a - b);
  return sizes.map(([nominalSize_mm, group]) => ({
    nominalSize_mm,
    products: group.map(({ product }) => product),
    differences: group.length < 2 ? [] : differencesOf(group),
  }));
}

function differencesOf(group: readonly ProductFinding[]): DifferenceBrief[] {
  const found = pooledCov(group);
  const pieces = Math.min(...group.map((product) => product.pieces.length));
  const question = { pieces, products: group.length };
  return [
    differenceBrief({ ...question, basis: 'assumed', cov: assumedCov }),
    ...(found === null ? [] : [differenceBrief({ ...question, basis: 'found', cov: found })]),
  ];
}

/** Root mean square of the scatters found, each with the weight of its degrees of freedom; null where no product has two counted pieces. */
function pooledCov(group: readonly ProductFinding[]): PlannedNumber | null {
  const scatters = group.flatMap(({ product, breakingForce: { n, cov_pct } }) =>
    cov_pct === null ? [] : [{ product, freedom: n - 1, cov_pct }],
  );
  const freedom = scatters.reduce((sum, one) => sum + one.freedom, 0);
  if (freedom === 0) return null;
  const value = Math.sqrt(scatters.reduce((sum, one) => sum + one.freedom * one.cov_pct ** 2, 0) / freedom);
  return {
    value,
    unit: '%',
    sentence: `Pooled over the products, the counted pieces scatter by ${figure(value, 2)} % of their means.`,
    method: 'Root mean square of the coefficients of variation, weighted with n - 1',
    inputs: scatters.map(({ product, cov_pct, freedom: degrees }) => ({
      name: `scatter of ${product}`,
      value: cov_pct,
      unit: '%',
      source: `${degrees + 1} counted pieces`,
    })),
  };
}

interface Question {
  readonly basis: PlanBasis;
  readonly cov: PlannedNumber;
  readonly pieces: number;
  readonly products: number;
}

function differenceBrief(question: Question): DifferenceBrief {
  return {
    basis: question.basis,
    pieces: question.pieces,
    cov_pct: question.cov,
    difference80_pct: toldApart(question, 0.8),
    difference90_pct: toldApart(question, 0.9),
    piecesFor80: piecesFor(question, 0.8),
    piecesFor90: piecesFor(question, 0.9),
    amongAll: question.products > 2 ? amongAll(question) : null,
  };
}

const method = 'Power of the two-sample t test, both scatters alike, noncentral t';

function inputsOf({ cov, basis }: Question): PlanInput[] {
  return [
    { name: 'scatter', value: cov.value ?? 0, unit: '%', source: basis === 'found' ? 'found, pooled' : 'assumed' },
    { name: 'chance of telling equal products apart', value: alpha, unit: 'share', source: practice },
  ];
}

function piecesInput({ pieces }: Question): PlanInput {
  return { name: 'pieces of each', value: pieces, unit: '', source: 'the product with the fewest' };
}

function tooLittle({ pieces, cov }: Question): string | null {
  if (pieces < 2) return 'With less than two pieces of a product no difference can be told from scatter.';
  return cov.value === 0 ? 'The counted pieces show no scatter at all: nothing can be worked out from that.' : null;
}

function toldApart(question: Question, power: number): PlannedNumber {
  const open = {
    unit: '%',
    method: `${method}, solved for the difference`,
    inputs: [
      piecesInput(question),
      ...inputsOf(question),
      { name: 'chance asked', value: power, unit: 'share', source: practice },
    ],
  };
  const cov = question.cov.value ?? 0;
  const reason = tooLittle(question);
  const value =
    reason === null ? detectableDifference(question.pieces, { standardDeviations: [cov, cov], alpha }, power) : null;
  if (value === null) return { ...open, value, sentence: reason ?? 'No such difference was found.' };
  return {
    ...open,
    value,
    sentence: `With ${question.pieces} pieces of each and a scatter of ${figure(cov, 2)} %, two products whose means differ by ${figure(value, 2)} % are told apart with a chance of ${chanceWords(power)}; a smaller difference is more likely missed.`,
  };
}

function piecesFor(question: Question, power: number): PlannedNumber {
  const cov = question.cov.value ?? 0;
  const open = {
    unit: '',
    method,
    inputs: [
      { name: 'difference of the means', value: difference_pct, unit: '%', source: 'asked' },
      ...inputsOf(question),
      { name: 'chance asked', value: power, unit: 'share', source: practice },
    ],
  };
  if (cov === 0) return { ...open, value: null, sentence: tooLittle({ ...question, pieces: 2 }) ?? '' };
  const plan = piecesToTellApart({ difference: difference_pct, standardDeviations: [cov, cov], alpha }, power);
  return {
    ...open,
    value: plan.pieces,
    sentence:
      plan.pieces === null
        ? plan.sentence
        : `To tell two products whose means differ by ${difference_pct} % apart with a chance of ${chanceWords(power)}, ${plan.pieces} pieces of each are needed.`,
  };
}

function amongAll(question: Question): PlannedNumber {
  const { products, pieces, cov } = question;
  const open = {
    unit: 'share',
    method: `Simulation of ${trials} campaigns (seed ${seed}), pairs by Games and Howell`,
    inputs: [
      piecesInput(question),
      { name: 'products', value: products, unit: '', source: 'this campaign' },
      { name: 'difference of the means', value: difference_pct, unit: '%', source: 'asked' },
      ...inputsOf(question),
    ],
  };
  const reason = tooLittle(question);
  if (reason !== null) return { ...open, value: null, sentence: reason };
  const { power, lower, upper } = powerAmongProducts({
    products,
    difference: difference_pct,
    standardDeviation: cov.value ?? 0,
    piecesEach: pieces,
    alpha,
    seed,
    trials,
  });
  return {
    ...open,
    value: power,
    sentence: `When all ${products} products of the size are compared at once, two whose means differ by ${difference_pct} % are told apart with a chance of about ${chanceWords(power)} (${trials} trials leave ${chanceWords(lower)} to ${chanceWords(upper)}): each further product asks more of every pair.`,
  };
}
