import { InputError } from '@provinghouse/core';

/** A whole number from 0 to below `below`, each as likely as the others. */
export type Draw = (below: number) => number;

/**
 * Letters and digits that are not taken for one another when read off a worn tag: no 0 O Q, 1 I L, 2 Z, 5 S, 6 G, 8 B, U V, and no vowel,
 * so that no word comes about.
 */
export const blindAlphabet = 'CDFHJKMNPRTWXY3479';

const blindLength = 4;

interface OpenCodes {
  readonly sample: string;
  readonly count: number;
  /** Codes ever given to a piece of the campaign, those taken out among them. */
  readonly used: readonly string[];
}

/** Codes SAMPLE-1, SAMPLE-2 ... that go on after the highest number the sample ever had. */
export function openCodes({ sample, count, used }: OpenCodes): string[] {
  const stem = `${sample}-`;
  const numbers = used.flatMap((code) => {
    const rest = code.toLowerCase().startsWith(stem.toLowerCase()) ? code.slice(stem.length) : '';
    return /^\d{1,9}$/.test(rest) ? [Number(rest)] : [];
  });
  const last = Math.max(0, ...numbers);
  return Array.from({ length: count }, (_, at) => `${stem}${last + at + 1}`);
}

interface BlindCodes {
  readonly count: number;
  /** Codes ever given to a piece of any campaign of the record. */
  readonly used: readonly string[];
  /** Names that a code must not hold: products, suppliers, samples. */
  readonly telling: readonly string[];
  readonly draw: Draw;
}

/** Attempts for one code before the lot is called broken: the codes free are far more than a record of chain uses up. */
const attempts = 2000;

/**
 * Short codes drawn by lot, which say nothing of whose the piece is and stand nowhere else in the record.
 * @throws InputError `entry/codes-used-up` where the lot gives no new code any more
 */
export function blindCodes({ count, used, telling, draw }: BlindCodes): string[] {
  const taken = new Set(used.map((code) => code.toUpperCase()));
  const names = telling.filter((name) => name.length > 1).map((name) => name.toUpperCase());
  const codes: string[] = [];
  for (let attempt = 0; codes.length < count; attempt += 1) {
    if (attempt > attempts * count)
      throw new InputError('entry/codes-used-up', 'No new code could be drawn for the pieces. Cut fewer at a time.');
    const code = Array.from({ length: blindLength }, () => blindAlphabet[draw(blindAlphabet.length)] ?? '').join('');
    if (taken.has(code) || names.some((name) => code.includes(name))) continue;
    taken.add(code);
    codes.push(code);
  }
  return codes;
}
