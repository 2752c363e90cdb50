import type { PieceFinding, ProductDecision, ProductInference } from '@provinghouse/contract';
import {
  breakModeOf,
  characteristicValue,
  type DecisionRule,
  decideMean,
  decideToleranceBound,
  grubbsTest,
  type LongChainFinding,
  longChain,
  meanInterval,
  type PulledPiece,
  type Specification,
  shapiroWilk,
  toleranceBound,
} from '@provinghouse/core';

/** The seed behind every drawn number of a finding, so that anybody draws the same. */
export const seed = 1;

/** What the counted forces are held against. */
export interface ForceRequirement {
  /** Minimum breaking force; null where the specification sets none. */
  readonly minimum_kN: number | null;
  readonly rule: DecisionRule;
  /** Standard uncertainty that all forces share: calibration of the rig. */
  readonly common_kN: number;
}

/** What the counted breaking forces of a product let one infer. Pulls known only as "at least" are no part of it. */
export function inferFrom(forces_kN: readonly number[], requirement: ForceRequirement): ProductInference {
  const few = { values: forces_kN };
  const bound = toleranceBound({ ...few, coverage: 0.95, confidence: 0.95, side: 'lower', unit: 'kN' });
  return {
    mean: meanInterval(few, { confidence: 0.95, unit: 'kN' }),
    tolerance: bound.lower === null ? bound : { ...bound, doubts: [...bound.doubts, normalBoundIsHigh] },
    characteristic: characteristicValue(few, { unit: 'kN' }),
    outlier: grubbsTest(forces_kN, { significance: 0.05, end: 'either', unit: 'kN' }),
    normality: shapiroWilk(forces_kN),
    ...decisionsOn(forces_kN, requirement),
  };
}

/** The product as a whole against its minimum: its mean, and nearly all of its pieces. */
function decisionsOn(
  values: readonly number[],
  { minimum_kN, rule, common_kN }: ForceRequirement,
): Pick<ProductInference, 'meanDecision' | 'boundDecision'> {
  if (minimum_kN === null) return { meanDecision: null, boundDecision: null };
  const sample = {
    values,
    unit: 'kN',
    limits: { lower: minimum_kN, upper: null },
    commonStandardUncertainty: common_kN,
  };
  const mean = decideMean(sample, { kind: rule });
  const bound = decideToleranceBound(sample, { share: 0.95, confidence: 0.95 });
  return {
    meanDecision: told(mean),
    boundDecision: told({
      ...bound,
      doubts: bound.lowerBound === null ? bound.doubts : [...bound.doubts, normalBoundIsHigh],
    }),
  };
}

function told({ verdict, sentence, method, doubts }: ProductDecision): ProductDecision {
  return { verdict, sentence, method, doubts };
}

/** docs/reference/coverage.md, column "tolerance bound, normal": the simulation behind this sentence. */
const normalBoundIsHigh =
  'Forces of pieces that break at their weakest link have a longer tail downwards than the normal law: in simulation a bound of this kind held in 54 to 84 of 100 campaigns instead of 90. The bound for a piece by the weakest-link law is the safer one.';

/** Lengths that are asked about: a bridle, a line, a long mooring. */
const lengths_m = [2, 10, 100];

/** Modes looked for even where no piece broke in them: a weld fault is rare, and five links seldom hold one. */
const modes = ['bar', 'weld', 'beside weld'];

/** What the pulled pieces say about a long chain of the product. */
export function longChainOf(pieces: readonly PieceFinding[], specification: Specification): LongChainFinding | null {
  const pulled = pieces.flatMap(pulledPiece);
  if (pulled.length === 0) return null;
  const limits = specification.limits.filter(
    (limit) => limit.quantity === 'breakingForce' || limit.quantity === 'proofForce',
  );
  return longChain({
    pieces: pulled,
    pitch_mm: pitchOf(pieces, specification),
    lengths_m,
    confidence: 0.9,
    seed,
    modes,
    forces_kN: limits.flatMap((limit) => limit.lower ?? []),
    resamples: 0,
  });
}

function pulledPiece(piece: PieceFinding): PulledPiece[] {
  const maximum = piece.pull?.maximum;
  if (!maximum) return [];
  const position = piece.breaks[0]?.position;
  const mode = position === undefined ? null : breakModeOf(position);
  return [{ links: piece.links, force_kN: maximum.value, mode, isAtLeast: maximum.isAtLeast }];
}

/** The mean gauged pitch, else the nominal one. */
function pitchOf(pieces: readonly PieceFinding[], specification: Specification): number {
  const gauged = pieces.flatMap(
    (piece) => piece.gauging?.quantities.find((found) => found.quantity === 'pitch')?.mean_mm ?? [],
  );
  if (gauged.length > 0) return gauged.reduce((sum, pitch) => sum + pitch, 0) / gauged.length;
  const nominal = specification.limits.find((limit) => limit.quantity === 'pitch')?.nominal;
  return nominal ?? 3 * specification.nominalSize_mm;
}
