import { type RandomSource, seededRandom } from '../statistics/random.ts';
import { type Correlation, correlationBetween, triangleOf } from './correlation.ts';
import { type CoverageInterval, coverageIntervals } from './coverage-interval.ts';
import { drawsFrom, type InputDistribution } from './input-distribution.ts';
import { monteCarloSentence } from './monte-carlo-sentence.ts';

export interface MonteCarloInput {
  /** The result from the inputs, in their order; the list is reused between calls. */
  readonly model: (values: readonly number[]) => number;
  readonly inputs: readonly { readonly name?: string; readonly distribution: InputDistribution }[];
  /** Between normal inputs, by name (JCGM 101:2008 6.4.8). */
  readonly correlation?: readonly Correlation[];
  readonly seed: number;
  /** How many significant digits of the standard uncertainty must stand still. */
  readonly adaptive: { readonly digits: number; readonly mostTrials?: number };
  /** 0.95 unless said otherwise. */
  readonly coverageProbability?: number;
  /** Which interval's ends must stand still too; symmetric unless said otherwise. */
  readonly interval?: 'symmetric' | 'shortest';
  readonly quantity?: string;
  readonly unit?: string;
}

export interface MonteCarloResult {
  readonly quantity: string;
  readonly unit: string;
  readonly estimate: number;
  readonly standardUncertainty: number;
  readonly coverageProbability: number;
  readonly symmetric: CoverageInterval;
  readonly shortest: CoverageInterval;
  readonly interval: 'symmetric' | 'shortest';
  readonly trials: number;
  readonly seed: number;
  readonly digits: number;
  /** Numerical tolerance of the standard uncertainty, and twice the standard error reached for what stands worst. */
  readonly tolerance: number;
  readonly reached: number;
  readonly converged: boolean;
  readonly doubts: readonly string[];
  readonly method: string;
  readonly sentence: string;
}

/** With two sequences, as the clause allows, their scatter is often small by chance; ten cost little. */
const fewestSequences = 10;
const mostTrialsUnlessSaid = 4_000_000;

/**
 * Propagation of distributions by the adaptive Monte Carlo procedure of JCGM 101:2008 7.9: sequences of trials are added until twice
 * the standard error of estimate, standard uncertainty and both ends of the coverage interval is below the numerical tolerance of the
 * standard uncertainty. The same seed gives the same numbers everywhere. At `mostTrials` (4 million, 32 MB) it stops, and says so.
 *
 * @throws RangeError for a model that gives no finite number, digits not 1 to 4, a probability outside 0 to 1, correlated inputs that
 *   are not normal
 */
export function monteCarlo(input: MonteCarloInput): MonteCarloResult {
  const probability = input.coverageProbability ?? 0.95;
  requireSound(input, probability);
  const { digits, mostTrials = mostTrialsUnlessSaid } = input.adaptive;
  const interval = input.interval ?? 'symmetric';
  const size = Math.max(Math.ceil(100 / (1 - probability)), 10_000);
  const draw = trialsOf(input);
  const sequences: Sequence[] = [];
  let standing: Standing = { standardUncertainty: 0, tolerance: 0, reached: Infinity };
  do {
    const values = Float64Array.from({ length: size }, draw).sort();
    sequences.push({ values, ...summaryOf(values, { probability, interval }) });
    standing = standingAfter(sequences, digits);
  } while (
    (sequences.length < fewestSequences || standing.reached > standing.tolerance) &&
    (sequences.length + 1) * size <= mostTrials
  );
  const all = joined(sequences);
  const intervals = coverageIntervals(all, probability);
  if (intervals === null) throw new RangeError('a Monte Carlo run has trials');
  const converged = sequences.length >= fewestSequences && standing.reached <= standing.tolerance;
  const figures = {
    quantity: input.quantity ?? 'result',
    unit: input.unit ?? '',
    estimate: meanOf(sequences.map(({ mean }) => mean)),
    standardUncertainty: standing.standardUncertainty,
    coverageProbability: probability,
    ...intervals,
    interval,
    trials: all.length,
    seed: input.seed,
    digits,
    tolerance: standing.tolerance,
    reached: standing.reached,
    converged,
    doubts: converged
      ? []
      : [
          `After ${all.length} trials the figures still move by ${standing.reached.toPrecision(2)}: fewer digits hold than asked.`,
        ],
    method: 'Propagation of distributions, adaptive Monte Carlo (JCGM 101:2008 7.9)',
  };
  return { ...figures, sentence: monteCarloSentence(figures) };
}

interface Sequence extends SequenceSummary {
  readonly values: Float64Array;
}

interface SequenceSummary {
  readonly mean: number;
  readonly sd: number;
  readonly lower: number;
  readonly upper: number;
}

interface Standing {
  readonly standardUncertainty: number;
  readonly tolerance: number;
  /** Twice the standard error of the figure that stands worst. */
  readonly reached: number;
}

function trialsOf(input: MonteCarloInput): () => number {
  const random = seededRandom(input.seed);
  const draws = input.inputs.map(({ distribution }) => drawsFrom(distribution, random));
  const values: number[] = draws.map(() => 0);
  const fill = (input.correlation ?? []).length > 0 ? jointFill(input, random) : independentFill(draws);
  return () => {
    fill(values);
    const result = input.model(values);
    if (!Number.isFinite(result)) throw new RangeError(`the model gives ${result} for ${values.join(', ')}`);
    return result;
  };
}

function independentFill(draws: readonly (() => number)[]): (values: number[]) => void {
  return (values) => {
    for (let i = 0; i < draws.length; i++) values[i] = (draws[i] as () => number)(); // inside, by the loop's bound
  };
}

function jointFill(input: MonteCarloInput, random: RandomSource): (values: number[]) => void {
  const names = input.inputs.map(({ name }, index) => name ?? `input ${index + 1}`);
  const triangle = triangleOf(correlationBetween(names, input.correlation ?? []));
  const normals = input.inputs.map(({ distribution }) => {
    if (distribution.kind !== 'normal') throw new RangeError('only normal inputs can be drawn with correlation');
    return distribution;
  });
  return (values) => {
    const independent = normals.map(() => random.normal());
    for (const [i, { mean, standardUncertainty }] of normals.entries()) {
      const together = (triangle[i] ?? []).reduce((sum, weight, j) => sum + weight * (independent[j] ?? 0), 0);
      values[i] = mean + standardUncertainty * together;
    }
  };
}

function summaryOf(
  ascending: Float64Array,
  about: { readonly probability: number; readonly interval: 'symmetric' | 'shortest' },
): SequenceSummary {
  const { mean, sd } = spreadOf(ascending);
  const { lower, upper } = coverageIntervals(ascending, about.probability)?.[about.interval] ?? { lower: 0, upper: 0 };
  return { mean, sd, lower, upper };
}

/** `summarise` takes lists small enough to spread; this one does not. */
function spreadOf(values: Float64Array): { readonly mean: number; readonly sd: number } {
  const first = values[0] ?? 0;
  let sum = 0;
  for (const value of values) sum += value - first;
  const mean = first + sum / values.length;
  let squares = 0;
  for (const value of values) squares += (value - mean) ** 2;
  return { mean, sd: Math.sqrt(squares / (values.length - 1)) };
}

function standingAfter(sequences: readonly Sequence[], digits: number): Standing {
  const keys = ['mean', 'sd', 'lower', 'upper'] as const;
  const standardUncertainty = pooledSd(sequences);
  const reached = Math.max(...keys.map((key) => 2 * standardError(sequences.map((sequence) => sequence[key]))));
  return { standardUncertainty, tolerance: numericalTolerance(standardUncertainty, digits), reached };
}

/** Standard deviation of all values of all sequences together. */
function pooledSd(sequences: readonly Sequence[]): number {
  const size = sequences[0]?.values.length ?? 0;
  const mean = meanOf(sequences.map((sequence) => sequence.mean));
  const squares = sequences.reduce(
    (sum, sequence) => sum + (size - 1) * sequence.sd ** 2 + size * (sequence.mean - mean) ** 2,
    0,
  );
  return Math.sqrt(squares / (size * sequences.length - 1));
}

function standardError(values: readonly number[]): number {
  if (values.length < 2) return Infinity;
  const mean = meanOf(values);
  const squares = values.reduce((sum, value) => sum + (value - mean) ** 2, 0);
  return Math.sqrt(squares / (values.length * (values.length - 1)));
}

function meanOf(values: readonly number[]): number {
  return values.reduce((sum, value) => sum + value, 0) / values.length;
}

function joined(sequences: readonly Sequence[]): Float64Array {
  const size = sequences[0]?.values.length ?? 0;
  const all = new Float64Array(size * sequences.length);
  for (const [index, { values }] of sequences.entries()) all.set(values, index * size);
  return all.sort();
}

/**
 * Half a unit of the last of `digits` significant digits of a standard uncertainty (JCGM 101:2008 7.9.2); 0 for an uncertainty of 0.
 * @example numericalTolerance(0.00035, 2) // 0.000005
 */
export function numericalTolerance(standardUncertainty: number, digits: number): number {
  if (standardUncertainty === 0) return 0;
  const written = standardUncertainty.toExponential(digits - 1);
  return 0.5 * 10 ** (Number(written.slice(written.indexOf('e') + 1)) - digits + 1);
}

function requireSound({ adaptive, inputs, seed }: MonteCarloInput, probability: number): void {
  if (!(probability > 0 && probability < 1)) throw new RangeError('a coverage probability lies between 0 and 1');
  if (![1, 2, 3, 4].includes(adaptive.digits)) throw new RangeError('1 to 4 digits can be asked of a Monte Carlo run');
  if (inputs.length === 0) throw new RangeError('a Monte Carlo run has inputs');
  if (!Number.isSafeInteger(seed)) throw new RangeError('a seed is a whole number');
}
