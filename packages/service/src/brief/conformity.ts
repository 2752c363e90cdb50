import type { Expectation, PlanInput, PlannedNumber, ProductPlan, ShowingPlan } from '@provinghouse/contract';
import {
  type ConformityQuestion,
  chanceAllPass,
  piecesToShowConformity,
  powerToShowConformity,
} from '@provinghouse/core';
import { figure } from '../judge/wording.ts';
import { chanceWords } from './chance-words.ts';
import { meanThatShows } from './needed-mean.ts';
import { piecesSource } from './planned-pieces.ts';

const confidence = 0.95;
const share = 0.95;

interface Prepared {
  readonly pieces: number;
  readonly minimum: PlanInput;
}

/** What the pieces prepared can show of the breaking force of a product that is as expected. */
export function conformityPlan(expectation: Expectation, prepared: Prepared): ProductPlan {
  return {
    ...expectation,
    mean: showing(expectation, { ...prepared, of: 'mean' }),
    share: showing(expectation, { ...prepared, of: { share } }),
    allPass: allPass(expectation, prepared),
  };
}

interface Statement extends Prepared {
  readonly of: ConformityQuestion['of'];
}

function showing(expectation: Expectation, statement: Statement): ShowingPlan {
  const question = questionOf(expectation, statement);
  const inputs = inputsOf(expectation, statement);
  return {
    chance: chance(question, statement, inputs),
    piecesFor80: pieces(question, 0.8, inputs),
    piecesFor90: pieces(question, 0.9, inputs),
    neededMean_kN: neededMean(question, statement, inputs),
  };
}

function questionOf({ mean_kN, cov_pct, guard_kN }: Expectation, { minimum, of }: Statement): ConformityQuestion {
  return {
    expectedMean: mean_kN.value ?? 0,
    cov_pct: cov_pct.value ?? 0,
    limit: minimum.value,
    side: 'lower',
    confidence,
    guard: guard_kN.value ?? 0,
    of,
  };
}

function inputsOf(expectation: Expectation, { pieces: n, minimum, of }: Statement): PlanInput[] {
  const { basis, mean_kN, cov_pct, guard_kN } = expectation;
  const source = basis === 'found' ? 'found on the counted pieces' : 'assumed';
  return [
    { name: 'pieces', value: n, unit: '', source: piecesSource },
    { name: 'mean expected', value: mean_kN.value ?? 0, unit: 'kN', source },
    { name: 'scatter', value: cov_pct.value ?? 0, unit: '%', source },
    minimum,
    { name: 'guard band', value: guard_kN.value ?? 0, unit: 'kN', source: guard_kN.method },
    { name: 'confidence', value: confidence, unit: 'share', source: 'common practice' },
    ...(of === 'mean'
      ? []
      : [{ name: 'share above the minimum', value: share, unit: 'share', source: 'common practice' }]),
  ];
}

/** Where the record leaves no formula: too few pieces, or no scatter. */
function reasonFor(question: ConformityQuestion, n: number): string | null {
  if (n < 2) return `${n === 0 ? 'No piece is' : 'One piece is'} prepared: a bound needs the scatter of two at least.`;
  return question.cov_pct === 0
    ? 'The counted pieces show no scatter at all: no chance can be worked out from that.'
    : null;
}

const methodOf = (question: ConformityQuestion) =>
  question.of === 'mean'
    ? 'Power of the one-sided t test, noncentral t'
    : 'Power of the one-sided normal tolerance bound, noncentral t (ISO 16269-6 factors)';

const whatOf = ({ of }: ConformityQuestion) =>
  of === 'mean' ? 'the mean lies above the minimum' : `${100 * share} % of all such pieces lie above the minimum`;

function chance(question: ConformityQuestion, { pieces: n }: Statement, inputs: readonly PlanInput[]): PlannedNumber {
  const open = { unit: 'share', method: methodOf(question), inputs };
  const reason = reasonFor(question, n);
  const value = reason === null ? powerToShowConformity(n, question) : null;
  if (value === null) return { ...open, value, sentence: reason ?? 'No chance can be worked out.' };
  return {
    ...open,
    value,
    sentence: `If the product is as expected (mean ${figure(question.expectedMean)} kN, scatter ${figure(question.cov_pct, 2)} %), ${n} pieces show with a chance of ${chanceWords(value)} that ${whatOf(question)}, at ${100 * confidence} % confidence.`,
  };
}

function pieces(question: ConformityQuestion, power: number, inputs: readonly PlanInput[]): PlannedNumber {
  const open = {
    unit: '',
    inputs: [
      ...inputs.filter(({ name }) => name !== 'pieces'),
      { name: 'chance asked', value: power, unit: 'share', source: 'common practice' },
    ],
  };
  const reason = reasonFor(question, 2);
  if (reason !== null) return { ...open, value: null, method: methodOf(question), sentence: reason };
  const plan = piecesToShowConformity(question, power);
  return { ...open, value: plan.pieces, method: plan.method, sentence: plan.sentence };
}

function neededMean(
  question: ConformityQuestion,
  { pieces: n, minimum }: Statement,
  inputs: readonly PlanInput[],
): PlannedNumber {
  const open = {
    unit: 'kN',
    method: `${methodOf(question)}, solved for the mean by halving`,
    inputs: inputs.filter(({ name }) => name !== 'mean expected'),
  };
  const reason = reasonFor(question, n);
  if (reason !== null) return { ...open, value: null, sentence: reason };
  const value = meanThatShows(n, question, 0.9);
  if (value === null)
    return {
      ...open,
      value,
      sentence: `With this scatter ${n} pieces cannot show with a chance of 90 % that ${whatOf(question)}, however strong the product is.`,
    };
  const above = figure(100 * (value / minimum.value - 1), 2);
  return {
    ...open,
    value,
    sentence: `For ${n} pieces to show with a chance of 90 % that ${whatOf(question)}, the product must have a mean of ${figure(value)} kN, ${above} % above it.`,
  };
}

function allPass(expectation: Expectation, prepared: Prepared): PlannedNumber {
  const { pieces: n } = prepared;
  const open = {
    unit: 'share',
    method:
      'Normal distribution: the chance of one piece to clear the minimum by the guard band, to the power of the pieces',
    inputs: inputsOf(expectation, { ...prepared, of: 'mean' }).filter(({ name }) => name !== 'confidence'),
  };
  if (n < 1) return { ...open, value: null, sentence: 'No piece is prepared.' };
  const { single, all } = chanceAllPass(n, questionOf(expectation, { ...prepared, of: 'mean' }));
  return {
    ...open,
    value: all,
    sentence: `A piece as expected clears the minimum by the guard band with a chance of ${chanceWords(single)}, all ${n} of them with ${chanceWords(all)}. More pieces make it smaller.`,
  };
}
