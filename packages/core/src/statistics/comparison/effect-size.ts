import { logGamma, noncentralTCdf, normalQuantile } from '../distribution/index.ts';
import type { AnalysisOfVariance } from './analysis-of-variance.ts';
import { bracketedRoot } from './bracketed-root.ts';
import { type CentredGroup, centred, type Group, refuseConfidence } from './group.ts';
import { percentWords } from './plain-words.ts';

export interface HedgesG {
  readonly method: string;
  /** Difference of means in pooled standard deviations, small-sample bias taken off; null where it cannot be had. */
  readonly g: number | null;
  readonly lower: number | null;
  readonly upper: number | null;
  readonly confidence: number;
  readonly degreesOfFreedom: number;
  readonly doubts: readonly string[];
  readonly sentence: string;
}

/**
 * How many standard deviations apart two means lie (Hedges 1981, Journal of Educational Statistics 6, 107-128, exact
 * correction), its interval by the noncentral t (Steiger and Fouladi 1997). Takes equal variances.
 */
export function hedgesG(
  pair: { readonly first: Group; readonly second: Group },
  options: { readonly confidence?: number } = {},
): HedgesG {
  const { groups } = centred([pair.first, pair.second]);
  const [a, b] = groups;
  const confidence = options.confidence ?? 0.95;
  refuseConfidence(confidence);
  if (!a || !b) return without({ confidence, degreesOfFreedom: 0, reason: 'a group has no value' });
  return hedgesOf({ a, b }, confidence);
}

/** The effect size from moments: the caller has the values centred already. */
export function hedgesOf(pair: { readonly a: CentredGroup; readonly b: CentredGroup }, confidence: number): HedgesG {
  const { a, b } = pair;
  const degreesOfFreedom = a.n + b.n - 2;
  if (degreesOfFreedom < 2) return without({ confidence, degreesOfFreedom, reason: 'too few values' });
  const variance = (a.sumOfSquares + b.sumOfSquares) / degreesOfFreedom;
  if (variance === 0) return without({ confidence, degreesOfFreedom, reason: 'there is no scatter within the groups' });
  const spread = Math.sqrt(1 / a.n + 1 / b.n);
  const d = (a.offset - b.offset) / Math.sqrt(variance);
  const unbiased = biasFactor(degreesOfFreedom);
  const lower = noncentralityAt({ t: d / spread, degreesOfFreedom, p: 0.5 + confidence / 2 });
  const upper = noncentralityAt({ t: d / spread, degreesOfFreedom, p: 0.5 - confidence / 2 });
  const found = lower !== null && upper !== null;
  const limits = found
    ? { lower: lower * spread * unbiased, upper: upper * spread * unbiased }
    : { lower: null, upper: null };
  return {
    method,
    g: d * unbiased,
    ...limits,
    confidence,
    degreesOfFreedom,
    doubts: found ? [] : ['the means lie too many standard deviations apart for limits'],
    sentence: sentenceOf({ g: d * unbiased, ...limits, confidence, names: [a.name, b.name] }),
  };
}

const method = 'Hedges g (Hedges 1981), limits by the noncentral t';

/** J(nu) = Gamma(nu / 2) / (sqrt(nu / 2) Gamma((nu - 1) / 2)), exact. */
function biasFactor(nu: number): number {
  return Math.exp(logGamma(nu / 2) - logGamma((nu - 1) / 2)) / Math.sqrt(nu / 2);
}

/** The noncentrality under which t would be the quantile p. */
function noncentralityAt(at: {
  readonly t: number;
  readonly degreesOfFreedom: number;
  readonly p: number;
}): number | null {
  const { t, degreesOfFreedom, p } = at;
  if (Math.abs(t) > 1000) return null;
  const excess = (delta: number) => noncentralTCdf(t, degreesOfFreedom, delta) - p;
  // Normal approximation of the noncentral t: close enough to bracket the root in a few evaluations.
  const width = Math.sqrt(1 + t ** 2 / (2 * degreesOfFreedom));
  const guess = t - normalQuantile(p) * width;
  let reach = 0.3 * width;
  for (let widening = 0; widening < 12; widening += 1) {
    const root = bracketedRoot(excess, { lower: guess - reach, upper: guess + reach, tolerance: 1e-10 });
    if (root !== null) return root;
    reach *= 2.5;
  }
  return null;
}

function sentenceOf(told: {
  readonly g: number;
  readonly lower: number | null;
  readonly upper: number | null;
  readonly confidence: number;
  readonly names: readonly string[];
}): string {
  const { g, lower, upper, confidence, names } = told;
  const size = Math.abs(g).toFixed(1);
  if (lower === null || upper === null)
    return `The means of ${names.join(' and ')} lie ${size} standard deviations apart.`;
  const [least, most] = g < 0 ? [-upper, -lower] : [lower, upper];
  const range = `${least.toFixed(1)} to ${most.toFixed(1)}, ${percentWords(confidence)}`;
  return `The means of ${names.join(' and ')} lie ${size} standard deviations apart (${range}).`;
}

function without(have: {
  readonly confidence: number;
  readonly degreesOfFreedom: number;
  readonly reason: string;
}): HedgesG {
  const { reason, ...rest } = have;
  const sentence = `How far apart the means lie in standard deviations cannot be said: ${reason}.`;
  return { method, g: null, lower: null, upper: null, ...rest, doubts: [reason], sentence };
}

export interface OmegaSquared {
  readonly method: string;
  /** Share of the variance of single values that goes with the group, bias taken off; null where it cannot be had. */
  readonly omegaSquared: number | null;
  readonly doubts: readonly string[];
  readonly sentence: string;
}

/** Omega squared from a one-way table (Hays 1963). An estimate below zero is told as zero. */
export function omegaSquared(table: AnalysisOfVariance): OmegaSquared {
  const { meanSquareWithin: within, sumOfSquaresBetween: between, sumOfSquaresWithin } = table;
  const title = 'Omega squared of a one-way table (Hays 1963)';
  if (table.f === null || within === null) {
    const sentence = 'What share of the scatter goes with the group cannot be said.';
    return { method: title, omegaSquared: null, doubts: table.doubts, sentence };
  }
  const raw = (between - table.degreesOfFreedomBetween * within) / (between + sumOfSquaresWithin + within);
  const value = Math.max(raw, 0);
  return {
    method: title,
    omegaSquared: value,
    doubts: raw < 0 ? ['the means differ less than scatter alone would make them; the share is told as zero'] : [],
    sentence: `About ${percentWords(value)} of the variance of single values goes with the group, the rest is scatter within.`,
  };
}
