import type { CentredGroup } from './group.ts';
import { percentWords, valueWords } from './plain-words.ts';

/** Two groups of a family compared. Everything that cannot be had is null, and `reason` says why. */
export interface PairDifference {
  readonly first: string;
  readonly second: string;
  /** Mean of the first less mean of the second, in the unit of the values. */
  readonly difference: number;
  /** Standard error of the difference. */
  readonly standardError: number | null;
  readonly degreesOfFreedom: number | null;
  /** Studentized range |difference| / (standardError / sqrt 2). */
  readonly q: number | null;
  /** Adjusted for the whole family of pairs. */
  readonly p: number | null;
  /** Limits that hold for all pairs jointly. */
  readonly lower: number | null;
  readonly upper: number | null;
  /** p below 1 - confidence; null when the pair could not be judged. */
  readonly distinguishable: boolean | null;
  readonly reason: string | null;
}

export interface PairwiseComparison {
  readonly method: string;
  readonly confidence: number;
  readonly pairs: readonly PairDifference[];
  readonly doubts: readonly string[];
}

/** Why two groups cannot be compared by their own scatter; null when they can. */
export function pairReason(a: CentredGroup, b: CentredGroup): string | null {
  const single = [a, b].filter((group) => group.variance === null).map((group) => group.name);
  if (single.length > 0) return `${single.join(' and ')} ${single.length > 1 ? 'have' : 'has'} one value only`;
  if (a.variance === 0 && b.variance === 0) return 'neither shows any scatter';
  return null;
}

/** A pair that could not be judged. */
export function unjudged(pair: { readonly a: CentredGroup; readonly b: CentredGroup }, reason: string): PairDifference {
  return {
    first: pair.a.name,
    second: pair.b.name,
    difference: pair.a.offset - pair.b.offset,
    standardError: null,
    degreesOfFreedom: null,
    q: null,
    p: null,
    lower: null,
    upper: null,
    distinguishable: null,
    reason,
  };
}

/** Every unordered pair, in the order of the list. */
export function pairsOf<Item>(items: readonly Item[]): { readonly a: Item; readonly b: Item }[] {
  return items.flatMap((a, index) => items.slice(index + 1).map((b) => ({ a, b })));
}

interface ToldPair {
  readonly first: string;
  readonly second: string;
  readonly difference: number;
  readonly lower: number;
  readonly upper: number;
  readonly confidence: number;
  readonly unit: string;
  /** The limits hold for all pairs at once. */
  readonly joint: boolean;
}

/** A pair in one plain sentence; the higher of the two is named first. */
export function pairSentence(pair: ToldPair): string {
  if (pair.difference < 0) return pairSentence(turned(pair));
  const by = { uncertainty: (pair.upper - pair.lower) / 4, unit: pair.unit };
  const range = `${valueWords(pair.lower, { ...by, unit: '' })} to ${valueWords(pair.upper, by)}`;
  const level = `${percentWords(pair.confidence)}${pair.joint ? ', all pairs jointly' : ''}`;
  if (pair.lower > 0) {
    const mean = valueWords(pair.difference, by);
    return `${pair.first} lies above ${pair.second} by ${mean} in the mean; the data allow ${range} (${level}).`;
  }
  return `${pair.first} and ${pair.second} are not distinguishable: the data allow a difference of ${range} (${level}).`;
}

function turned(pair: ToldPair): ToldPair {
  return {
    ...pair,
    first: pair.second,
    second: pair.first,
    difference: -pair.difference,
    lower: -pair.upper,
    upper: -pair.lower,
  };
}
