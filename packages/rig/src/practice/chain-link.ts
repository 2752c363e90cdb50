import type { Random } from './random.ts';

export type BreakPosition = 'crown' | 'shank' | 'weld' | 'beside weld' | 'in grip';

/**
 * The short length of bar that gives way first in a link. It holds until its strength is reached, then draws out over
 * `travel_mm` while its resistance falls by `softening` of itself, and parts.
 */
export interface WeakZone {
  readonly position: BreakPosition;
  readonly strength_kN: number;
  readonly travel_mm: number;
  readonly softening: number;
}

/** One link as it truly is; what the calliper and the rig say of it is drawn elsewhere. */
export interface Link {
  readonly diameter_mm: number;
  readonly ovality_mm: number;
  readonly weldDiameter_mm: number;
  readonly pitch_mm: number;
  readonly innerWidth_mm: number;
  readonly stiffness_kN_per_mm: number;
  /** Force the whole link could take if it had no weak zone. */
  readonly bulkStrength_kN: number;
  /** Plastic elongation, as a share of the pitch, at which the bulk would reach that force. */
  readonly uniformElongation: number;
  readonly zone: WeakZone;
}

/** What a maker's steel, bending and welding give on average, with their scatter from link to link (relative). */
export interface LinkMaking {
  readonly diameter_mm: number;
  readonly diameterScatter_mm: number;
  readonly weldUpset_mm: number;
  readonly pitch_mm: number;
  readonly innerWidth_mm: number;
  /** Mean stress over both legs at which the bulk gives way, N/mm2. */
  readonly barStress_N_per_mm2: number;
  readonly barScatter: number;
  readonly uniformElongation: number;
  /** Share of welds made badly. */
  readonly faultyWelds: number;
}

const youngsModulus_kN_per_mm2 = 205;

/** Stiffness of an open link with a pitch of 3 d, from a curved-beam model of the link: k = 0.103 E d. */
export function linkStiffness_kN_per_mm(diameter_mm: number): number {
  return 0.103 * youngsModulus_kN_per_mm2 * diameter_mm;
}

/**
 * Force at which the bulk of a link flows at the reference rate, after the plastic strain given. The exponentials make
 * the rounded knee (fibres of the bent crown yield one after another), the last term the long climb while the legs
 * draw together and the steel hardens. The shares are chosen, not measured: they put the knee at 0.5 to 0.7 of the
 * maximum, where common practice expects it.
 */
export function bulkResistance_kN(link: Link, plasticStrain: number): number {
  const left = Math.max(0, 1 - plasticStrain / link.uniformElongation);
  const knee = 0.33 + 0.13 * (1 - Math.exp(-plasticStrain / 0.002)) + 0.14 * (1 - Math.exp(-plasticStrain / 0.014));
  return link.bulkStrength_kN * (knee + 0.4 * (1 - left ** 1.6));
}

/** Draws one link. `level` is the strength of its piece relative to the product: neighbours share heat and setting. */
export function drawLink(making: LinkMaking, level: number, random: Random): Link {
  const diameter_mm = random.normal(making.diameter_mm, making.diameterScatter_mm);
  const area_mm2 = 2 * (Math.PI / 4) * diameter_mm ** 2;
  const bulk = (area_mm2 * making.barStress_N_per_mm2 * level * random.normal(1, making.barScatter)) / 1000;
  return {
    diameter_mm,
    ovality_mm: Math.abs(random.normal(0, 0.012 * making.diameter_mm ** 0.5)),
    weldDiameter_mm: diameter_mm + random.normal(making.weldUpset_mm, 0.06),
    pitch_mm: random.normal(making.pitch_mm, 0.006 * making.pitch_mm),
    innerWidth_mm: random.normal(making.innerWidth_mm, 0.012 * making.innerWidth_mm),
    stiffness_kN_per_mm: linkStiffness_kN_per_mm(diameter_mm) * random.normal(1, 0.02),
    bulkStrength_kN: bulk,
    uniformElongation: making.uniformElongation * random.normal(1, 0.05),
    zone: weakestZone(bulk, making, random),
  };
}

/** Each place on a link has a strength of its own; the least of them decides where the link would part. */
function weakestZone(bulk_kN: number, making: LinkMaking, random: Random): WeakZone {
  const bar = making.barScatter * 0.6;
  const faulty = random.chance(making.faultyWelds);
  const unfused = random.chance(0.6);
  const zones: [WeakZone, ...WeakZone[]] = [
    ductile('crown', bulk_kN * random.normal(0.988, bar), random),
    ductile('shank', bulk_kN * random.normal(0.988, bar), random),
    {
      position: 'weld',
      strength_kN: bulk_kN * (faulty && unfused ? random.normal(0.925, 0.012) : random.normal(1.1, 0.03)),
      travel_mm: random.between(0.02, 0.04),
      softening: 0.004,
    },
    {
      position: 'beside weld',
      strength_kN: bulk_kN * (faulty && !unfused ? random.normal(0.935, 0.012) : random.normal(1.06, 0.025)),
      travel_mm: random.between(0.2, 0.35),
      softening: random.between(0.012, 0.022),
    },
  ];
  return zones.reduce((least, zone) => (zone.strength_kN < least.strength_kN ? zone : least));
}

function ductile(position: BreakPosition, strength_kN: number, random: Random): WeakZone {
  return { position, strength_kN, travel_mm: random.between(0.55, 1.1), softening: random.between(0.03, 0.07) };
}
