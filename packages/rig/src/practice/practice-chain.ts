import { drawLink, type LinkMaking, type WeakZone } from './chain-link.ts';
import type { Chain } from './chain-pull.ts';
import type { PracticeChain, PracticeOptions, PracticeRig } from './practice-options.ts';
import { practiceStream } from './random.ts';

/** A chain drawn for a practice pull, with the strength that will decide it. */
export interface DrawnChain {
  readonly chain: Chain;
  readonly weakestStrength_kN: number;
}

/** Force at which a link of this chain gives way on average; what an operator would expect. */
export function expectedStrength_kN(chain: PracticeChain): number {
  return (2 * (Math.PI / 4) * (chain.size_mm ?? 8) ** 2 * (chain.strength_N_per_mm2 ?? 460)) / 1000;
}

/** Sum of the pitches, by the nominal size. */
export function nominalLength_mm(chain: PracticeChain): number {
  return (chain.links ?? 5) * (chain.pitch_mm ?? 3 * (chain.size_mm ?? 8));
}

/** The least of 10, 20, 50, 100 ... kN that leaves room above the expected strength. */
export function rangeFor_kN(chain: PracticeChain): number {
  const wanted = 1.5 * expectedStrength_kN(chain);
  const decade = 10 ** Math.floor(Math.log10(wanted));
  return decade * ([1, 2, 5].find((step) => step * decade >= wanted) ?? 10);
}

/** Draws the links one after another, so that a longer chain of one seed begins with the links of a shorter one. */
export function drawChain(options: PracticeOptions): DrawnChain {
  const chain = options.chain ?? {};
  const random = practiceStream(options.seed, 'links');
  const links = Array.from({ length: chain.links ?? 5 }, () => drawLink(makingOf(chain), 1, random));
  const leastLink_kN = Math.min(...links.map((link) => link.zone.strength_kN));
  const gripZone = gripZoneOf(chain, leastLink_kN);
  const weakestStrength_kN = Math.min(leastLink_kN, gripZone?.strength_kN ?? Number.POSITIVE_INFINITY);
  const jumps = chain.jumps ?? seatings(options.seed);
  const size_mm = chain.size_mm ?? 8;
  return {
    weakestStrength_kN,
    chain: {
      links,
      gripZone,
      slack_mm: chain.slack_mm ?? 3,
      bedding_mm: 0.035 * size_mm * (links.length + 1) * 0.8,
      bedding_kN: 0.045 * weakestStrength_kN,
      compliance_mm_per_kN: complianceOf(options.rig ?? {}),
      jumps: jumps.map(({ kind, share, by_mm }) => ({ kind, at_kN: share * weakestStrength_kN, by_mm })),
    },
  };
}

function complianceOf(rig: PracticeRig): number {
  return rig.compliance_mm_per_kN ?? 0.011;
}

/** Scatters other than that of the strength are those of ordinary making: chosen, not measured. */
function makingOf(chain: PracticeChain): LinkMaking {
  const size_mm = chain.size_mm ?? 8;
  return {
    diameter_mm: size_mm,
    diameterScatter_mm: 0.0015 * size_mm,
    weldUpset_mm: 0.044 * size_mm,
    pitch_mm: chain.pitch_mm ?? 3 * size_mm,
    innerWidth_mm: 1.37 * size_mm,
    barStress_N_per_mm2: chain.strength_N_per_mm2 ?? 460,
    barScatter: (chain.spread_pct ?? 1.5) / 100,
    uniformElongation: (chain.uniformElongation_pct ?? 30) / 100,
    faultyWelds: chain.weldShare ?? 0.05,
  };
}

function gripZoneOf(chain: PracticeChain, leastLink_kN: number): WeakZone | null {
  const share = chain.gripStrength ?? null;
  if (share === null) return null;
  return { position: 'in grip', strength_kN: leastLink_kN * share, travel_mm: 0.25, softening: 0.02 };
}

function seatings(seed: number) {
  const random = practiceStream(seed, 'seatings');
  return Array.from({ length: 2 }, () => ({
    kind: 'seating' as const,
    share: random.between(0.04, 0.2),
    by_mm: random.between(0.015, 0.045),
  }));
}
