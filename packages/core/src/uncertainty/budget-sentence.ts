import type { Budget } from './budget.ts';
import { roundByUncertainty } from './rounding.ts';

/** What a budget says to a reader who is no statistician. */
export function budgetSentence(budget: Omit<Budget, 'sentence'>): string {
  const { combinedStandardUncertainty, unknown, quantity } = budget;
  if (unknown.length > 0) return `The uncertainty of the ${quantity} is not stated: ${unknown.join('; ')}.`;
  if (combinedStandardUncertainty === null) return `Nothing is known that would give the ${quantity} an uncertainty.`;
  return `${statement(budget)}${largest(budget)}`;
}

function statement(budget: Omit<Budget, 'sentence'>): string {
  const { value, expandedUncertainty, coverageFactor, coverageProbability, quantity } = budget;
  const unit = budget.unit === '' ? '' : ` ${budget.unit}`;
  const cover = `k = ${(coverageFactor ?? 0).toFixed(2)}, covering ${percent(coverageProbability ?? 0)}`;
  if (!expandedUncertainty || expandedUncertainty < 1e-99)
    return `The ${quantity} has an uncertainty of zero by this budget.`;
  const rounded = roundByUncertainty({ value: value ?? 0, uncertainty: expandedUncertainty });
  return value === null
    ? `The ${quantity} is known to within ${rounded.uncertainty}${unit} (${cover}).`
    : `The ${quantity} is ${rounded.value}${unit}, give or take ${rounded.uncertainty}${unit} (${cover}).`;
}

function largest(budget: Omit<Budget, 'sentence'>): string {
  const known = budget.lines.filter((line) => line.share_pct !== null && line.contribution > 0);
  const [first] = known.toSorted((a, b) => b.contribution - a.contribution);
  if (first === undefined || known.length < 2) return '';
  return ` The largest part is ${first.name}, ${(first.share_pct ?? 0).toFixed(0)} % of the variance.`;
}

function percent(probability: number): string {
  const value = 100 * probability;
  return `${value > 99.9 ? value.toFixed(2) : Number(value.toFixed(1))} %`;
}
