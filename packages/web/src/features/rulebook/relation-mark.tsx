import type { LimitRelation } from '@provinghouse/core';
import type { ReactNode } from 'react';
import { text } from '../../lib/text.ts';

const stroke = { fill: 'none', stroke: 'currentColor', strokeWidth: 1.8 } as const;

/** A shape for each relation, drawn so that they differ without colour. */
const shapes: Readonly<Record<LimitRelation, ReactNode>> = {
  same: <path d="M2 6h12M2 10.5h12" {...stroke} />,
  higher: <path d="M8 2 14.5 13.5H1.5Z" fill="currentColor" />,
  lower: <path d="M8 14 1.5 2.5H14.5Z" fill="currentColor" />,
  narrower: <path d="M1 8h5M3.5 5 6.5 8 3.5 11M15 8h-5M12.5 5 9.5 8 12.5 11" {...stroke} />,
  wider: <path d="M7 8H1.5M4.5 5 1.5 8 4.5 11M9 8h5.5M11.5 5 14.5 8 11.5 11" {...stroke} />,
  apart: <path d="M2 6h12M2 10.5h12M11 2 5 14.5" {...stroke} />,
  'first only': (
    <>
      <rect x="1.5" y="3" width="13" height="10" {...stroke} />
      <rect x="1.5" y="3" width="6.5" height="10" fill="currentColor" />
    </>
  ),
  'second only': (
    <>
      <rect x="1.5" y="3" width="13" height="10" {...stroke} />
      <rect x="8" y="3" width="6.5" height="10" fill="currentColor" />
    </>
  ),
};

interface RelationMarkProps {
  readonly relation: LimitRelation;
  /** By how much, as it is written; null where it cannot be said. */
  readonly change: string | null;
}

/** How the second limit stands to the first: shape and word, and by how much. */
export function RelationMark({ relation, change }: RelationMarkProps) {
  const isDifferent = relation !== 'same';
  return (
    <span className={isDifferent ? 'relation relation-different' : 'relation'}>
      <svg viewBox="0 0 16 16" aria-hidden="true">
        {shapes[relation]}
      </svg>
      <span>
        {text.rulebook.relation[relation]}
        {change === null || !isDifferent ? null : ` ${text.rulebook.by(change)}`}
      </span>
    </span>
  );
}
