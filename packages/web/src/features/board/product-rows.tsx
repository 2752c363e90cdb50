import type { PieceFinding, ProductFinding } from '@provinghouse/contract';
import { Link } from 'wouter';
import { VerdictMark } from '../../components/verdict-mark.tsx';
import { limitText } from '../../lib/limit-text.ts';
import { hrefs } from '../../lib/route.ts';
import { text } from '../../lib/text.ts';
import { BreakCell, GaugingCell, PullCell, ZincCell } from './cells.tsx';

interface ProductRowsProps {
  readonly code: string;
  readonly product: ProductFinding;
  readonly pieces: readonly PieceFinding[];
}

/** A product and its pieces: the head says what was claimed, each row what became of a piece. */
export function ProductRows({ code, product, pieces }: ProductRowsProps) {
  return (
    <tbody>
      <tr className="board-product">
        <th scope="rowgroup" colSpan={5}>
          <span className="supplier">{product.supplier}</span> <span className="soft">{claimOf(product)}</span>
        </th>
        <td className="standing">
          <VerdictMark verdict={product.standing} />
        </td>
      </tr>
      {pieces.map((piece) => (
        <PieceRow key={piece.piece} code={code} piece={piece} />
      ))}
    </tbody>
  );
}

function PieceRow({ code, piece }: { readonly code: string; readonly piece: PieceFinding }) {
  return (
    <tr className="board-piece">
      <th scope="row">
        <Link href={hrefs.piece(code, piece.piece)}>{piece.piece}</Link>
      </th>
      <td>
        <GaugingCell piece={piece} />
      </td>
      <td>
        <PullCell piece={piece} />
      </td>
      <td>
        <BreakCell piece={piece} />
      </td>
      <td>
        <ZincCell piece={piece} />
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
