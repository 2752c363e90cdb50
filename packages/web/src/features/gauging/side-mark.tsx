import type { Row } from '@provinghouse/contract';
import { type ReadingSide, readingSide } from '@provinghouse/core';
import { text } from '../../lib/text.ts';
import { type PieceAtDesk, toInput } from './gauging-desk.ts';

const shapes: Readonly<Record<ReadingSide['side'], string>> = {
  inside: '',
  below: 'M1 2h8L5 9Z',
  above: 'M1 8h8L5 1Z',
  'above, zinc on it': 'M2 7.4h6L5 2.2ZM0.8 9.4h8.4',
};

/** How a reading lies to its limit. */
export function sideOf(row: Row<'gauging'>, { limits, zincOnBar_mm }: PieceAtDesk): ReadingSide | null {
  return readingSide(toInput(row), { limits, zincOnBar_mm });
}

/** A reading outside its limit: a shape that points where it lies. */
export function SideShape({ side }: { readonly side: ReadingSide['side'] }) {
  if (side === 'inside') return null;
  return (
    <svg
      className={side === 'above, zinc on it' ? 'gauging-side gauging-side-open' : 'gauging-side'}
      viewBox="0 0 10 10"
      aria-hidden="true"
    >
      <path d={shapes[side]} />
    </svg>
  );
}

/** The same with its word. */
export function SideMark({ side }: { readonly side: ReadingSide['side'] }) {
  const isOpen = side === 'above, zinc on it';
  const tone = side === 'inside' ? 'soft' : isOpen ? 'gauging-outside gauging-outside-open' : 'gauging-outside';
  return (
    <span className={tone}>
      <SideShape side={side} /> {text.gaugingDesk.table.side[side]}
    </span>
  );
}
