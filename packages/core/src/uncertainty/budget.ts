import type { Contribution } from '../verdict/verdict.ts';
import { budgetSentence } from './budget-sentence.ts';
import { type Correlation, correlationBetween } from './correlation.ts';
import { type CoverageWish, coverage } from './coverage.ts';
import type { InputDistributionKind } from './input-distribution.ts';

/** One input of a budget. */
export interface BudgetTerm {
  readonly name: string;
  /** Value and unit of the input; absent where only its effect matters. */
  readonly estimate?: number | null;
  readonly unit?: string;
  /** In the unit of the input, not below 0. */
  readonly standardUncertainty: number;
  /** Change of the result per change of the input. */
  readonly sensitivity: number;
  /** Infinity where the standard uncertainty is taken as exact. */
  readonly degreesOfFreedom: number;
  readonly distribution: InputDistributionKind;
  /** Certificate, standard and clause, readings, or `memory`. */
  readonly source: string;
}

/** One line of the finished table. */
export interface BudgetLine extends Omit<BudgetTerm, 'degreesOfFreedom' | 'estimate' | 'unit'> {
  readonly estimate: number | null;
  readonly unit: string;
  /** Null: taken as exact. */
  readonly degreesOfFreedom: number | null;
  /** |sensitivity| times standard uncertainty, in the unit of the result. */
  readonly contribution: number;
  /** Of the variance of the result in per cent; null where correlation mixes the lines or there is no variance. */
  readonly share_pct: number | null;
}

export interface Budget {
  /** What it is the budget of. */
  readonly quantity: string;
  readonly unit: string;
  readonly value: number | null;
  readonly lines: readonly BudgetLine[];
  /** Null where nothing is known, or a part without which the figure would flatter is missing. */
  readonly combinedStandardUncertainty: number | null;
  /** Welch-Satterthwaite; null where all inputs are exact (the normal distribution serves) or nothing is known. */
  readonly effectiveDegreesOfFreedom: number | null;
  readonly coverageFactor: number | null;
  readonly coverageProbability: number | null;
  readonly expandedUncertainty: number | null;
  /** Parts that are not known and keep the uncertainty from being stated. */
  readonly unknown: readonly string[];
  readonly doubts: readonly string[];
  readonly method: string;
  readonly sentence: string;
}

export interface BudgetInput {
  readonly quantity?: string;
  readonly unit?: string;
  readonly value?: number | null;
  readonly terms: readonly BudgetTerm[];
  /** Pairs of terms that share a cause, by name. */
  readonly correlation?: readonly Correlation[];
  /** 95 % unless said otherwise. */
  readonly coverage?: CoverageWish;
  readonly unknown?: readonly string[];
  readonly doubts?: readonly string[];
}

const method =
  'Law of propagation of uncertainty (JCGM 100:2008 5.1, 5.2), Welch-Satterthwaite and Student coverage factor (JCGM 100:2008 G.4, G.6.4)';

/**
 * Uncertainty budget: contributions, combined standard uncertainty, effective degrees of freedom, coverage factor, expanded uncertainty.
 *
 * With correlation, Welch-Satterthwaite does not hold: the least degrees of freedom of the terms that matter are taken, which is
 * cautious, and a doubt says so. Terms that contribute nothing stay in the table. No terms, or something `unknown`: the uncertainty is
 * null and the sentence says why.
 *
 * @throws RangeError for a negative or non-finite uncertainty, a sensitivity that is not finite, degrees of freedom not above 0, a
 *   correlation outside -1 to 1 or of an unknown name
 */
export function budget(input: BudgetInput): Budget {
  for (const term of input.terms) requireSound(term);
  const { terms, correlation = [], unknown = [] } = input;
  const variance = varianceOf(terms, correlation);
  const isStated = terms.length > 0 && unknown.length === 0;
  const combined = isStated ? Math.sqrt(variance) : null;
  const freedom = effectiveFreedom(terms, variance, correlation);
  const covered = combined === null ? null : coverage(input.coverage ?? { probability: 0.95 }, freedom);
  const figures = {
    quantity: input.quantity ?? 'result',
    unit: input.unit ?? '',
    value: input.value ?? null,
    lines: terms.map((term) => lineOf(term, correlation.length > 0 ? null : variance)),
    combinedStandardUncertainty: combined,
    effectiveDegreesOfFreedom: isStated && freedom !== Infinity ? freedom : null,
    coverageFactor: covered?.factor ?? null,
    coverageProbability: covered?.probability ?? null,
    expandedUncertainty: covered === null || combined === null ? null : covered.factor * combined,
    unknown,
    doubts: [...(input.doubts ?? []), ...doubtsOf(input, { freedom, combined, probability: covered?.probability })],
    method,
  };
  return { ...figures, sentence: budgetSentence(figures) };
}

function lineOf(term: BudgetTerm, variance: number | null): BudgetLine {
  const contribution = Math.abs(term.sensitivity) * term.standardUncertainty;
  return {
    ...term,
    estimate: term.estimate ?? null,
    unit: term.unit ?? '',
    degreesOfFreedom: term.degreesOfFreedom === Infinity ? null : term.degreesOfFreedom,
    contribution,
    share_pct: variance ? (100 * contribution ** 2) / variance : null,
  };
}

/** Sum over all pairs of c_i u_i c_j u_j r_ij (JCGM 100:2008 equation 16). */
function varianceOf(terms: readonly BudgetTerm[], correlation: readonly Correlation[]): number {
  const parts = terms.map((term) => term.sensitivity * term.standardUncertainty);
  if (correlation.length === 0) return parts.reduce((sum, part) => sum + part * part, 0);
  const between = correlationBetween(
    terms.map(({ name }) => name),
    correlation,
  );
  let variance = 0;
  for (const [i, row] of between.entries()) {
    for (const [j, r] of row.entries()) variance += (parts[i] ?? 0) * (parts[j] ?? 0) * r;
  }
  // Perfect correlation of opposite sign cancels to a rounding error below zero.
  return Math.max(0, variance);
}

/** u^4 over the sum of u_i^4 / nu_i (JCGM 100:2008 G.2b); Infinity where no term limits it. */
function effectiveFreedom(terms: readonly BudgetTerm[], variance: number, correlation: readonly Correlation[]): number {
  const limiting = terms.filter(
    (term) => term.degreesOfFreedom !== Infinity && term.sensitivity * term.standardUncertainty !== 0,
  );
  if (limiting.length === 0) return Infinity;
  if (correlation.length > 0 || variance === 0) return Math.min(...limiting.map((term) => term.degreesOfFreedom));
  const sum = limiting.reduce(
    (total, term) =>
      total + ((term.sensitivity * term.standardUncertainty) ** 2 / variance) ** 2 / term.degreesOfFreedom,
    0,
  );
  return 1 / sum;
}

function doubtsOf(
  input: BudgetInput,
  found: { readonly freedom: number; readonly combined: number | null; readonly probability: number | undefined },
): string[] {
  const doubts: string[] = [];
  if (found.combined === null) return doubts;
  if ((input.correlation ?? []).length > 0 && found.freedom !== Infinity)
    doubts.push(
      'Inputs are correlated, for which effective degrees of freedom have no formula here: the least of the inputs are taken.',
    );
  if (found.combined === 0) doubts.push('Every contribution is zero: an uncertainty of nothing is not to be believed.');
  const asked = input.coverage;
  if (
    asked &&
    'factor' in asked &&
    found.freedom !== Infinity &&
    (found.probability ?? 1) < normalShare(asked.factor) - 0.005
  )
    doubts.push(
      `With ${Math.floor(found.freedom)} effective degrees of freedom the factor ${asked.factor} covers ${(100 * (found.probability ?? 0)).toFixed(1)} % only.`,
    );
  return doubts;
}

function normalShare(factor: number): number {
  return coverage({ factor }, Infinity).probability;
}

function requireSound(term: BudgetTerm): void {
  const { name, standardUncertainty, sensitivity, degreesOfFreedom } = term;
  if (!(standardUncertainty >= 0 && Number.isFinite(standardUncertainty)))
    throw new RangeError(`${name}: a standard uncertainty is finite and not below 0`);
  if (!Number.isFinite(sensitivity)) throw new RangeError(`${name}: a sensitivity is a finite number`);
  if (!(degreesOfFreedom > 0)) throw new RangeError(`${name}: degrees of freedom are above 0, Infinity where exact`);
}

/** The lines as contributions in the unit of the result, for a value that goes to judgement; none where the uncertainty is not stated. */
export function contributionsOf(finished: Budget): readonly Contribution[] {
  if (finished.combinedStandardUncertainty === null) return [];
  return finished.lines.map(({ name, contribution, source }) => ({ name, standardUncertainty: contribution, source }));
}
