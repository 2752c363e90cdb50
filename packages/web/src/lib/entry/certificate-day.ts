import type { Row } from '@provinghouse/contract';

/** Whether an instrument has a certificate in force on a day. */
export function isInForce(instrument: string, day: string, calibrations: readonly Row<'calibrations'>[]): boolean {
  return calibrations.some((row) => row.instrument === instrument && row.calibrated_on <= day && day <= row.due_on);
}

/** The day until which the last certificate of an instrument held; null where it has none. */
export function lastDue(instrument: string, calibrations: readonly Row<'calibrations'>[]): string | null {
  const days = calibrations.filter((row) => row.instrument === instrument).map(({ due_on }) => due_on);
  return days.sort().at(-1) ?? null;
}
