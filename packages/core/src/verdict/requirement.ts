import { noncentralTQuantile, normalDensity, normalQuantile } from '../statistics/distribution/index.ts';
import { summarise } from '../statistics/summary.ts';
import { budget } from '../uncertainty/budget.ts';
import type { ConformityRule } from './acceptance-limit.ts';
import { type ConformityLimits, conformanceProbability } from './conformance-probability.ts';
import { type ConformityDecision, decideConformity } from './conformity.ts';
import { percent } from './conformity-sentence.ts';
import { standingOf } from './judge.ts';
import { evenEdges, panelIntegral } from './panel-integral.ts';
import type { Verdict } from './verdict.ts';

/** A requirement that every piece must meet. */
export interface AllPiecesDecision {
  readonly verdict: Verdict;
  /** Chance that all true values conform; null where a piece has none. */
  readonly probability: number | null;
  /** Pieces by verdict. */
  readonly counts: Readonly<Record<Verdict, number>>;
  readonly doubts: readonly string[];
  readonly method: string;
  readonly sentence: string;
}

/**
 * Joins the decisions on single pieces: one failure fails the requirement, else one doubt leaves it inconclusive.
 *
 * The chance that all conform counts the part of the uncertainty that all pieces share (calibration) once: given that common error the
 * pieces are independent, and the product is averaged over it. Without `commonStandardUncertainty` it is the plain product.
 */
export function decideAllPieces(
  decisions: readonly ConformityDecision[],
  commonStandardUncertainty = 0,
): AllPiecesDecision {
  if (!(commonStandardUncertainty >= 0)) throw new RangeError('a standard uncertainty is not below 0');
  const count = (verdict: Verdict) => decisions.filter((decision) => decision.verdict === verdict).length;
  const counts = {
    conforms: count('conforms'),
    'does not conform': count('does not conform'),
    inconclusive: count('inconclusive'),
    'not judged': count('not judged'),
  };
  const verdict = standingOf(decisions.map((decision) => decision.verdict));
  const probability = chanceOfAll(decisions, commonStandardUncertainty);
  const judged = decisions.length - counts['not judged'];
  const chance = probability === null ? '' : ` The chance that all truly conform is ${percent(probability)}.`;
  return {
    verdict,
    probability,
    counts,
    doubts:
      counts['not judged'] === 0 ? [] : [`${counts['not judged']} of ${decisions.length} pieces were not judged.`],
    method: 'Each piece by itself (JCGM 106:2012 7, 8); common error integrated over a normal distribution',
    sentence:
      judged === 0
        ? 'No piece could be judged.'
        : `Of ${judged} pieces judged ${counts.conforms} conform, ${counts['does not conform']} do not and ${counts.inconclusive} stay inconclusive: the requirement on all pieces is ${verdict === 'conforms' ? 'met' : verdict === 'inconclusive' ? 'neither met nor failed' : 'not met'}.${chance}`,
  };
}

function chanceOfAll(decisions: readonly ConformityDecision[], common: number): number | null {
  const pieces = decisions.filter(({ conformance }) => conformance !== null);
  if (pieces.length === 0 || pieces.length < decisions.length) return null;
  if (common === 0) return pieces.reduce((product, { conformance }) => product * (conformance?.probability ?? 0), 1);
  const given = (shift: number) => pieces.reduce((product, piece) => product * shifted(piece, shift, common), 1);
  const cuts = pieces.flatMap(({ value, limits }) =>
    [limits.lower, limits.upper].flatMap((limit) => (limit === null ? [] : [(limit - value.value) / common])),
  );
  const edges = [...evenEdges(-8, 8, 0.5), ...cuts.filter((cut) => Math.abs(cut) < 8)];
  return Math.min(
    1,
    panelIntegral((z) => normalDensity(z) * given(z * common), edges),
  );
}

/** Chance that one piece conforms when the common error is known to be `shift`. */
function shifted({ value, limits }: ConformityDecision, shift: number, common: number): number {
  const own = Math.sqrt(Math.max(0, (value.standardUncertainty ?? 0) ** 2 - common ** 2));
  return conformanceProbability({ value: value.value + shift, standardUncertainty: own }, limits)?.probability ?? 1;
}

export interface SampleRequirement {
  /** Measured values of the pieces, all plain (none "at least"), in one unit. */
  readonly values: readonly number[];
  readonly unit: string;
  readonly limits: ConformityLimits;
  /** Standard uncertainty that all values share and no averaging removes: calibration. */
  readonly commonStandardUncertainty: number;
}

/**
 * Decides a requirement on the mean of the product from a few pieces: u^2 = s^2 / n + common^2, with n - 1 degrees of freedom behind
 * the first part (JCGM 100:2008 G.4), then as for a single value. One piece has no scatter: not judged.
 */
export function decideMean(
  sample: SampleRequirement,
  rule: ConformityRule,
  coverage: { readonly probability: number } | { readonly factor: number } = { probability: 0.95 },
): ConformityDecision {
  const { mean, sd, n } = summarise(sample.values);
  const found = budget({
    quantity: 'mean',
    unit: sample.unit,
    value: mean,
    coverage,
    terms: [
      {
        name: 'scatter of the pieces',
        standardUncertainty: (sd ?? 0) / Math.sqrt(Math.max(1, n)),
        sensitivity: 1,
        degreesOfFreedom: Math.max(1, n - 1),
        distribution: 't',
        source: `standard deviation of ${n} pieces`,
      },
      {
        name: 'calibration, common to all',
        standardUncertainty: sample.commonStandardUncertainty,
        sensitivity: 1,
        degreesOfFreedom: Infinity,
        distribution: 'normal',
        source: 'budgets of the single values',
      },
    ],
    unknown: sd === null ? ['fewer than two pieces show no scatter'] : [],
  });
  const decision = decideConformity(
    {
      value: mean ?? 0,
      unit: sample.unit,
      standardUncertainty: found.combinedStandardUncertainty,
      degreesOfFreedom: found.effectiveDegreesOfFreedom,
      expandedUncertainty: found.expandedUncertainty,
    },
    sample.limits,
    rule,
  );
  if (sd !== null) return decision;
  const reason = `${n === 0 ? 'No piece was' : 'Only one piece was'} measured: nothing is known of the scatter, and so of the mean of others.`;
  return { ...decision, verdict: 'not judged', bounds: null, reason, specificRisk: null, sentence: reason };
}

export interface ToleranceDecision {
  readonly verdict: Verdict;
  /** Share of all pieces that must lie inside the limit, and the confidence of saying so. */
  readonly share: number;
  readonly confidence: number;
  readonly factor: number | null;
  /** With the confidence stated, `share` of all pieces lie above (below) this; null on an open side or without scatter. */
  readonly lowerBound: number | null;
  readonly upperBound: number | null;
  readonly reason: string;
  readonly doubts: readonly string[];
  readonly method: string;
  readonly sentence: string;
}

/**
 * Decides a requirement on a share of all pieces made, by one-sided normal tolerance bounds, mean -/+ k s with k from the noncentral t
 * (ISO 16269-6; NIST/SEMATECH e-Handbook 7.2.6.3), each bound moved outward by the common uncertainty at the same confidence.
 *
 * Conforms when the bound clears the limit; does not conform when even the bound for the opposite statement (that the share is not
 * reached) lies beyond it; else inconclusive. With both limits each side is held against its own bound.
 */
export function decideToleranceBound(
  sample: SampleRequirement,
  plan: { readonly share: number; readonly confidence: number },
): ToleranceDecision {
  const { share, confidence } = plan;
  for (const value of [share, confidence])
    if (!(value > 0.5 && value < 1)) throw new RangeError('share and confidence lie between 1/2 and 1');
  const { mean, sd, n } = summarise(sample.values);
  const open = { share, confidence, method: 'One-sided normal tolerance bound, exact factor (ISO 16269-6)' };
  if (mean === null || sd === null) {
    const reason = `${n === 0 ? 'No piece' : 'A single piece'} says nothing of the scatter: no bound can be given.`;
    return {
      ...open,
      verdict: 'not judged',
      factor: null,
      lowerBound: null,
      upperBound: null,
      reason,
      doubts: [],
      sentence: reason,
    };
  }
  const common = sample.commonStandardUncertainty * normalQuantile(confidence);
  const reach = (at: number) =>
    (noncentralTQuantile(at, n - 1, normalQuantile(share) * Math.sqrt(n)) / Math.sqrt(n)) * sd;
  const [far, near] = [reach(confidence) + common, reach(1 - confidence) - common];
  const { lower, upper } = sample.limits;
  const sides = [
    ...(lower === null ? [] : [sideOf(mean - lower, far, near)]),
    ...(upper === null ? [] : [sideOf(upper - mean, far, near)]),
  ];
  const bounds = { lowerBound: lower === null ? null : mean - far, upperBound: upper === null ? null : mean + far };
  const verdict = standingOf(sides);
  return {
    ...open,
    verdict,
    factor: sd === 0 ? null : (far - common) / sd,
    ...bounds,
    reason: toleranceReason(verdict),
    doubts: [
      'The bound takes the pieces as normally distributed, which few pieces cannot show.',
      ...(sd === 0 ? ['All pieces gave the same value: their scatter is below what was resolved.'] : []),
      ...(lower !== null && upper !== null
        ? ['Each side is judged by itself: the share holds for each limit, not for both together.']
        : []),
    ],
    sentence: toleranceSentence(sample.unit, plan, bounds, verdict),
  };
}

function sideOf(room: number, far: number, near: number): Verdict {
  if (room >= far) return 'conforms';
  return room < near ? 'does not conform' : 'inconclusive';
}

function toleranceReason(verdict: Verdict): string {
  if (verdict === 'conforms') return 'The tolerance bound clears the limit.';
  if (verdict === 'does not conform') return 'The pieces show that the share is not reached.';
  return verdict === 'inconclusive'
    ? 'So few pieces with this scatter can neither show that the share is reached nor that it is not.'
    : 'The specification sets no limit.';
}

function toleranceSentence(
  unit: string,
  { share, confidence }: { readonly share: number; readonly confidence: number },
  { lowerBound, upperBound }: { readonly lowerBound: number | null; readonly upperBound: number | null },
  verdict: Verdict,
): string {
  const figure = (value: number) => `${Number(value.toPrecision(4))} ${unit}`;
  const sides = [
    ...(lowerBound === null ? [] : [`above ${figure(lowerBound)}`]),
    ...(upperBound === null ? [] : [`below ${figure(upperBound)}`]),
  ];
  if (sides.length === 0) return 'The specification sets no limit for a share of the pieces.';
  return `With ${percent(confidence)} confidence, ${percent(share)} of all such pieces lie ${sides.join(', and as many ')}: ${verdict === 'inconclusive' ? 'the requirement is neither met nor failed' : verdict === 'conforms' ? 'the requirement is met' : 'the requirement is not met'}.`;
}
