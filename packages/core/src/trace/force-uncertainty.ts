import type { Maximum } from './maximum.ts';
import type { RigFacts } from './options.ts';

/**
 * Standard uncertainty of the maximum force in kN, the root sum of squares (GUM, 5.1.2) of
 * - the rig: indication error within class % of the force, rectangular: class x F / 100 / sqrt 3 (ISO 7500-1 class; GUM 4.3.7),
 * - resolution r: r / (2 sqrt 3) (GUM F.2.2.1), the rig's stated one or the smallest step recorded, whichever is larger,
 * - noise at the maximum and the rise missed between samples (see `findMaximum`).
 * Null when nothing is known: no class and neither noise nor resolution in the record.
 */
export function maximumUncertainty(
  maximum: Maximum,
  rig: RigFacts | undefined,
  recordedStep_kN: number | null,
): number | null {
  const resolution = Math.max(rig?.resolution_kN ?? 0, recordedStep_kN ?? 0);
  const fromClass = ((rig?.classPct ?? 0) / 100) * (maximum.force_kN / Math.sqrt(3));
  const parts = [
    fromClass,
    resolution / (2 * Math.sqrt(3)),
    maximum.noiseUncertainty_kN,
    maximum.samplingUncertainty_kN,
  ];
  const total = Math.hypot(...parts);
  return total > 0 ? total : null;
}
