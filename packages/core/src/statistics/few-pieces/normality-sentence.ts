import { plainNumber, plainPieces } from './plain-number.ts';

/** One sentence for a test of a normal form; it never says that the form is proven. */
export function normalitySentence({
  n,
  p,
  reason,
}: {
  readonly n: number;
  readonly p: number | null;
  readonly reason: string;
}): string {
  if (p === null)
    return `Whether the spread is normal cannot be tested with ${plainPieces(n)} like these. ${reason}`.trim();
  const chance = p < 0.0001 ? 'less than 0.0001' : plainNumber(Number(p.toPrecision(2)));
  if (p < 0.05)
    return `The ${plainPieces(n)} speak against a normal spread (p = ${chance}).`.replace(
      'p = less than',
      'p less than',
    );
  const caution = n < 20 ? '; so few could hardly do so' : '';
  return `The ${plainPieces(n)} do not speak against a normal spread (p = ${chance})${caution}.`;
}

/** Small samples pass nearly every test of form; that is no evidence for the form. */
export function smallSampleDoubts(n: number): readonly string[] {
  if (n >= 20) return [];
  return [`${n} values pass such a test whatever their form, unless it is grossly off normal: passing is no evidence.`];
}
