import type { Row } from '@provinghouse/contract';

/** The day by which the record judges certificates: that of Greenwich, in which a reading is written down. */
export function dayOf(at: string): string {
  return at.slice(0, 10);
}

/** Instruments that read lengths of links. */
export function readsLengths({ kind, unit }: Row<'instruments'>): boolean {
  return (unit === 'mm' || unit === 'um') && ['calliper', 'micrometer', 'tape', 'other'].includes(kind);
}

/** Under which name this browser remembers why an instrument was used without a certificate on a day. */
export function overrideName(instrument: string, day: string): string {
  return `override ${instrument} ${day}`;
}
