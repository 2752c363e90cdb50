import './reader-mark.css';
import type { ReaderStanding } from '@provinghouse/core';
import type { ReactNode } from 'react';

interface ReaderMarkProps {
  readonly standing: ReaderStanding;
  readonly children: ReactNode;
}

/** What is said of the readers of a piece, with a sign before it where they do not say the same. */
export function ReaderMark({ standing: { state }, children }: ReaderMarkProps) {
  if (state !== 'differ' && state !== 'apart') return <span className="soft">{children}</span>;
  return (
    <span className="readers-differ">
      <span aria-hidden="true">≠</span> {children}
    </span>
  );
}
