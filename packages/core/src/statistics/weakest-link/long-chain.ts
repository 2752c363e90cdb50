import { summarise } from '../summary.ts';
import { bootstrapMethod } from './bootstrap.ts';
import { type BreakModeFinding, type BreakModes, breakModes } from './break-mode.ts';
import { campaignDoubts } from './campaign-doubt.ts';
import { type ChainLength, chainLength, exceedances, linksIn } from './chain-length.ts';
import { type DataReach, dataReach } from './data-reach.ts';
import { longChainSentence, sentenceFor } from './long-chain-sentence.ts';
import { type PulledPiece, usablePieces } from './piece.ts';
import { posteriorMethod } from './posterior.ts';
import { type PriorFreeForce, priorFreeForces } from './prior-free-bound.ts';
import { type ShapePriors, tradePriors } from './shape-prior.ts';
import { likelihoodMethod } from './weibull-fit.ts';
import { type WeibullPlot, weibullPlot } from './weibull-plot.ts';

export interface LongChainAsked {
  readonly pieces: readonly PulledPiece[];
  /** Length that one link adds to the chain: its inside length. */
  readonly pitch_mm: number;
  readonly lengths_m: readonly number[];
  /** Of every bound, above one half and below 1; 0.9 is usual. */
  readonly confidence: number;
  /** Defaults to `tradePriors`. */
  readonly prior?: ShapePriors;
  /** Of the bootstrap. */
  readonly seed: number;
  /** Modes to be bounded even though no piece broke in them, such as 'weld'. */
  readonly modes?: readonly string[];
  /** Forces, such as a proof or a breaking force, for which the chance of holding is wanted. */
  readonly forces_kN?: readonly number[];
  /** Of the bootstrap; 0 leaves it out. Defaults to 1000. */
  readonly resamples?: number;
}

/** Mean and scatter of the pieces as pulled, by their number of links; "at least" pulls counted but in no mean. */
export interface PulledLength {
  readonly links: number;
  readonly broke: number;
  readonly atLeast: number;
  readonly mean_kN: number | null;
  readonly cov_pct: number | null;
}

export interface LongChainLength extends ChainLength {
  readonly reach: DataReach;
  readonly sentence: string;
}

export interface LongChainFinding {
  readonly method: string;
  readonly inputs: {
    readonly pieces: number;
    readonly breaks: number;
    readonly atLeast: number;
    readonly linksPulled: number;
    readonly pitch_mm: number;
    readonly confidence: number;
    readonly seed: number;
    readonly resamples: number;
  };
  readonly modes: readonly BreakModeFinding[];
  /** Modes that were looked for and not seen, with what bounds them. */
  readonly unseen: readonly BreakModeFinding[];
  readonly lengths: readonly LongChainLength[];
  /** From one link to 500 m, evenly in the logarithm. */
  readonly curve: readonly ChainLength[];
  readonly pulled: readonly PulledLength[];
  readonly plots: readonly WeibullPlot[];
  /** The loudest of the warnings of the lengths asked for. */
  readonly warning: string | null;
  readonly doubts: readonly string[];
  readonly converged: boolean;
  readonly sentence: string;
}

const CURVE_END_M = 500;
const CURVE_POINTS = 33;
const RESAMPLES = 1000;

/**
 * What short pieces say of long chain: survival, and the force that 95 % and 99 % of chains hold, bounded with `confidence`; the mode that
 * will govern; a curve from one link to 500 m. The least over the links breaks the piece, a break in one mode is "at least" for the others.
 * The bound is Bayesian (two breaks do not measure a shape); beside it stands what the pulls say without a prior.
 * Throws RangeError for a pitch, length, confidence, link count or force that cannot be meant. Without pieces the lists are empty and a doubt says why.
 */
export function longChain(asked: LongChainAsked): LongChainFinding {
  requireSense(asked);
  const { usable, atZero } = usablePieces(asked.pieces);
  if (usable.length === 0) return nothingPulled(asked, atZero);
  const modes = breakModes(usable, asked.prior ?? tradePriors, asked.modes ?? []);
  const lengths = chainLengths(asked, usable, modes);
  const findings = modes.seen.map(({ finding }) => finding);
  const unseen = modes.unseen.map(({ finding }) => finding);
  const longest = linksIn(CURVE_END_M, asked.pitch_mm);
  return {
    method: `${posteriorMethod}. Beside it: ${likelihoodMethod}; ${bootstrapMethod}`,
    inputs: inputsOf(asked, usable),
    modes: findings,
    unseen,
    lengths,
    curve: curveOf(asked, modes, longest),
    pulled: pulledLengths(usable),
    plots: modes.seen.map((mode) => weibullPlot(usable, mode, longest)),
    warning: loudest(lengths),
    doubts: campaignDoubts(usable, modes, { pitch_mm: asked.pitch_mm, atZero }),
    converged: findings.every((mode) => mode.likelihood?.converged ?? true),
    sentence: longChainSentence({ lengths, modes: findings, unseen, confidence: asked.confidence }),
  };
}

function requireSense({ pitch_mm, lengths_m, confidence, forces_kN = [] }: LongChainAsked): void {
  if (!(pitch_mm > 0 && Number.isFinite(pitch_mm))) throw new RangeError('a pitch is above 0 mm');
  if (!(confidence > 0.5 && confidence < 1)) throw new RangeError('the confidence of a bound lies between 0.5 and 1');
  if (![...lengths_m, ...forces_kN].every((value) => value > 0 && Number.isFinite(value))) {
    throw new RangeError('lengths and forces asked for are above 0');
  }
}

function inputsOf(asked: LongChainAsked, pieces: readonly PulledPiece[]): LongChainFinding['inputs'] {
  const atLeast = pieces.filter((piece) => piece.isAtLeast).length;
  return {
    pieces: pieces.length,
    breaks: pieces.length - atLeast,
    atLeast,
    linksPulled: pieces.reduce((sum, piece) => sum + piece.links, 0),
    pitch_mm: asked.pitch_mm,
    confidence: asked.confidence,
    seed: asked.seed,
    resamples: asked.resamples ?? RESAMPLES,
  };
}

function chainLengths(asked: LongChainAsked, pieces: readonly PulledPiece[], modes: BreakModes): LongChainLength[] {
  const { confidence, seed, forces_kN = [], resamples = RESAMPLES } = asked;
  const wanted = asked.lengths_m.map((length_m) => ({ length_m, links: linksIn(length_m, asked.pitch_mm) }));
  const points = wanted.flatMap(({ links }) => exceedances.map((survival) => ({ links, survival })));
  const plan = { pieces, modes: modes.seen, asked: points, confidence, resamples, seed };
  const priorFree: readonly PriorFreeForce[] | null = resamples > 0 ? priorFreeForces(plan) : null;
  const each = exceedances.length;
  return wanted.map((length, k) => {
    const own = priorFree?.slice(k * each, (k + 1) * each) ?? null;
    const chain = chainLength(modes, { ...length, confidence, forces_kN, priorFree: own });
    const findings = modes.seen.map(({ finding }) => finding);
    return { ...chain, reach: dataReach(pieces, findings, chain), sentence: sentenceFor(chain, confidence) };
  });
}

function curveOf(asked: LongChainAsked, modes: BreakModes, longest: number): ChainLength[] {
  const links = Array.from({ length: CURVE_POINTS }, (_, k) => Math.round(longest ** (k / (CURVE_POINTS - 1))));
  return [...new Set(links)].map((count) =>
    chainLength(modes, {
      length_m: (count * asked.pitch_mm) / 1000,
      links: count,
      confidence: asked.confidence,
      forces_kN: [],
      priorFree: null,
    }),
  );
}

function pulledLengths(pieces: readonly PulledPiece[]): PulledLength[] {
  const lengths = [...new Set(pieces.map((piece) => piece.links))].sort((a, b) => a - b);
  return lengths.map((links) => {
    const alike = pieces.filter((piece) => piece.links === links);
    const broken = alike.filter((piece) => !piece.isAtLeast);
    const { mean, cov_pct } = summarise(broken.map((piece) => piece.force_kN));
    return { links, broke: broken.length, atLeast: alike.length - broken.length, mean_kN: mean, cov_pct };
  });
}

const order = { prior: 0, form: 1, pieces: 2 } as const;

function loudest(lengths: readonly LongChainLength[]): string | null {
  const warned = lengths.filter(({ reach }) => reach.warning !== null);
  const sorted = warned.toSorted((a, b) => order[a.reach.restsOn] - order[b.reach.restsOn] || b.links - a.links);
  return sorted[0]?.reach.warning ?? null;
}

function nothingPulled(asked: LongChainAsked, atZero: number): LongChainFinding {
  const why = atZero > 0 ? 'Every pull has a force of zero' : 'No piece was pulled';
  return {
    method: posteriorMethod,
    inputs: inputsOf(asked, []),
    modes: [],
    unseen: [],
    lengths: [],
    curve: [],
    pulled: [],
    plots: [],
    warning: `${why}: nothing can be said of any length.`,
    doubts: [`${why}.`],
    converged: true,
    sentence: `${why}: nothing can be said of any length.`,
  };
}
