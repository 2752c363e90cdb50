import type { TraceReading } from '@provinghouse/core';
import { text } from '../../lib/text.ts';

export type Signal = 'time' | 'force' | 'table' | 'extension';

/** One number of a reading as it is shown. */
export interface ReadingRow {
  readonly name: string;
  readonly value: number | null;
  readonly unit: string;
  readonly uncertainty: number | null;
  readonly isAtLeast: boolean;
  /** A scatter: shown to two significant digits. */
  readonly isSpread: boolean;
  /** How it is had, in a sentence. */
  readonly method: string;
  /** The columns it comes from. */
  readonly from: readonly Signal[];
}

const spreads: readonly string[] = ['maximumUncertainty', 'noise', 'resolution'];

/** The numbers of a reading in the order of a pull. */
export function readingRows(reading: TraceReading): ReadingRow[] {
  const travel: Signal = reading.columns.extension === null ? 'table' : 'extension';
  const row = (
    key: keyof typeof text.readings,
    value: number | null,
    unit: string,
    from: readonly Signal[],
  ): ReadingRow => ({
    ...text.readings[key],
    value,
    unit,
    from,
    uncertainty: key === 'maximum' ? reading.maximumForceUncertainty_kN : null,
    isSpread: spreads.includes(key),
    isAtLeast: key === 'maximum' && reading.maximumIsAtLeast,
  });
  return [
    row('maximum', reading.maximumForce_kN, 'kN', ['force']),
    row('maximumUncertainty', reading.maximumForceUncertainty_kN, 'kN', ['force']),
    row('timeAtMaximum', reading.timeAtMaximum_s, 's', ['time']),
    row('parting', reading.partingForce_kN, 'kN', ['force']),
    row('timeAtParting', reading.timeAtParting_s, 's', ['time']),
    row('stiffness', reading.stiffness_kN_per_mm, 'kN/mm', ['force', travel]),
    row('knee', reading.kneeForce_kN, 'kN', ['force', travel]),
    row('extensionAtMaximum', reading.extensionAtMaximum_mm, 'mm', [travel]),
    row('extensionAtParting', reading.extensionAtParting_mm, 'mm', [travel]),
    row('plastic', reading.plasticExtension_mm, 'mm', [travel]),
    row('elongation', reading.totalUltimateElongation_pct, '%', [travel]),
    row('energyToMaximum', reading.energyToMaximum_J, 'J', ['force', travel]),
    row('energyToParting', reading.energyToParting_J, 'J', ['force', travel]),
    row('stress', reading.meanStressAtMaximum_N_per_mm2, 'N/mm2', ['force']),
    row('tableSpeed', reading.tableSpeed_mm_per_min, 'mm/min', ['time', 'table']),
    row('forceRate', reading.forceRate_kN_per_s, 'kN/s', ['time', 'force']),
    row('zero', reading.zeroForce_kN, 'kN', ['force']),
    row('resolution', reading.resolution_kN, 'kN', ['force']),
    row('noise', reading.noise_kN, 'kN', ['force']),
    row('samples', reading.samples, '', ['force']),
    row('rate', reading.sampleRate_Hz, 'Hz', ['time']),
    row('duration', reading.duration_s, 's', ['time']),
  ];
}
