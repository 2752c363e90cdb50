import type { Row } from '@provinghouse/contract';

/** The day by which the record judges certificates: that of Greenwich, in which a reading is written down. */
export function dayOf(at: string): string {
  return at.slice(0, 10);
}

/** Whether an instrument has a certificate in force on a day. */
export function isInForce(instrument: string, day: string, calibrations: readonly Row<'calibrations'>[]): boolean {
  return calibrations.some((row) => row.instrument === instrument && row.calibrated_on <= day && day <= row.due_on);
}

/** The day the last certificate of an instrument fell due; null where it has none. */
export function lastDue(instrument: string, calibrations: readonly Row<'calibrations'>[]): string | null {
  return (
    calibrations
      .filter((row) => row.instrument === instrument)
      .map(({ due_on }) => due_on)
      .sort()
      .at(-1) ?? null
  );
}

/** Instruments that read lengths of links. */
export function readsLengths({ kind, unit }: Row<'instruments'>): boolean {
  return (unit === 'mm' || unit === 'um') && ['calliper', 'micrometer', 'tape', 'other'].includes(kind);
}

/** Under which name this browser remembers why an instrument was used without a certificate on a day. */
export function overrideName(instrument: string, day: string): string {
  return `override ${instrument} ${day}`;
}
