import type { Row } from '@provinghouse/contract';

/** Instruments with their certificates, as one book holds them. */
export interface Kit {
  readonly instruments: readonly Row<'instruments'>[];
  readonly calibrations: readonly Row<'calibrations'>[];
}

/**
 * What must come into a campaign with an instrument that is used in it: its row, where it stands only in the book of the bench, and the
 * certificates that the campaign has not got yet. Empty tables where nothing is wanting.
 */
export function kitRows(instrument: string, { own, bench }: { readonly own: Kit; readonly bench: Kit }): Kit {
  const isOwn = own.instruments.some((row) => row.instrument === instrument);
  const numbers = new Set(own.calibrations.map(({ calibration }) => calibration));
  return {
    instruments: isOwn ? [] : bench.instruments.filter((row) => row.instrument === instrument),
    calibrations: bench.calibrations.filter((row) => row.instrument === instrument && !numbers.has(row.calibration)),
  };
}
