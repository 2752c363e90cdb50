import { plainNumber, plainPercent, plainPieces } from './plain-number.ts';
import { type FewValues, fewnessDoubts, requireShare, type Sample, sampleOf } from './sample.ts';
import { knownDeviationToleranceFactor, oneSidedToleranceFactor, twoSidedToleranceFactor } from './tolerance-factor.ts';

/** 'lower': nearly all pieces lie above the bound; 'upper': below it; 'both': between two limits. */
export type ToleranceSide = 'lower' | 'upper' | 'both';

export interface ToleranceOptions {
  readonly coverage: number;
  readonly confidence: number;
  readonly side: ToleranceSide;
  /** A standard deviation known from earlier production; it replaces that of the sample, one-sided bounds only. */
  readonly knownSd?: number;
  readonly unit?: string;
}

export interface ToleranceBound {
  readonly n: number;
  readonly mean: number | null;
  /** The standard deviation used. */
  readonly sd: number | null;
  readonly sdIsKnown: boolean;
  readonly coverage: number;
  readonly confidence: number;
  readonly side: ToleranceSide;
  readonly factor: number | null;
  readonly lower: number | null;
  readonly upper: number | null;
  readonly method: string;
  readonly doubts: readonly string[];
  readonly sentence: string;
}

/**
 * The bound that a stated share of all pieces reaches (or stays under, or the limits it stays within), with a stated confidence,
 * by the exact normal tolerance factors. From one value a bound follows only with a known standard deviation;
 * where none follows, the limits are null and a doubt says why.
 */
export function toleranceBound(few: FewValues & ToleranceOptions): ToleranceBound {
  const { coverage, confidence, side, knownSd, unit } = few;
  requireShare('the coverage', coverage);
  requireShare('the confidence', confidence);
  requireKnown(knownSd, side);
  const sample = withKnown(sampleOf(few), knownSd);
  const { n, mean, sd, obstacle } = sample;
  const sdIsKnown = knownSd !== undefined;
  const common = { n, mean, sd, sdIsKnown, coverage, confidence, side, method: methodOf(side, sdIsKnown) };
  if (obstacle !== null || mean === null || sd === null) {
    const sentence =
      `No bound for ${plainPercent(coverage)} of the pieces follows from ${plainPieces(n)}. ${obstacle ?? ''}`.trim();
    return { ...common, factor: null, lower: null, upper: null, doubts: [obstacle ?? ''], sentence };
  }
  const factor = factorFor({ n, coverage, confidence }, side, sdIsKnown);
  const lower = side === 'upper' ? null : mean - factor * sd;
  const upper = side === 'lower' ? null : mean + factor * sd;
  const doubts = doubtsOf(sample, { lower, mean });
  return { ...common, factor, lower, upper, doubts, sentence: sentenceOf({ ...common, lower, upper }, unit) };
}

function requireKnown(knownSd: number | undefined, side: ToleranceSide): void {
  if (knownSd === undefined) return;
  if (!(knownSd > 0 && knownSd < Infinity))
    throw new RangeError(`a known standard deviation lies above 0, not ${knownSd}`);
  if (side === 'both') throw new RangeError('limits on both sides are told from the scatter of the sample only');
}

function withKnown(sample: Sample, knownSd: number | undefined): Sample {
  if (knownSd === undefined || sample.n === 0) return sample;
  return { ...sample, sd: knownSd, obstacle: null };
}

function factorFor(
  demand: { readonly n: number; readonly coverage: number; readonly confidence: number },
  side: ToleranceSide,
  sdIsKnown: boolean,
): number {
  if (sdIsKnown) return knownDeviationToleranceFactor(demand);
  return side === 'both' ? twoSidedToleranceFactor(demand) : oneSidedToleranceFactor(demand);
}

function methodOf(side: ToleranceSide, sdIsKnown: boolean): string {
  if (sdIsKnown) return 'One-sided normal tolerance bound, standard deviation known (ISO 16269-6)';
  if (side === 'both') return 'Two-sided normal tolerance interval, exact factor by integration (ISO 16269-6)';
  return 'One-sided normal tolerance bound, exact factor by noncentral t (ISO 16269-6)';
}

function doubtsOf(
  { n }: Sample,
  { lower, mean }: { readonly lower: number | null; readonly mean: number },
): readonly string[] {
  const belowZero = lower !== null && lower <= 0 && mean > 0;
  const useless = belowZero ? ['The lower bound lies at or below zero: so few pieces promise nothing.'] : [];
  return [...fewnessDoubts(n), ...useless];
}

function sentenceOf(
  bound: Pick<ToleranceBound, 'n' | 'coverage' | 'confidence' | 'lower' | 'upper' | 'sdIsKnown'>,
  unit: string | undefined,
): string {
  const { n, coverage, confidence, lower, upper } = bound;
  const share = `With ${plainPercent(confidence)} confidence at least ${plainPercent(coverage)} of all such pieces`;
  const spread = bound.sdIsKnown ? 'a normal spread known beforehand' : 'a normal spread';
  const basis = `judged by ${plainPieces(n)} and ${spread}`;
  if (lower !== null && upper !== null) {
    return `${share} lie between ${plainNumber(lower, unit)} and ${plainNumber(upper, unit)}, ${basis}.`;
  }
  if (lower !== null) return `${share} reach ${plainNumber(lower, unit)} or more, ${basis}.`;
  return `${share} stay at ${plainNumber(upper ?? 0, unit)} or less, ${basis}.`;
}
