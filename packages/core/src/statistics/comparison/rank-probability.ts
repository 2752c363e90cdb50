import { type RandomSource, seededRandom } from '../random.ts';
import { type CentredGroup, centred, type Group } from './group.ts';
import { listWords, percentWords } from './plain-words.ts';

/** A mean and how well it is known. */
export interface Estimate {
  readonly name: string;
  readonly value: number;
  readonly standardUncertainty: number;
  /** Of the standard uncertainty; null when it is known as well as if from many values. */
  readonly degreesOfFreedom: number | null;
}

export interface RankedName {
  readonly name: string;
  /** Probability of being first, second, ... */
  readonly probabilities: readonly number[];
  readonly best: number;
  readonly meanRank: number;
}

export interface RankProbability {
  readonly method: string;
  /** Most likely first. */
  readonly ranked: readonly RankedName[];
  readonly notRanked: readonly { readonly name: string; readonly reason: string }[];
  readonly seed: number;
  readonly draws: number;
  /** Standard error of a probability by the finite number of draws, at its largest. */
  readonly simulationError: number;
  readonly doubts: readonly string[];
  readonly sentence: string;
}

export interface RankOptions {
  readonly seed: number;
  /** Draws, default 20 000: probabilities to 0.4 per cent. */
  readonly draws?: number;
  readonly higherIsBetter?: boolean;
}

/**
 * Probability that each group's true mean is the best, second, ... Each mean has the posterior
 * mean + s / sqrt(n) t(n - 1): normal scatter, mean and variance both unknown, the reference prior 1 / sigma^2
 * (Box and Tiao 1973, section 2.4). Drawn `draws` times from a seeded source; the same seed gives the same numbers.
 *
 * @param options.singles a group of one value is left out and said so ('leave out'), or lent the pooled scatter of the
 * others ('pool')
 */
export function rankProbability(
  groups: readonly Group[],
  options: RankOptions & { readonly singles?: 'leave out' | 'pool' },
): RankProbability {
  const { groups: filled, empty } = centred(groups);
  return rankGroups(filled, { ...options, empty });
}

/** The probabilities from moments: the caller has the values centred already. */
export function rankGroups(
  filled: readonly CentredGroup[],
  options: RankOptions & { readonly singles?: 'leave out' | 'pool'; readonly empty: readonly string[] },
): RankProbability {
  const lent = options.singles === 'pool' ? pooledScatter(filled) : null;
  const estimates = filled.flatMap((group) => estimateOf(group, lent));
  const singles = filled.filter((group) => group.variance === null).map((group) => group.name);
  const left = lent === null ? singles.map((name) => ({ name, reason: 'one value: no scatter to rank it by' })) : [];
  const result = rankEstimates(estimates, options);
  const notRanked = [...options.empty.map((name) => ({ name, reason: 'no value' })), ...left];
  const absent = listWords(notRanked.map(({ name }) => name));
  return {
    ...result,
    sentence: absent === '' ? result.sentence : `${result.sentence} Not ranked, for want of values: ${absent}.`,
    notRanked,
    doubts: [...result.doubts, ...scatterDoubts(filled, lent !== null)],
  };
}

/** The same for estimates of any kind: ratios, margins. Independent of one another; what all share does not matter here. */
export function rankEstimates(estimates: readonly Estimate[], options: RankOptions): RankProbability {
  const draws = options.draws ?? 20_000;
  if (!(Number.isInteger(draws) && draws > 0)) throw new RangeError('draws is a whole number above 0');
  const counts = rankCounts(estimates, { ...options, draws });
  const ranked = estimates
    .map(({ name }, index) => rankedName(name, counts[index] ?? [], draws))
    .sort((a, b) => b.best - a.best || a.meanRank - b.meanRank);
  return {
    method: 'Posterior of each mean, scaled and shifted t (Box and Tiao 1973), ranked by seeded draws',
    ranked,
    notRanked: [],
    seed: options.seed,
    draws,
    simulationError: 0.5 / Math.sqrt(draws),
    doubts: [],
    sentence: sentenceOf(ranked),
  };
}

function estimateOf(
  group: CentredGroup,
  lent: { readonly variance: number; readonly degreesOfFreedom: number } | null,
): Estimate[] {
  const { name, n, offset: value, variance } = group;
  if (variance !== null) {
    return [{ name, value, standardUncertainty: Math.sqrt(variance / n), degreesOfFreedom: n - 1 }];
  }
  if (lent === null) return [];
  return [{ name, value, standardUncertainty: Math.sqrt(lent.variance), degreesOfFreedom: lent.degreesOfFreedom }];
}

function pooledScatter(groups: readonly CentredGroup[]) {
  const degreesOfFreedom = groups.reduce((sum, group) => sum + group.n - 1, 0);
  if (degreesOfFreedom === 0) return null;
  return { variance: groups.reduce((sum, group) => sum + group.sumOfSquares, 0) / degreesOfFreedom, degreesOfFreedom };
}

function scatterDoubts(groups: readonly CentredGroup[], pooled: boolean): string[] {
  const names = (chosen: (group: CentredGroup) => boolean) => groups.filter(chosen).map((group) => group.name);
  const single = names((group) => group.variance === null);
  const pairs = names((group) => group.n === 2);
  const still = names((group) => group.variance === 0);
  return [
    ...(pooled && single.length > 0
      ? [`${listWords(single)}: one value, ranked as if it scattered like the others taken together`]
      : []),
    ...(pairs.length > 0 ? [`${listWords(pairs)}: two values leave the scatter, and so the rank, hardly known`] : []),
    ...(still.length > 0 ? [`${listWords(still)}: equal values only, ranked as if the mean were known exactly`] : []),
  ];
}

/** How often each estimate (row) took each rank (column). */
function rankCounts(
  estimates: readonly Estimate[],
  options: { readonly seed: number; readonly draws: number; readonly higherIsBetter?: boolean },
): number[][] {
  const k = estimates.length;
  const counts = estimates.map(() => new Array<number>(k).fill(0));
  const random = seededRandom(options.seed);
  const sign = options.higherIsBetter === false ? 1 : -1;
  const drawn = new Float64Array(k);
  const order = Int32Array.from(estimates.keys());
  // Means known exactly may be equal: a shiver far below any digit leaves their order to chance.
  const shiver = 1e-13 * estimates.reduce((most, { value }) => Math.max(most, Math.abs(value)), 1e-290);
  for (let draw = 0; draw < options.draws; draw += 1) {
    estimates.forEach(({ value, standardUncertainty, degreesOfFreedom }, index) => {
      const off = standardUncertainty > 0 ? standardUncertainty * studentDraw(random, degreesOfFreedom) : 0;
      drawn[index] = sign * (value + (off === 0 ? shiver * random.uniform() : off));
    });
    sortByDrawn(order, drawn);
    order.forEach((index, rank) => {
      const row = counts[index];
      if (row) row[rank] = (row[rank] ?? 0) + 1;
    });
  }
  return counts;
}

/** Insertion: the order of the last draw is nearly that of this one. */
function sortByDrawn(order: Int32Array, drawn: Float64Array): void {
  for (let place = 1; place < order.length; place += 1) {
    const index = order[place] ?? 0;
    const value = drawn[index] ?? 0;
    let slot = place;
    while (slot > 0 && (drawn[order[slot - 1] ?? 0] ?? 0) > value) {
      order[slot] = order[slot - 1] ?? 0;
      slot -= 1;
    }
    order[slot] = index;
  }
}

/** Bailey 1994, Mathematics of Computation 62, 779-781: the polar method for Student's t. */
function studentDraw(random: RandomSource, degreesOfFreedom: number | null): number {
  if (degreesOfFreedom === null) return random.normal();
  let u = 0;
  let square = 0;
  do {
    u = 2 * random.uniform() - 1;
    square = u ** 2 + (2 * random.uniform() - 1) ** 2;
  } while (square >= 1 || square === 0);
  return u * Math.sqrt((degreesOfFreedom * (square ** (-2 / degreesOfFreedom) - 1)) / square);
}

function rankedName(name: string, counts: readonly number[], draws: number): RankedName {
  const probabilities = counts.map((count) => count / draws);
  const meanRank = probabilities.reduce((sum, probability, index) => sum + probability * (index + 1), 0);
  return { name, probabilities, best: probabilities[0] ?? 0, meanRank };
}

function sentenceOf(ranked: readonly RankedName[]): string {
  const [first, second] = ranked;
  if (!first) return 'Nothing could be ranked.';
  if (!second) return `${first.name} alone could be ranked.`;
  const chance = percentWords(first.best);
  if (first.best >= 0.95) return `${first.name} is the best with a probability of ${chance}.`;
  const rivals = ranked.slice(1).filter((other) => other.best >= 0.05);
  const others = rivals.map((other) => `${other.name} ${percentWords(other.best)}`);
  const rest = others.length > 0 ? `; ${listWords(others)}` : '';
  return `${first.name} is the likeliest best with a probability of ${chance}${rest}. The data do not settle it.`;
}
