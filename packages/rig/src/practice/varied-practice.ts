import type {
  PracticeChain,
  PracticeJump,
  PracticeOperator,
  PracticeOptions,
  PracticeRig,
} from './practice-options.ts';
import { practiceStream, type Random } from './random.ts';

/**
 * A chain, a rig and an operator drawn from the seed: sizes, lengths, strengths, steels, welds, slips, hesitations and
 * transducers such as a bench may meet. Shares are chosen to cover the ground, not taken from any population.
 */
export function variedPractice(seed: number): PracticeOptions {
  const random = practiceStream(seed, 'varied');
  const chain = variedChain(random);
  return { seed, chain, rig: variedRig(random, chain), valve: variedOperator(random) };
}

function variedChain(random: Random): PracticeChain {
  const size_mm = random.pick([6, 7, 8, 10, 12, 13, 16]);
  return {
    size_mm,
    links: random.pick([1, 3, 5, 5, 7, 11, 21]),
    pitch_mm: size_mm * random.pick([2.75, 3, 3, 3.5, 4]),
    strength_N_per_mm2: random.between(280, 820),
    spread_pct: random.between(0.5, 3.5),
    weldShare: random.pick([0, 0, 0.05, 0.1, 0.3]),
    uniformElongation_pct: random.between(16, 40),
    slack_mm: random.between(0.5, 12),
    gripStrength: random.chance(0.07) ? random.between(0.85, 0.98) : null,
    jumps: variedJumps(random),
  };
}

function variedJumps(random: Random): PracticeJump[] {
  const seatings = Array.from({ length: random.pick([0, 1, 2, 3, 5]) }, () => ({
    kind: 'seating' as const,
    share: random.between(0.03, 0.3),
    by_mm: random.between(0.01, 0.06),
  }));
  const slips = Array.from({ length: random.pick([0, 0, 0, 0, 1, 2]) }, () => ({
    kind: 'grip slip' as const,
    share: random.between(0.3, 0.92),
    by_mm: random.between(0.15, 0.8),
  }));
  const opening = {
    kind: 'weld opening' as const,
    share: random.between(0.7, 0.97),
    by_mm: random.between(0.05, 0.15),
  };
  return [...seatings, ...slips, ...(random.chance(0.1) ? [opening] : [])];
}

function variedRig(random: Random, chain: PracticeChain): PracticeRig {
  const expected_kN = ((Math.PI / 2) * (chain.size_mm ?? 8) ** 2 * (chain.strength_N_per_mm2 ?? 460)) / 1000;
  const range_kN = [50, 100, 200, 500, 1000].find((range) => range > 1.3 * expected_kN) ?? 2000;
  return {
    rangeMaximum_kN: range_kN,
    gainError_pct: random.between(-0.4, 0.4),
    zero_kN: range_kN * random.between(-0.002, 0.003),
    zeroDrift_kN_per_s: range_kN * random.normal(0, 1e-6),
    noise_kN: range_kN * random.between(0.00003, 0.0004),
    resolution_kN: range_kN * random.pick([0.00005, 0.0001, 0.0002]),
    lag_s: random.between(0.001, 0.02),
    compliance_mm_per_kN: random.between(0.004, 0.02),
    hasGauge: random.chance(0.5),
    wander: random.between(0.01, 0.06),
    sag_pct: random.between(3, 20),
    damping: random.between(0.3, 1),
  };
}

function variedOperator(random: Random): PracticeOperator {
  return {
    openFromShare: random.between(0.4, 0.7),
    idle_s: random.between(0.5, 4),
    hesitations: Array.from({ length: random.pick([0, 0, 0, 1, 1, 2]) }, () => ({
      share: random.between(0.2, 0.97),
      lasts_s: random.between(1, 12),
      keeps: random.between(0, 0.4),
    })),
  };
}
