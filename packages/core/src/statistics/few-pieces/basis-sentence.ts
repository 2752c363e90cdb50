import { type Basis, basisConfidence, basisCoverage } from './basis-value.ts';
import { plainNumber, plainPercent, plainPieces } from './plain-number.ts';

/** One sentence for a basis value, or for its absence and the reason. */
export function basisSentence(found: {
  readonly basis: Basis;
  readonly n: number;
  readonly value: number | null;
  readonly reason?: string | undefined;
  readonly unit?: string | undefined;
}): string {
  const { basis, n, value, reason, unit } = found;
  if (value === null) return `No ${basis}-basis value follows from ${plainPieces(n)}. ${reason ?? ''}`.trim();
  const share = plainPercent(basisCoverage(basis));
  return `With ${plainPercent(basisConfidence)} confidence at least ${share} of all such pieces reach ${plainNumber(value, unit)} or more, judged by ${plainPieces(n)} (${basis}-basis).`;
}
