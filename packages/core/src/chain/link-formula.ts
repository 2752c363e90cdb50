import { nominalArea_mm2 } from './grade-formula.ts';

/** Density of plain carbon steel as handbooks give it, kg/m3 (common practice). */
const steelDensity_kg_per_m3 = 7850;

/**
 * Total ultimate elongation in per cent: the extension at the moment of fracture over the sum of the inside lengths of
 * the free links (links held in the fixtures do not count).
 *
 * @param extensionAtFracture_mm from the toe-corrected origin, machine compliance removed
 * @param sumOfPitches_mm number of free links times pitch, above 0
 * Source: definitions of EN 818-1 as restated on a public page; ASTM chain elongation test.
 */
export function totalUltimateElongation_pct(extensionAtFracture_mm: number, sumOfPitches_mm: number): number {
  return (100 * extensionAtFracture_mm) / sumOfPitches_mm;
}

/**
 * Outside length of `links` links drawn straight, in mm: n p + 2 d.
 * Source: geometry; the five-link length 22 d of stud-link cable is the same identity (5 x 4 d + 2 d).
 */
export function lengthOverLinks_mm(chain: {
  readonly links: number;
  readonly pitch_mm: number;
  readonly size_mm: number;
}): number {
  return chain.links * chain.pitch_mm + 2 * chain.size_mm;
}

/** Stress rate over both legs in N/mm2 per second, from a force rate in kN/s. Source: rulebook formula `stressRate`. */
export function stressRate_N_per_mm2_per_s(forceRate_kN_per_s: number, size_mm: number): number {
  return (forceRate_kN_per_s * 1000) / nominalArea_mm2(size_mm);
}

/** Force rate in kN/s that gives a stress rate in N/mm2 per second over both legs. */
export function forceRate_kN_per_s(stressRate_N_per_mm2_per_s: number, size_mm: number): number {
  return (stressRate_N_per_mm2_per_s * nominalArea_mm2(size_mm)) / 1000;
}

/**
 * Apparent strain rate over the free links, per second: table speed over the sum of their pitches. It holds take-up in
 * the fixtures and the change of link shape; it is not the strain rate of the steel.
 * Source: rulebook formula `apparentStrainRate`.
 */
export function apparentStrainRate_per_s(pull: {
  readonly tableSpeed_mm_per_s: number;
  readonly links: number;
  readonly pitch_mm: number;
}): number {
  return pull.tableSpeed_mm_per_s / (pull.links * pull.pitch_mm);
}

/** What the geometry of a plain link (two straight legs, two half-circles) amounts to. */
export interface LinkGeometry {
  readonly centreline_mm: number;
  readonly surface_mm2: number;
  readonly linkMass_kg: number;
  readonly massPerMetre_kg_per_m: number;
}

/**
 * Centreline, bare surface and mass of a plain link of two straight legs and two half-circles, without weld upset.
 *
 * @param link nominal size, pitch (inside length) and inside width, all in mm; the pitch not below the inside width
 * Source: geometry; it agrees with published masses of DIN 766 and grade 8 chain within 4 %.
 */
export function linkGeometry(link: {
  readonly size_mm: number;
  readonly pitch_mm: number;
  readonly innerWidth_mm: number;
}): LinkGeometry {
  const { size_mm, pitch_mm, innerWidth_mm } = link;
  const centreline_mm = 2 * (pitch_mm - innerWidth_mm) + Math.PI * (innerWidth_mm + size_mm);
  const volume_mm3 = (centreline_mm * nominalArea_mm2(size_mm)) / 2;
  const linkMass_kg = (volume_mm3 * steelDensity_kg_per_m3) / 1e9;
  return {
    centreline_mm,
    surface_mm2: Math.PI * size_mm * centreline_mm,
    linkMass_kg,
    massPerMetre_kg_per_m: (linkMass_kg * 1000) / pitch_mm,
  };
}
