import type { MonteCarloResult } from './monte-carlo.ts';
import { roundByUncertainty } from './rounding.ts';

/** What a Monte Carlo run says to a reader who is no statistician. */
export function monteCarloSentence(result: Omit<MonteCarloResult, 'sentence'>): string {
  const { estimate, standardUncertainty, coverageProbability, trials, quantity } = result;
  const unit = result.unit === '' ? '' : ` ${result.unit}`;
  if (!(standardUncertainty >= 1e-99)) return `Every one of ${trials} simulated results was ${estimate}${unit}.`;
  const show = (value: number) => roundByUncertainty({ value, uncertainty: standardUncertainty }).value;
  const { lower, upper } = result[result.interval];
  return `Simulated ${trials} times with inputs drawn from what is known of them, the ${quantity} came out at ${show(estimate)}${unit} on average and between ${show(lower)} and ${show(upper)}${unit} in ${Number((100 * coverageProbability).toFixed(2))} % of the cases.`;
}
