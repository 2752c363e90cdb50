import { type ForecastAxis, forecastTables } from './forecast-tables.ts';

/** Quantiles of ln(maximum / greatest force so far) that came true on simulated pulls with features like these. */
export interface RiseQuantiles {
  /** 5 %, 50 % and 95 %, none below 0, in order. */
  readonly low: number;
  readonly middle: number;
  readonly high: number;
}

/** A full binary tree: node k leads to 2k + 1 (feature at most the limit) or 2k + 2; the leaves come after the forks, from left to right. */
export interface QuantileTree {
  readonly features: readonly number[];
  readonly limits: readonly number[];
  readonly leaves: readonly number[];
}

/** A quantile as a sum of small trees. */
export interface QuantileModel {
  readonly start: number;
  readonly trees: readonly QuantileTree[];
}

function leafOf({ features, limits, leaves }: QuantileTree, values: readonly number[]): number {
  let node = 0;
  while (node < features.length) {
    const value = values[features[node] ?? 0] ?? 0;
    node = 2 * node + (value <= (limits[node] ?? 0) ? 1 : 2);
  }
  return leaves[node - features.length] ?? 0;
}

/** Value of one model for the features of a moment. */
export function quantileBy(model: QuantileModel, features: readonly number[]): number {
  return model.trees.reduce((sum, tree) => sum + leafOf(tree, features), model.start);
}

/** Quantiles by three models (5 %, 50 %, 95 %), put in order. */
export function quantilesBy(models: readonly QuantileModel[], features: readonly number[]): RiseQuantiles {
  const [low, middle, high] = models;
  const least = low ? Math.max(0, quantileBy(low, features)) : 0;
  const half = middle ? Math.max(least, quantileBy(middle, features)) : least;
  return { low: least, middle: half, high: high ? Math.max(half, quantileBy(high, features)) : half };
}

/** Quantiles by the models of this axis: a fixed number of comparisons. */
export function riseQuantiles(axis: ForecastAxis, features: readonly number[]): RiseQuantiles {
  return quantilesBy(forecastTables[axis].models, features);
}
