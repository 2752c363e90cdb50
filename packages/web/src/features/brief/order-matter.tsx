import type { MadePull, OrderBrief } from '@provinghouse/contract';
import { Link } from 'wouter';
import { ColumnHeads } from '../../components/column-heads.tsx';
import { Opens } from '../../components/opens.tsx';
import { hrefs } from '../../lib/route.ts';
import { text } from '../../lib/text.ts';
import { OrderLanes } from './order-lanes.tsx';
import { Planned } from './planned.tsx';

interface OrderMatterProps {
  readonly code: string;
  readonly order: OrderBrief;
}

/** The order a lot gives, beside the order the pulls were made in, and what can be told from it. */
export function OrderMatter({ code, order }: OrderMatterProps) {
  const { drawn, likeNeighbours } = order;
  return (
    <>
      <ul className="sentences order-words">
        {[...order.sentences, ...drawn.doubts].map((sentence) => (
          <li key={sentence}>{sentence}</li>
        ))}
      </ul>
      <dl className="facts order-facts">
        <div className="fact">
          <dt>{text.brief.seed}</dt>
          <dd>
            <Opens title={text.brief.drawnHow} content={<p>{drawn.method}.</p>}>
              {drawn.seed}
            </Opens>
          </dd>
        </div>
        {likeNeighbours === null ? null : (
          <div className="fact">
            <dt>{text.brief.like}</dt>
            <dd>
              <Planned name={text.brief.like} planned={likeNeighbours} />
            </dd>
          </div>
        )}
      </dl>
      <Lanes order={order} />
      <OrderTable code={code} order={order} />
    </>
  );
}

function Lanes({ order: { drawn, made, sentences } }: { readonly order: OrderBrief }) {
  const common = {
    products: [...new Set(drawn.order.map(({ product }) => product))].toSorted(),
    rigs: [...new Set(made.map(({ rig }) => rig))],
    places: Math.max(drawn.order.length, made.length),
    sentence: sentences[0] ?? '',
  };
  const blockEnds = drawn.order
    .filter(({ block }, index) => drawn.order[index + 1] !== undefined && drawn.order[index + 1]?.block !== block)
    .map(({ position }) => position);
  const lot = drawn.order.map((piece) => ({ ...piece, rig: null }));
  return (
    <div className="lanes-pair">
      <OrderLanes {...common} rigs={[]} label={text.brief.lanesDrawn} placed={lot} blockEnds={blockEnds} />
      {made.length === 0 ? null : <OrderLanes {...common} label={text.brief.lanesMade} placed={made} blockEnds={[]} />}
    </div>
  );
}

function OrderTable({ code, order: { drawn, made } }: OrderMatterProps) {
  const { orderHead: head } = text.brief;
  const blocks = [...Map.groupBy(drawn.order, ({ block }) => block)];
  return (
    <table className="leaf plan order">
      <caption className="for-ears">{text.brief.orderCaption}</caption>
      <ColumnHeads names={[head.place, head.block, head.drawn, head.made, head.rig, head.at]} />
      {blocks.map(([block, pulls]) => (
        <tbody key={block}>
          {pulls.map(({ position, piece }) => (
            <tr key={position}>
              <th scope="row">{position}</th>
              <td>{block}</td>
              <td>
                <Link href={hrefs.piece(code, piece)}>{piece}</Link>
              </td>
              <Made code={code} pull={made[position - 1]} />
            </tr>
          ))}
        </tbody>
      ))}
    </table>
  );
}

function Made({ code, pull }: { readonly code: string; readonly pull: MadePull | undefined }) {
  if (!pull)
    return (
      <td colSpan={3} className="soft">
        {text.none}
      </td>
    );
  return (
    <>
      <td>
        <Link href={hrefs.piece(code, pull.piece)}>{pull.piece}</Link>
      </td>
      <td>{pull.rig}</td>
      <td>{pull.pulledAt.slice(0, 16).replace('T', ' ')}</td>
    </>
  );
}
