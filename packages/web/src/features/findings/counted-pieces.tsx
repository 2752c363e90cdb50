import type { PieceFinding } from '@provinghouse/contract';
import type { ReactNode } from 'react';
import { Link } from 'wouter';
import { figureText } from '../../lib/figure.ts';
import { hrefs } from '../../lib/route.ts';
import { text } from '../../lib/text.ts';

/** What a summary is made of. */
export type SummaryKey = 'breakingForce' | 'elongation' | 'steelStress';

/** What a piece brings to a summary; null when it shows none. */
export function countedValue(
  key: SummaryKey,
  { pull, split }: PieceFinding,
): { value: number; u: number | null; isAtLeast: boolean } | null {
  if (key === 'steelStress') {
    if (split === null) return null;
    const u = split.stressUncertainty_N_per_mm2;
    return { value: split.stressOverMeasuredArea_N_per_mm2, u: u === null ? null : 2 * u, isAtLeast: split.isAtLeast };
  }
  const measured = key === 'breakingForce' ? pull?.maximum : pull?.elongation;
  return measured ? { value: measured.value, u: measured.expandedUncertainty, isAtLeast: measured.isAtLeast } : null;
}

interface CountedPiecesProps {
  readonly code: string;
  readonly pieces: readonly PieceFinding[];
  readonly of: SummaryKey;
  readonly unit: string;
}

/** The pieces whose values are counted, each with its value and uncertainty. */
export function CountedPieces({ code, pieces, of, unit }: CountedPiecesProps) {
  const counted = pieces.flatMap((piece) => {
    const found = countedValue(of, piece);
    return found === null || found.isAtLeast ? [] : [{ piece: piece.piece, ...found }];
  });
  if (counted.length === 0) return text.findings.how.noPieces;
  return (
    <>
      {text.findings.how.counted(counted.length)}
      <span className="how-list">
        {counted.map(({ piece, value, u }) => (
          <PieceLine key={piece} code={code} piece={piece}>
            {figureText({ value, unit, uncertainty: u })}
          </PieceLine>
        ))}
      </span>
    </>
  );
}

interface PieceLineProps {
  readonly code: string;
  readonly piece: string;
  readonly children?: ReactNode;
}

/** A piece, leading to its page, with what it brings. */
export function PieceLine({ code, piece, children }: PieceLineProps) {
  return (
    <span className="line">
      <Link href={hrefs.piece(code, piece)}>{piece}</Link> {children}
    </span>
  );
}

/** The pieces of a list, each leading to its page. */
export function PieceLines({ code, pieces }: { readonly code: string; readonly pieces: readonly string[] }) {
  return pieces.map((piece) => <PieceLine key={piece} code={code} piece={piece} />);
}
