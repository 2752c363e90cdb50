import type { Coarse } from './coarse.ts';
import type { Elastic } from './elastic.ts';

/**
 * Knee by the offset method: the force at which the record crosses a line parallel to the elastic one, moved by `offset_mm` of travel (offset % of
 * the gauge length). The crossing must hold for three points, so that noise does not make it; it is interpolated between points. ISO
 * 6892-1, proof strength, plastic extension (Rp); ASTM E8/E8M, offset method. Null when the record does not cross.
 */
export function findKnee(coarse: Coarse, elastic: Elastic, offset_mm: number): number | null {
  const { force_kN, travel_mm } = coarse;
  const below = (i: number): number =>
    elastic.stiffness_kN_per_mm * ((travel_mm[i] as number) - elastic.origin_mm - offset_mm) - (force_kN[i] as number);
  for (let i = Math.max(1, elastic.from); i < force_kN.length; i++) {
    if (below(i) < 0) continue;
    const holds = [1, 2].every((k) => i + k >= force_kN.length || below(i + k) >= 0);
    if (!holds) continue;
    const share = below(i - 1) < 0 ? below(i - 1) / (below(i - 1) - below(i)) : 1;
    return (force_kN[i - 1] as number) + share * ((force_kN[i] as number) - (force_kN[i - 1] as number));
  }
  return null;
}
