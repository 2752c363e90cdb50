import { useWindowVirtualizer } from '@tanstack/react-virtual';
import { useLayoutEffect, useRef, useState } from 'react';
import { ColumnHeads } from '../../components/column-heads.tsx';
import { text } from '../../lib/text.ts';
import type { BoardLine } from './board-lines.ts';
import { PieceRow, ProductRow } from './board-rows.tsx';
import { useRowKeys } from './use-row-keys.ts';

/** A longer board draws only the lines near the window: below this every line is there for the browser's own search and for paper. */
const longBoard = 150;
const lineHeight = 56;

interface BoardTableProps {
  readonly code: string;
  readonly lines: readonly BoardLine[];
}

export function BoardTable({ code, lines }: BoardTableProps) {
  const rows = useRowKeys();
  const { head } = text.board;
  return (
    <table className="board" ref={rows} aria-rowcount={lines.length + 1}>
      <caption className="for-ears">{text.board.caption}</caption>
      <colgroup>
        <col className="col-piece" />
        <col className="col-gauging" />
        <col className="col-pull" />
        <col />
        <col className="col-zinc" />
        <col className="col-verdict" />
      </colgroup>
      <ColumnHeads names={[head.piece, head.gauging, head.pull, head.break, head.zinc, head.verdict]} />
      {lines.length < longBoard ? <WholeBody code={code} lines={lines} /> : <LongBody code={code} lines={lines} />}
    </table>
  );
}

function WholeBody({ code, lines }: BoardTableProps) {
  return (
    <tbody>
      {lines.map((line) => (
        <Line key={keyOf(line)} code={code} line={line} />
      ))}
    </tbody>
  );
}

function LongBody({ code, lines }: BoardTableProps) {
  const body = useRef<HTMLTableSectionElement>(null);
  const [top, setTop] = useState(0);
  useLayoutEffect(() => {
    if (body.current) setTop(body.current.getBoundingClientRect().top + window.scrollY);
  }, []);
  const virtual = useWindowVirtualizer({
    count: lines.length,
    estimateSize: () => lineHeight,
    overscan: 14,
    scrollMargin: top,
    getItemKey: (at) => {
      const line = lines[at];
      return line ? keyOf(line) : at;
    },
  });
  const items = virtual.getVirtualItems();
  const above = (items[0]?.start ?? top) - top;
  const below = virtual.getTotalSize() - ((items.at(-1)?.end ?? top) - top);
  return (
    <tbody ref={body}>
      <Space height={above} />
      {items.map(({ index, key }) => {
        const line = lines[index];
        return line ? <Line key={key} code={code} line={line} at={index} measure={virtual.measureElement} /> : null;
      })}
      <Space height={below} />
    </tbody>
  );
}

/** Stands for the lines that are not drawn. */
function Space({ height }: { readonly height: number }) {
  if (height <= 0) return null;
  return (
    <tr className="board-space">
      <td colSpan={6} height={height} />
    </tr>
  );
}

interface LineProps {
  readonly code: string;
  readonly line: BoardLine;
  /** Its place, where only some of the lines are drawn. */
  readonly at?: number;
  readonly measure?: (row: HTMLTableRowElement | null) => void;
}

function Line({ code, line, at, measure }: LineProps) {
  const place =
    at === undefined || measure === undefined ? {} : { 'data-index': at, 'aria-rowindex': at + 2, ref: measure };
  return line.kind === 'product' ? (
    <ProductRow product={line.product} place={place} />
  ) : (
    <PieceRow code={code} piece={line.piece} place={place} />
  );
}

function keyOf(line: BoardLine): string {
  return line.kind === 'product' ? `product ${line.product.product}` : line.piece.piece;
}
