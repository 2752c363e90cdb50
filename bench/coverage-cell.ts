import { studentQuantile } from '../packages/core/src/statistics/distribution/index.ts';
import { oneSidedToleranceFactor } from '../packages/core/src/statistics/few-pieces/index.ts';
import { seededRandom } from '../packages/core/src/statistics/random.ts';
import { summarise } from '../packages/core/src/statistics/summary.ts';
import { sortedQuantile } from '../packages/core/src/statistics/weakest-link/bootstrap.ts';
import { type BreakMode, breakModes } from '../packages/core/src/statistics/weakest-link/break-mode.ts';
import {
  chainForces,
  type ModeLaw,
  type PulledPiece,
  pieceQuantile,
  tradePriors,
} from '../packages/core/src/statistics/weakest-link/index.ts';
import { drawnLogForces } from '../packages/core/src/statistics/weakest-link/joint-draws.ts';
import { priorFreeForces } from '../packages/core/src/statistics/weakest-link/prior-free-bound.ts';
import { type CoverageCell, drawCampaign, pieceLinks, productLaws } from './coverage-truth.ts';

/** Links of the long chain: 100 m at a pitch of 24 mm. */
const chainLinks = 4167;
const survival = 0.95;
const confidence = 0.9;
const resamples = 500;

/** How often a statement was true, among the campaigns in which it could be made. */
export interface Tally {
  readonly held: number;
  readonly made: number;
}

export type Statement = (typeof statements)[number]['name'];

/** What is checked, with the share of campaigns in which it should be true. */
export const statements = [
  { name: 'mean, t', nominal: 0.95 },
  { name: 'shape, profile', nominal: 0.95 },
  { name: 'shape, Wald', nominal: 0.95 },
  { name: 'shape, Bayes', nominal: 0.9 },
  { name: 'tolerance bound, normal', nominal: 0.9 },
  { name: 'tolerance bound, Weibull', nominal: 0.9 },
  { name: 'chain', nominal: 0.9 },
  { name: 'chain, seen modes', nominal: 0.9 },
  { name: 'chain, bootstrap', nominal: 0.9 },
  { name: 'chain, profile', nominal: 0.9 },
] as const;

export interface CellOutcome {
  readonly cell: CoverageCell;
  readonly tallies: Readonly<Record<Statement, Tally>>;
  /** Median of bound over true force, for the two Bayesian bounds (all modes, those seen) and the bootstrap. */
  readonly sharpness: { readonly all: number; readonly seen: number; readonly bootstrap: number | null };
}

interface Truth {
  readonly laws: readonly ModeLaw[];
  readonly mean_kN: number;
  readonly fivePercent_kN: number;
  readonly chain_kN: number;
}

/** Simulates `campaigns` campaigns of one product and counts how often each statement held. */
export function coverCell(cell: CoverageCell, campaigns: number, seed: number): CellOutcome {
  const laws = productLaws(cell);
  const truth = {
    laws,
    mean_kN: chainForces(laws, pieceLinks)?.mean_kN ?? 0,
    fivePercent_kN: pieceQuantile(laws, pieceLinks, survival) ?? 0,
    chain_kN: pieceQuantile(laws, chainLinks, survival) ?? 0,
  };
  const random = seededRandom(seed);
  const counts = Object.fromEntries(statements.map(({ name }) => [name, { held: 0, made: 0 }])) as Record<
    Statement,
    { held: number; made: number }
  >; // the names are those of `statements`
  const ratios = { seen: [] as number[], all: [] as number[], bootstrap: [] as number[] };
  for (let k = 0; k < campaigns; k++) {
    const said = statementsOf(drawCampaign(laws, cell.pieces, random), truth, random.integer(2 ** 31));
    for (const { name } of statements) {
      const held = said.held[name];
      if (held === null) continue;
      counts[name].made++;
      if (held) counts[name].held++;
    }
    ratios.seen.push(said.seen / truth.chain_kN);
    ratios.all.push(said.all / truth.chain_kN);
    if (said.bootstrap !== null) ratios.bootstrap.push(said.bootstrap / truth.chain_kN);
  }
  const median = (values: number[]) => sortedQuantile(Float64Array.from(values).sort(), 0.5);
  return {
    cell,
    tallies: counts,
    sharpness: {
      seen: median(ratios.seen),
      all: median(ratios.all),
      bootstrap: ratios.bootstrap.length > 0 ? median(ratios.bootstrap) : null,
    },
  };
}

interface Said {
  readonly held: Readonly<Record<Statement, boolean | null>>;
  readonly seen: number;
  readonly all: number;
  readonly bootstrap: number | null;
}

/** What one campaign leads to, and whether it is true. */
function statementsOf(pieces: readonly PulledPiece[], truth: Truth, seed: number): Said {
  const modes = breakModes(pieces, tradePriors, ['bar', 'weld']);
  const bar = modes.seen.find(({ finding }) => finding.mode === 'bar');
  const shape = truth.laws[0]?.shape ?? 0;
  const within = (interval: { low: number; high: number | null } | null | undefined) =>
    interval ? interval.low <= shape && (interval.high === null || shape <= interval.high) : null;
  // Without a prior nothing can be said of a mode that was not seen: such campaigns make no statement.
  const allSeen = truth.laws.every(({ mode }) => modes.seen.some(({ finding }) => finding.mode === mode));
  const free = priorFreeForces({
    pieces,
    modes: modes.seen,
    asked: [{ links: chainLinks, survival }],
    confidence,
    resamples,
    seed,
  })?.[0];
  const seen = lowerBound(modes.seen, chainLinks);
  const all = lowerBound([...modes.seen, ...modes.unseen], chainLinks);
  const pieceBound = lowerBound(modes.seen, pieceLinks);
  const bootstrap = allSeen ? (free?.bootstrapBound_kN ?? null) : null;
  const profile = allSeen ? (free?.profileBound_kN ?? null) : null;
  return {
    held: {
      ...normalStatements(pieces, truth),
      'shape, profile': within(bar?.finding.shapeProfile95),
      'shape, Wald': within(bar?.finding.shapeWald95),
      'shape, Bayes': within(bar?.finding.shapeInterval90),
      'chain, seen modes': seen <= truth.chain_kN,
      'tolerance bound, Weibull': pieceBound <= truth.fivePercent_kN,
      chain: all <= truth.chain_kN,
      'chain, bootstrap': bootstrap === null ? null : bootstrap <= truth.chain_kN,
      'chain, profile': profile === null ? null : profile <= truth.chain_kN,
    },
    seen,
    all,
    bootstrap,
  };
}

/** Force that 95 % of pieces of `links` links hold, with 90 % confidence, by the Bayesian fit of `modes`. */
function lowerBound(modes: readonly BreakMode[], links: number): number {
  const posteriors = modes.map(({ posterior }) => posterior);
  const forces = drawnLogForces(posteriors, Math.log(-Math.log(survival) / links)).sort();
  return Math.exp((modes[0]?.record.logReference ?? 0) + sortedQuantile(forces, 1 - confidence));
}

/** Student's interval of the mean and the normal one-sided tolerance bound, as for any product. */
function normalStatements(pieces: readonly PulledPiece[], truth: Truth) {
  const n = pieces.length;
  const { mean, sd } = summarise(pieces.map((piece) => piece.force_kN));
  const spread = (sd ?? 0) / Math.sqrt(n);
  return {
    'mean, t': Math.abs((mean ?? 0) - truth.mean_kN) <= factors(n).t * spread,
    'tolerance bound, normal': (mean ?? 0) - factors(n).k * (sd ?? 0) <= truth.fivePercent_kN,
  };
}

const kept = new Map<number, { readonly t: number; readonly k: number }>();

function factors(n: number): { readonly t: number; readonly k: number } {
  const known = kept.get(n);
  if (known) return known;
  const made = {
    t: studentQuantile(0.975, n - 1),
    k: oneSidedToleranceFactor({ n, coverage: survival, confidence }),
  };
  kept.set(n, made);
  return made;
}
