import { roundDownR40 } from './preferred-number.ts';

/** Standard gravity, m/s2 (exact by definition, CGPM 1901). Tonnes-force to kilonewtons. */
export const standardGravity_m_per_s2 = 9.80665;

/**
 * Steel area of a link: both legs, each a circle of the nominal diameter, 2 pi/4 d^2, in mm2.
 *
 * @param size_mm nominal diameter of the bar, above 0
 * Source: ASTM A413/A413M, A391/A391M scope (grade on two bar areas); rulebook formula `crossSections`.
 */
export function nominalArea_mm2(size_mm: number): number {
  return (2 * Math.PI * size_mm * size_mm) / 4;
}

/**
 * Breaking force at a mean stress over both legs, in kN: F = sigma * 2 * pi/4 * d^2 / 1000.
 *
 * @param stress_N_per_mm2 mean stress at the minimum breaking force: 300 for grade 30, 800 for grade 8 (80)
 * @param size_mm nominal diameter
 * Source: definitions of EN 818-1 and ISO 1834 as restated on public pages; rulebook formula `breakingForce`.
 */
export function breakingForce_kN(stress_N_per_mm2: number, size_mm: number): number {
  return (stress_N_per_mm2 * nominalArea_mm2(size_mm)) / 1000;
}

/**
 * Mean stress over both legs under a force, in N/mm2.
 *
 * @param force_kN tensile force on the chain
 * @param over a nominal size in mm, or the steel area of both legs in mm2 where it was measured
 * Source: rulebook formula `meanStress`.
 */
export function meanStress_N_per_mm2(
  force_kN: number,
  over: { readonly size_mm: number } | { readonly area_mm2: number },
): number {
  const area_mm2 = 'area_mm2' in over ? over.area_mm2 : nominalArea_mm2(over.size_mm);
  return (force_kN * 1000) / area_mm2;
}

/**
 * Grade number a breaking force amounts to on a nominal size: mean stress at breaking divided by ten.
 * Source: ASTM A413/A413M, A391/A391M and A973/A973M scope, grade = MBF / (0.005 pi d^2), kN and mm.
 */
export function gradeOf(force_kN: number, size_mm: number): number {
  return meanStress_N_per_mm2(force_kN, { size_mm }) / 10;
}

/**
 * Working load limit of lifting chain in tonnes: a quarter of the breaking force, rounded down to R40.
 *
 * @param breakingForce_kN unrounded breaking force
 * Source: a pattern found in the published tables (it gives all 17 grade 4 and 17 grade 8 values), not the words of a
 * standard.
 */
export function workingLoadLimitLifting_t(breakingForce_kN: number): number {
  return roundDownR40(breakingForce_kN / (4 * standardGravity_m_per_s2));
}

/**
 * Breaking or proof force of stud-link and offshore mooring chain in kN: k d^2 (44 - 0.08 d).
 *
 * @param coefficient k of the grade, kN and mm
 * @param size_mm nominal diameter; the formula holds for the sizes of the rules (11 to about 160 mm)
 * Source: IACS UR W18 and W22; rulebook rules `load`.
 */
export function studLinkLoad_kN(coefficient: number, size_mm: number): number {
  return coefficient * size_mm * size_mm * (44 - 0.08 * size_mm);
}
