import { sortedQuantile } from './bootstrap.ts';
import type { BreakMode, BreakModes } from './break-mode.ts';
import { chainForces, type ModeShare } from './chain-law.ts';
import { drawnLogForces, drawnShares, drawnSurvivals } from './joint-draws.ts';
import type { PriorFreeForce } from './prior-free-bound.ts';

/** Shares of chains for which a force is given. */
export const exceedances = [0.95, 0.99] as const;

/** The force that a stated share of chains of one length holds. */
export interface ExceededForce {
  /** Share of chains that hold more. */
  readonly survival: number;
  /** Median of the Bayesian answer; null when nothing broke: there is only a bound. */
  readonly estimate_kN: number | null;
  /** The force is above this with the stated confidence, by the Bayesian fit, over all modes that broke or were asked to be looked for. */
  readonly bound_kN: number;
  /** The same over the modes that broke alone; null when there is no other, or when nothing broke. */
  readonly boundOfSeenModes_kN: number | null;
  /** What the pulls say without a prior of the modes that broke; null when they do not say. */
  readonly priorFree: PriorFreeForce | null;
}

/** Whether a chain holds a stated force. */
export interface HoldingChance {
  readonly force_kN: number;
  /** Median probability; null when nothing broke. */
  readonly estimate: number | null;
  /** The probability is above this with the stated confidence. */
  readonly bound: number;
}

export interface ChainLength {
  readonly length_m: number;
  readonly links: number;
  /** Middle chain: half of the chains hold more. Null when nothing broke. */
  readonly median_kN: number | null;
  readonly medianInterval90_kN: { readonly low: number; readonly high: number } | null;
  readonly mean_kN: number | null;
  readonly cov_pct: number | null;
  readonly exceeded: readonly ExceededForce[];
  /** How breaks of such chains divide among the modes that were seen; the first governs. Empty when nothing broke. */
  readonly shares: readonly ModeShare[];
  readonly holding: readonly HoldingChance[];
}

/** Links in a length of chain: at least one. */
export function linksIn(length_m: number, pitch_mm: number): number {
  return Math.max(1, Math.round((1000 * length_m) / pitch_mm));
}

export interface LengthAsked {
  readonly length_m: number;
  readonly links: number;
  readonly confidence: number;
  readonly forces_kN: readonly number[];
  /** One for each of `exceedances`, or null. */
  readonly priorFree: readonly PriorFreeForce[] | null;
}

/** What the fitted modes say of chains of one length. */
export function chainLength(modes: BreakModes, asked: LengthAsked): ChainLength {
  const { links, confidence } = asked;
  const { seen, unseen } = modes;
  const governing = seen.length > 0 ? seen : unseen;
  const logReference = governing[0]?.record.logReference ?? 0;
  const force = (logForce: number) => Math.exp(logReference + logForce);
  const drawn = (of: readonly BreakMode[], survival: number) =>
    drawnLogForces(
      of.map(({ posterior }) => posterior),
      Math.log(-Math.log(survival) / links),
    );
  const middle = drawn(governing, 0.5);
  const sortedMiddle = Float64Array.from(middle).sort();
  const broke = seen.length > 0;
  const moments = broke
    ? chainForces(
        seen.map(({ finding }) => finding.law),
        links,
      )
    : null;
  return {
    length_m: asked.length_m,
    links,
    median_kN: broke ? force(sortedQuantile(sortedMiddle, 0.5)) : null,
    medianInterval90_kN: broke
      ? { low: force(sortedQuantile(sortedMiddle, 0.05)), high: force(sortedQuantile(sortedMiddle, 0.95)) }
      : null,
    mean_kN: moments?.mean_kN ?? null,
    cov_pct: moments?.cov_pct ?? null,
    exceeded: exceedances.map((survival, k) => {
      const ofSeen = broke ? drawn(seen, survival).sort() : null;
      const ofAll = ofSeen && unseen.length === 0 ? ofSeen : drawn([...seen, ...unseen], survival).sort();
      return {
        survival,
        estimate_kN: ofSeen && force(sortedQuantile(ofSeen, 0.5)),
        bound_kN: force(sortedQuantile(ofAll, 1 - confidence)),
        boundOfSeenModes_kN: ofSeen && unseen.length > 0 ? force(sortedQuantile(ofSeen, 1 - confidence)) : null,
        priorFree: asked.priorFree?.[k] ?? null,
      };
    }),
    shares: broke
      ? drawnShares(
          seen.map(({ posterior }) => posterior),
          middle,
        )
      : [],
    holding: asked.forces_kN.map((force_kN) => holdingChance(modes, force_kN, asked)),
  };
}

function holdingChance({ seen, unseen }: BreakModes, force_kN: number, asked: LengthAsked): HoldingChance {
  const all = [...seen, ...unseen];
  const logForce = Math.log(force_kN) - (all[0]?.record.logReference ?? 0);
  const drawn = (modes: readonly BreakMode[]) =>
    drawnSurvivals(
      modes.map(({ posterior }) => posterior),
      asked.links,
      logForce,
    ).sort();
  return {
    force_kN,
    estimate: seen.length > 0 ? sortedQuantile(drawn(seen), 0.5) : null,
    bound: sortedQuantile(drawn(all), 1 - asked.confidence),
  };
}
