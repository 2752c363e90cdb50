import { type BootstrapOutcome, bootstrapForces, bootstrapLowerBound } from './bootstrap.ts';
import type { BreakMode } from './break-mode.ts';
import type { PulledPiece } from './piece.ts';
import { quantileProfileInterval } from './profile-interval.ts';

/** What the pulls alone say of a long-chain force, no prior helping. */
export interface PriorFreeForce {
  /** From the maximum-likelihood laws of all modes. */
  readonly estimate_kN: number;
  /** Lower bound by the bootstrap; null when no resample could be used. */
  readonly bootstrapBound_kN: number | null;
  /** Lower bound by the profile likelihood; only when one mode alone broke. For comparison: with few pieces it is too bold (docs/reference/coverage.md). */
  readonly profileBound_kN: number | null;
}

export interface PriorFreePlan {
  readonly pieces: readonly PulledPiece[];
  readonly modes: readonly BreakMode[];
  /** Links and survival of each force asked for. */
  readonly asked: readonly { readonly links: number; readonly survival: number }[];
  readonly confidence: number;
  readonly resamples: number;
  readonly seed: number;
}

/** In the order asked; null, for all alike, when a mode has fewer than two breaks or no finite shape: nothing then bounds it without a prior. */
export function priorFreeForces(plan: PriorFreePlan): readonly PriorFreeForce[] | null {
  const { pieces, modes, asked, confidence } = plan;
  const first = modes[0];
  if (!first || modes.some(({ finding }) => finding.breaks < 2 || finding.likelihood === null)) return null;
  const { logReference } = first.record;
  const outcome: BootstrapOutcome = bootstrapForces({
    links: first.record.links,
    limits: Float64Array.from(pieces, (piece) =>
      piece.isAtLeast ? Math.log(piece.force_kN) - logReference : Number.POSITIVE_INFINITY,
    ),
    shapes: Float64Array.from(modes, ({ finding }) => finding.likelihood?.shape ?? 1),
    logRates: Float64Array.from(modes, ({ finding }) => logRateOf(finding.likelihood, logReference)),
    targets: Float64Array.from(asked, ({ links, survival }) => Math.log(-Math.log(survival) / links)),
    resamples: plan.resamples,
    seed: plan.seed,
  });
  return asked.map(({ links, survival }, k) => {
    const bound = bootstrapLowerBound(outcome, k, confidence);
    const fit = modes.length === 1 ? first.finding.likelihood : null;
    // A one-sided bound with confidence c is the lower end of the two-sided interval with 2c - 1.
    const profile =
      fit && quantileProfileInterval(first.record, fit, { links, survival, confidence: 2 * confidence - 1 });
    return {
      estimate_kN: Math.exp(logReference + (outcome.estimates[k] ?? 0)),
      bootstrapBound_kN: bound === null ? null : Math.exp(logReference + bound),
      profileBound_kN: profile?.low ?? null,
    };
  });
}

function logRateOf(fit: { readonly shape: number; readonly scale_kN: number } | null, logReference: number): number {
  return fit ? fit.shape * (logReference - Math.log(fit.scale_kN)) : 0;
}
