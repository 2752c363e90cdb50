import type { Verdict } from '@provinghouse/core';
import type { ReactNode } from 'react';
import { text } from '../lib/text.ts';

const tones: Readonly<Record<Verdict, string>> = {
  conforms: 'verdict-conforms',
  'does not conform': 'verdict-fails',
  inconclusive: 'verdict-open',
  'not judged': 'verdict-none',
};

/** Four shapes that differ in outline and filling, so that they hold without colour and at a glance. */
const shapes: Readonly<Record<Verdict, ReactNode>> = {
  conforms: <circle cx="8" cy="8" r="7" fill="currentColor" />,
  'does not conform': (
    <>
      <rect x="1.5" y="1.5" width="13" height="13" fill="none" stroke="currentColor" strokeWidth="2" />
      <path d="M2 2 14 14M14 2 2 14" stroke="currentColor" strokeWidth="2" />
    </>
  ),
  inconclusive: (
    <>
      <path
        d="M8 0.5 15.5 8 8 15.5 0.5 8Z"
        fill="none"
        stroke="currentColor"
        strokeWidth="1.8"
        strokeLinejoin="round"
      />
      <path d="M8 0.5 0.5 8 8 15.5Z" fill="currentColor" />
    </>
  ),
  'not judged': <circle cx="8" cy="8" r="6.2" fill="none" stroke="currentColor" strokeWidth="1.8" />,
};

/** The shape of a verdict, without its word: for pictures that name it elsewhere. */
export function VerdictShape({ verdict }: { readonly verdict: Verdict }) {
  return (
    <svg viewBox="0 0 16 16" aria-hidden="true">
      {shapes[verdict]}
    </svg>
  );
}

/** A verdict as shape, colour and word. */
export function VerdictMark({ verdict, children }: { readonly verdict: Verdict; readonly children?: ReactNode }) {
  return (
    <span className={`verdict ${tones[verdict]}`}>
      <VerdictShape verdict={verdict} />
      <span>{children ?? text.verdict[verdict]}</span>
    </span>
  );
}
