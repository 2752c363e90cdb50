import { normalQuantile } from '../distribution/index.ts';

/** Agreement of readers beyond chance. Numbers are null where they cannot be had; `doubts` says why. */
export interface Kappa {
  readonly method: string;
  /** 1 for full agreement, 0 for what chance gives, below 0 for less than that. */
  readonly kappa: number | null;
  /** Large-sample standard error, whatever the true kappa. */
  readonly standardError: number | null;
  readonly lower: number | null;
  readonly upper: number | null;
  readonly confidence: number;
  /** Share of readings that agree. */
  readonly observed: number | null;
  /** Share that would agree by chance, the readers' use of categories being what it was. */
  readonly expected: number | null;
  /** kappa over its standard error were there no agreement but by chance. */
  readonly z: number | null;
  /** Two-sided, of no agreement but by chance. */
  readonly p: number | null;
  /** Things read by two readers or more: those kappa rests on. */
  readonly n: number;
  readonly categories: readonly string[];
  readonly doubts: readonly string[];
  readonly sentence: string;
}

/** Below this many things read the large-sample limits are rough (common practice). */
const few = 30;

/** Limits of kappa, never beyond 1. */
export function kappaLimits(of: {
  readonly kappa: number;
  readonly expected: number;
  readonly standardError: number;
  readonly factor: number;
  readonly n: number;
  readonly confidence: number;
}): { readonly lower: number; readonly upper: number; readonly doubts: readonly string[] } {
  const { kappa, standardError, factor, n } = of;
  const fewDoubts = n < few ? [`${n} things read: the limits of kappa are rough`] : [];
  if (standardError > 0) {
    const half = factor * standardError;
    return { lower: Math.max(-1, kappa - half), upper: Math.min(1, kappa + half), doubts: fewDoubts };
  }
  // Full agreement leaves no scatter to go by. Clopper and Pearson bound the share that would agree.
  const share = ((1 - of.confidence) / 2) ** (1 / n);
  const lower = Math.max(-1, (share - of.expected) / (1 - of.expected));
  const reason = 'the readers never differed: the lower limit is that of n agreements in n (Clopper and Pearson 1934)';
  return { lower: Math.min(lower, kappa), upper: 1, doubts: [reason, ...fewDoubts] };
}

/** Normal factor of a two-sided interval. */
export function normalFactor(confidence: number): number {
  if (!(confidence > 0 && confidence < 1)) throw new RangeError('a confidence lies between 0 and 1');
  return normalQuantile(0.5 + confidence / 2);
}

/** A kappa that could not be had. */
export function noKappa(have: {
  readonly method: string;
  readonly confidence: number;
  readonly n: number;
  readonly categories: readonly string[];
  readonly observed: number | null;
  readonly expected: number | null;
  readonly reason: string;
}): Kappa {
  const { reason, ...rest } = have;
  const blank = { kappa: null, standardError: null, lower: null, upper: null, z: null, p: null };
  return { ...rest, ...blank, doubts: [reason], sentence: `Agreement beyond chance cannot be told: ${reason}.` };
}

/** Kappa in one plain sentence. */
export function kappaSentence(told: {
  readonly readers: string;
  readonly kappa: number;
  readonly lower: number | null;
  readonly upper: number | null;
  readonly observed: number;
  readonly expected: number;
  readonly n: number;
}): string {
  const { kappa, lower, upper } = told;
  const percent = (share: number) => `${Math.round(100 * share)} %`;
  const things = told.n === 1 ? 'one thing read' : `${told.n} things read`;
  const chance = `chance alone would give ${percent(told.expected)}`;
  const start = `${told.readers} gave the same answer in ${percent(told.observed)} of cases (${things}); ${chance}.`;
  const limits = lower === null || upper === null ? 'no limits known' : `${lower.toFixed(2)} to ${upper.toFixed(2)}`;
  const figures = `kappa ${kappa.toFixed(2)}, ${limits}`;
  if (kappa <= 0) return `${start} That is no more than chance (${figures}).`;
  return `${start} Of the agreement that chance does not give, ${percent(kappa)} was reached (${figures}).`;
}
