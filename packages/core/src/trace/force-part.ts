import { maximumUncertainty } from './force-uncertainty.ts';
import { placeOfLargest } from './largest.ts';
import type { Maximum } from './maximum.ts';
import { findMaximum } from './maximum.ts';
import type { ReadOptions } from './options.ts';
import type { Parting } from './parting.ts';
import { findParting } from './parting.ts';
import type { Plateau } from './plateau.ts';
import { findPlateau } from './plateau.ts';
import type { Prepared } from './prepared.ts';

/** What the force alone says. */
export interface ForcePart {
  readonly parting: Parting | null;
  /** Last sample of the loaded record: the one before parting, or the last. */
  readonly end: number;
  readonly maximum: Maximum;
  readonly uncertainty_kN: number | null;
  readonly plateau: Plateau | null;
}

/** Parting, maximum, clipping and the uncertainty of the maximum. */
export function readForce(prepared: Prepared, options: ReadOptions): ForcePart {
  const { clean, peak, resolution_kN, slack, sampling, signals } = prepared;
  const { step_s } = sampling;
  const parting = findParting({
    force_kN: clean,
    time_s: signals.time_s,
    step_s,
    largest_kN: clean[peak] as number,
  });
  const end = parting?.last ?? clean.length - 1;
  const span = { force_kN: clean, from: slack.end, to: end };
  // What stands highest in the whole record does so in the loaded part, unless it lies outside.
  const top = peak >= slack.end && peak <= end ? peak : placeOfLargest(clean, slack.end, end);
  const maximum = findMaximum({ ...span, top, step_s });
  const range = options.rig?.rangeMaximum_kN;
  const plateau = findPlateau({
    ...span,
    top,
    resolution_kN,
    rangeMaximum_kN: range === undefined ? undefined : range - slack.offset_kN,
    rate_Hz: sampling.rate_Hz,
    table_mm: signals.table_mm,
  });
  return { parting, end, maximum, uncertainty_kN: maximumUncertainty(maximum, options.rig, resolution_kN), plateau };
}
