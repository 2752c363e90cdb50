import type { EntryRequest } from '@provinghouse/contract';
import { InputError } from '@provinghouse/core';
import type { Effects } from '../effects.ts';
import { rowsOf } from './book.ts';

interface Use {
  readonly instrument: string;
  /** Day of use, ISO 8601. */
  readonly day: string;
}

/**
 * Every instrument that read something must have had a certificate in force on that day, or the entry must say why it was used all the same.
 * @returns the words for the ledger where it was overridden; null where all is in order
 * @throws InputError `entry/certificate-not-in-force`
 */
export async function certificateRule(
  campaign: string,
  { rows, override }: EntryRequest,
  { store, now }: Effects,
): Promise<string | null> {
  const uses = usesOf(rows, now().toISOString());
  if (uses.length === 0) return null;
  const certificates = await rowsOf(store, campaign, 'calibrations');
  const coming = rows.calibrations ?? [];
  const open = uses.filter(
    ({ instrument, day }) =>
      ![...certificates, ...coming].some(
        (one) => one.instrument === instrument && one.calibrated_on <= day && day <= one.due_on,
      ),
  );
  const [first] = open;
  if (!first) return null;
  const names = [...new Set(open.map(({ instrument }) => instrument))].join(', ');
  const reason = override?.trim() ?? '';
  if (reason !== '') return `without a certificate in force for ${names}: ${reason}`;
  throw new InputError(
    'entry/certificate-not-in-force',
    `${names} has no certificate in force on ${first.day}. Take another instrument, enter its new certificate in Kit, or say why it is used all the same.`,
    { instrument: first.instrument, day: first.day },
  );
}

function usesOf(rows: EntryRequest['rows'], now: string): Use[] {
  const day = (at: string | null) => (at ?? now).slice(0, 10);
  return [
    ...(rows.gauging ?? []).map((row) => ({ instrument: row.instrument, day: day(row.read_at) })),
    ...(rows.pulls ?? []).map((row) => ({ instrument: row.rig, day: day(row.pulled_at) })),
    ...(rows.zinc ?? []).flatMap(({ instrument }) => (instrument === null ? [] : [{ instrument, day: day(null) }])),
  ];
}
