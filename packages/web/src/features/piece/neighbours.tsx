import type { PieceFinding } from '@provinghouse/contract';
import { useEffect } from 'react';
import { Link, useLocation } from 'wouter';
import { hrefs } from '../../lib/route.ts';
import { text } from '../../lib/text.ts';

interface NeighboursProps {
  readonly code: string;
  readonly pieces: readonly PieceFinding[];
  readonly at: string;
}

/** To the piece before and after on the board, by link or by arrow key. */
export function Neighbours({ code, pieces, at }: NeighboursProps) {
  const index = pieces.findIndex((piece) => piece.piece === at);
  const before = pieces[index - 1]?.piece ?? null;
  const after = pieces[index + 1]?.piece ?? null;
  useArrowKeys(before === null ? null : hrefs.piece(code, before), after === null ? null : hrefs.piece(code, after));
  return (
    <nav className="neighbours" aria-label={`${text.piece.previous}, ${text.piece.next}`}>
      {before === null ? null : (
        <Link className="press" href={hrefs.piece(code, before)}>
          <span className="soft small">{text.piece.previousKey}</span>
          <span className="for-ears">{text.piece.previous}</span> {before}
        </Link>
      )}
      {after === null ? null : (
        <Link className="press" href={hrefs.piece(code, after)}>
          <span className="for-ears">{text.piece.next}</span>
          {after} <span className="soft small">{text.piece.nextKey}</span>
        </Link>
      )}
    </nav>
  );
}

/** Arrow keys turn the page, unless something that uses them itself has the focus: a choice, the figure, a table that scrolls. */
function useArrowKeys(before: string | null, after: string | null): void {
  const [, go] = useLocation();
  useEffect(() => {
    const onKey = (event: KeyboardEvent) => {
      const to = event.key === 'ArrowLeft' ? before : event.key === 'ArrowRight' ? after : null;
      const isPlain = !event.defaultPrevented && !event.altKey && !event.ctrlKey && !event.metaKey && !event.shiftKey;
      if (to !== null && isPlain && !usesArrows(document.activeElement)) go(to);
    };
    document.addEventListener('keydown', onKey);
    return () => document.removeEventListener('keydown', onKey);
  }, [before, after, go]);
}

function usesArrows(element: Element | null): boolean {
  return element?.closest('input, select, textarea, [role="application"], [role="dialog"], .pad-scroll') != null;
}
