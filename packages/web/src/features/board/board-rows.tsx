import type { PieceFinding, ProductFinding } from '@provinghouse/contract';
import type { ComponentProps } from 'react';
import { Link } from 'wouter';
import { VerdictMark } from '../../components/verdict-mark.tsx';
import { limitText } from '../../lib/limit-text.ts';
import { hrefs } from '../../lib/route.ts';
import { text } from '../../lib/text.ts';
import { BreakCell, GaugingCell, PullCell, ZincCell } from './cells.tsx';

interface Placed {
  /** Where the row stands among the lines of a long board. */
  readonly place: ComponentProps<'tr'>;
}

/** The head of a product: what was claimed, and where it stands. */
export function ProductRow({ product, place }: Placed & { readonly product: ProductFinding }) {
  return (
    <tr className="board-product" {...place}>
      <th scope="colgroup" colSpan={5}>
        <span className="supplier">{product.supplier}</span> <span className="soft">{claimOf(product)}</span>
      </th>
      <td className="standing">
        <VerdictMark verdict={product.standing} />
      </td>
    </tr>
  );
}

interface PieceRowProps extends Placed {
  readonly code: string;
  readonly piece: PieceFinding;
}

/** What became of a piece, place by place; where nothing was done yet the cell leads to the place where it is done. */
export function PieceRow({ code, piece, place }: PieceRowProps) {
  return (
    <tr className="board-piece" {...place}>
      <th scope="row">
        <Link href={hrefs.piece(code, piece.piece)}>{piece.piece}</Link>
      </th>
      <td>
        <GaugingCell code={code} piece={piece} />
      </td>
      <td>
        <PullCell code={code} piece={piece} />
      </td>
      <td>
        <BreakCell code={code} piece={piece} />
      </td>
      <td>
        <ZincCell code={code} piece={piece} />
      </td>
      <td className="standing">
        <VerdictMark verdict={piece.standing} />
      </td>
    </tr>
  );
}

function claimOf(product: ProductFinding): string {
  const minimum = product.specification.limits.find((limit) => limit.quantity === 'breakingForce');
  const parts = [
    product.product,
    product.specification.title,
    ...(minimum ? [text.board.minimum(limitText(minimum))] : []),
  ];
  return parts.join(', ');
}
