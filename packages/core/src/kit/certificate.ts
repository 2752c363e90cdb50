/** The days of a certificate, ISO 8601. */
export interface CertificateDays {
  readonly calibrated_on: string;
  readonly due_on: string;
}

export type CertificateState = 'in force' | 'due soon' | 'run out' | 'none';

/** How an instrument stands on a day. */
export interface CertificateStanding<C extends CertificateDays> {
  readonly state: CertificateState;
  /** The certificate in force, else the newest; null where there is none. */
  readonly certificate: C | null;
  /** Whole days until it falls due; negative when it ran out; null without one. */
  readonly daysLeft: number | null;
}

/** From this many days before it falls due, a calibration is to be arranged. Common practice. */
export const dueSoonDays = 30;

/** How an instrument stands on a day (ISO 8601), from its certificates: one is in force from its day to the day it falls due, both included. */
export function certificateStanding<C extends CertificateDays>(
  certificates: readonly C[],
  day: string,
): CertificateStanding<C> {
  const newestFirst = [...certificates].sort((a, b) => (a.due_on < b.due_on ? 1 : -1));
  const inForce = newestFirst.find((one) => one.calibrated_on <= day && day <= one.due_on);
  const certificate = inForce ?? newestFirst[0] ?? null;
  if (!certificate) return { state: 'none', certificate: null, daysLeft: null };
  const daysLeft = Math.round((Date.parse(certificate.due_on) - Date.parse(day)) / 86_400_000);
  if (!inForce) return { state: 'run out', certificate, daysLeft };
  return { state: daysLeft <= dueSoonDays ? 'due soon' : 'in force', certificate, daysLeft };
}
