import { studentQuantile } from '../distribution/index.ts';
import { summarise } from '../summary.ts';
import { plainPieces } from './plain-number.ts';
import { requireCount, requireShare } from './sample.ts';

/** One step: the value farthest from the mean of those still in, set aside for the next step only. */
export interface EsdStep {
  readonly index: number;
  readonly value: number;
  readonly mean: number;
  readonly sd: number;
  readonly statistic: number;
  readonly critical: number;
}

export interface GeneralizedEsd {
  readonly n: number;
  readonly significance: number;
  readonly mostOutliers: number;
  readonly steps: readonly EsdStep[];
  readonly outliers: number;
  /** Places of the outliers in the list given. They are shown, never left out. */
  readonly outlierIndexes: readonly number[];
  readonly method: string;
  readonly doubts: readonly string[];
  readonly sentence: string;
}

const method = 'Generalized extreme studentized deviate test (Rosner, Technometrics 25 (1983) 165-172)';

/** The critical value of step i (from 1) for n values, n - i at least 2. */
export function esdCritical(n: number, step: number, significance: number): number {
  requireShare('the significance', significance);
  const left = n - step;
  if (!(left >= 2)) throw new RangeError(`step ${step} of ${n} values leaves too few to judge by`);
  const t = -studentQuantile(significance / (2 * (left + 1)), left - 1);
  return (left * t) / Math.sqrt((left - 1 + t * t) * (left + 1));
}

/**
 * How many values stand out, up to `mostOutliers`, without one hiding another. Nothing is dropped: the result only points to them.
 * Steps end early where the values left are equal or fewer than three.
 */
export function generalizedEsd(
  values: readonly number[],
  { significance, mostOutliers }: { readonly significance: number; readonly mostOutliers: number },
): GeneralizedEsd {
  requireShare('the significance', significance);
  requireCount(mostOutliers);
  const n = values.length;
  const steps = stepsOf(values, { significance, mostOutliers });
  const outliers = 1 + steps.findLastIndex((step) => step.statistic > step.critical);
  const outlierIndexes = steps.slice(0, outliers).map((step) => step.index);
  const common = { n, significance, mostOutliers, steps, outliers, outlierIndexes, method };
  return {
    ...common,
    doubts: doubtsOf(n, steps.length, mostOutliers),
    sentence: sentenceOf(n, outliers, steps.length),
  };
}

function stepsOf(
  values: readonly number[],
  { significance, mostOutliers }: { readonly significance: number; readonly mostOutliers: number },
): readonly EsdStep[] {
  const steps: EsdStep[] = [];
  let left = values.map((value, index) => ({ value, index }));
  while (steps.length < mostOutliers && left.length >= 3) {
    const { mean, sd } = summarise(left.map(({ value }) => value));
    if (mean === null || sd === null || sd === 0) break;
    const farthest = left.reduce((best, one) =>
      Math.abs(one.value - mean) > Math.abs(best.value - mean) ? one : best,
    );
    const statistic = Math.abs(farthest.value - mean) / sd;
    const critical = esdCritical(values.length, steps.length + 1, significance);
    steps.push({ ...farthest, mean, sd, statistic, critical });
    left = left.filter((one) => one !== farthest);
  }
  return steps;
}

function doubtsOf(n: number, made: number, asked: number): readonly string[] {
  const few = n < 15 ? [`The test is meant for 15 values or more; here are ${n}.`] : [];
  const short = made < asked ? [`Only ${made} of ${asked} steps could be made.`] : [];
  return [...few, ...short];
}

function sentenceOf(n: number, outliers: number, steps: number): string {
  if (steps === 0) return `No test for outliers can be made with ${plainPieces(n)} like these.`;
  if (outliers === 0) return `None of ${plainPieces(n)} stands out from the scatter of the others.`;
  const what = outliers === 1 ? 'One value stands' : `${outliers} values stand`;
  return `${what} out from the scatter of ${plainPieces(n)}. All are kept: look for the cause.`;
}
