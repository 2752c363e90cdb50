import { normalQuantile } from '../statistics/distribution/index.ts';
import { oneSidedToleranceFactor } from '../statistics/few-pieces/index.ts';
import { summarise } from '../statistics/summary.ts';
import { percent } from './conformity-sentence.ts';
import { standingOf } from './judge.ts';
import type { SampleRequirement } from './mean-requirement.ts';
import type { Verdict } from './verdict.ts';

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
  const reach = (at: number) => oneSidedToleranceFactor({ n, coverage: share, confidence: at }) * sd;
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
