import type { WatchMemory } from './memory.ts';
import { fitTop } from './top-fit.ts';

/** What the forecast goes by, in this order: pure numbers, the same for a small chain and a large one, a quick pull and a slow one. */
export const FEATURES = [
  /** Greatest force so far over the force at the knee. */
  'forceOverKnee',
  /** Travel of the table since loading began (where no table is read: time, here and below) over that at the knee. */
  'travelOverKnee',
  /** Rate of rise now over the elastic one. */
  'rateOverElastic',
  /** Climb since the knee over the force now. */
  'climb',
  /** Of the parabola over the last half since the knee: slope and second derivative, each over the force (per travel and per travel squared, in mm) times the travel since the knee. */
  'slopeOfHalf',
  'bendOfHalf',
  /** How much of its slope the curve would lose over as much travel again: second derivative over slope. */
  'fadeOfHalf',
  /** The same over the last nine tenths since the knee. */
  'slopeOfMost',
  'fadeOfMost',
  /** Growth of the force for a growth of the travel, both as shares. */
  'growth',
  /** Force that an unyielding piece would show by now, over the force. */
  'elasticOverForce',
] as const;

/** Travel since the knee, over that at the knee, before which the hardening cannot be told. */
const SOONEST = 0.5;
const HALF = 0.5;
const MOST = 0.9;
/** Slopes under this share of the force, over the travel since the knee, count as this when something is divided by them. */
const LEAST_SLOPE = 0.01;

function fade(slope: number, bend: number): number {
  return Math.min(6, Math.max(-3, -bend / Math.max(LEAST_SLOPE, slope)));
}

/** The features at a closed block; null before the knee and shortly after, while the table hesitates or a dip is regained. */
export function forecastFeatures(memory: WatchMemory): readonly number[] | null {
  const { kneeForce_kN, kneeTravel, ratio, zero_kN, envelope_kN, travel } = memory;
  const { tangent, elasticRate } = memory;
  if (kneeForce_kN === null || ratio === null || !(kneeTravel > 0)) return null;
  if (tangent === null || elasticRate === null) return null;
  const above = envelope_kN - zero_kN;
  const since = travel - kneeTravel;
  if (!(envelope_kN > kneeForce_kN && since > SOONEST * kneeTravel)) return null;
  const half = fitTop(memory.curve, kneeTravel, HALF);
  const most = fitTop(memory.curve, kneeTravel, MOST);
  if (!half || !most) return null;
  const slope = (half.slope * since) / above;
  const bend = (half.curvature * since * since) / above;
  const slopeOfMost = (most.slope * since) / above;
  const bendOfMost = (most.curvature * since * since) / above;
  return [
    above / (kneeForce_kN - zero_kN),
    travel / kneeTravel,
    ratio,
    (envelope_kN - kneeForce_kN) / above,
    slope,
    bend,
    fade(slope, bend),
    slopeOfMost,
    fade(slopeOfMost, bendOfMost),
    (tangent * travel) / above,
    (elasticRate * travel) / above,
  ];
}
