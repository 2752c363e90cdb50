import type { Budget } from './budget.ts';
import { type MonteCarloInput, type MonteCarloResult, monteCarlo, numericalTolerance } from './monte-carlo.ts';
import type { MeasurementModel } from './propagation.ts';

/** The interval of a budget held against that of a Monte Carlo run. */
export interface GumValidation {
  /** Distance of the ends, in the unit of the result. */
  readonly lowerDifference: number;
  readonly upperDifference: number;
  readonly tolerance: number;
  readonly digits: number;
  readonly isValid: boolean;
  readonly monteCarlo: MonteCarloResult;
  readonly doubts: readonly string[];
  readonly method: string;
  readonly sentence: string;
}

export interface ValidationOptions {
  readonly estimate: number;
  readonly standardUncertainty: number;
  readonly expandedUncertainty: number;
  readonly monteCarlo: MonteCarloResult;
  /** Significant digits of the standard uncertainty that must agree; 1 unless said otherwise. */
  readonly digits?: 1 | 2;
}

/**
 * Whether the interval y +/- U of the law of propagation agrees with the Monte Carlo interval to the numerical tolerance of u(y)
 * (JCGM 101:2008 8.1). The run should itself stand to a fifth of that tolerance (8.2); where it does not, a doubt says so.
 * Both must be for the same coverage probability: that is the caller's to see to, and `validateModel` does.
 */
export function validateGum(options: ValidationOptions): GumValidation {
  const { estimate, standardUncertainty, expandedUncertainty, monteCarlo: run, digits = 1 } = options;
  const tolerance = numericalTolerance(standardUncertainty, digits);
  const { lower, upper } = run[run.interval];
  const lowerDifference = Math.abs(estimate - expandedUncertainty - lower);
  const upperDifference = Math.abs(estimate + expandedUncertainty - upper);
  const isValid = lowerDifference <= tolerance && upperDifference <= tolerance;
  const isCoarse = run.reached > tolerance / 5;
  return {
    lowerDifference,
    upperDifference,
    tolerance,
    digits,
    isValid,
    monteCarlo: run,
    doubts: [
      ...run.doubts,
      ...(isCoarse ? ['The simulation stands less firmly than a fifth of the tolerance of this comparison.'] : []),
    ],
    method: 'Comparison of the GUM interval with the Monte Carlo interval (JCGM 101:2008 8)',
    sentence: isValid
      ? `The uncertainty budget was checked by simulation and agrees with it to ${digits === 1 ? 'one digit' : 'two digits'} of the standard uncertainty.`
      : 'The uncertainty budget was checked by simulation and does not agree with it: use the simulated interval.',
  };
}

export interface ModelRun {
  readonly seed: number;
  readonly digits?: 1 | 2;
  readonly mostTrials?: number;
}

/** Draws the inputs of a measurement model instead of linearising it. */
export function monteCarloOfModel(
  model: MeasurementModel,
  run: Pick<MonteCarloInput, 'seed' | 'adaptive' | 'coverageProbability' | 'interval'>,
): MonteCarloResult {
  return monteCarlo({
    model: model.evaluate,
    inputs: model.inputs,
    ...(model.correlation ? { correlation: model.correlation } : {}),
    quantity: model.quantity,
    unit: model.unit,
    ...run,
  });
}

/**
 * Checks the budget of a model by a Monte Carlo run of the same model at the same coverage probability, one digit finer than the
 * comparison. Null where the budget states no uncertainty.
 */
export function validateModel(model: MeasurementModel, budget: Budget, run: ModelRun): GumValidation | null {
  const { value, combinedStandardUncertainty, expandedUncertainty, coverageProbability } = budget;
  if (value === null || combinedStandardUncertainty === null) return null;
  if (expandedUncertainty === null || coverageProbability === null) return null;
  const { seed, digits = 1, mostTrials } = run;
  return validateGum({
    estimate: value,
    standardUncertainty: combinedStandardUncertainty,
    expandedUncertainty,
    digits,
    monteCarlo: monteCarloOfModel(model, {
      seed,
      coverageProbability,
      adaptive: { digits: digits + 1, ...(mostTrials === undefined ? {} : { mostTrials }) },
    }),
  });
}
