import './board.css';
import type { CampaignFinding } from '@provinghouse/contract';
import { CampaignFrame } from '../../components/campaign-frame.tsx';
import { Page, Section } from '../../components/page.tsx';
import { VerdictMark } from '../../components/verdict-mark.tsx';
import { text } from '../../lib/text.ts';
import { ProductRows } from './product-rows.tsx';
import { useRowKeys } from './use-row-keys.ts';

/** The board of a campaign: pieces down, places across. */
export default function Board({ code }: { readonly code: string }) {
  return <CampaignFrame code={code}>{(finding) => <BoardPage finding={finding} />}</CampaignFrame>;
}

function BoardPage({ finding }: { readonly finding: CampaignFinding }) {
  const { campaign } = finding;
  return (
    <Page
      title={campaign.title}
      mark={campaign.campaign}
      aside={
        <a className="press" href="#board">
          {text.board.toBoard}
        </a>
      }
      lead={
        <p>
          {campaign.question} <span className="soft">{text.board.askedBy(campaign.client)}</span>
        </p>
      }
    >
      <Section label={text.board.answers} note={text.rule[finding.rule]}>
        <Answers finding={finding} />
      </Section>
      <BoardTable finding={finding} />
    </Page>
  );
}

/** The answer product by product. An answer that opens with the code of a product carries the standing of that product. */
function Answers({ finding }: { readonly finding: CampaignFinding }) {
  return (
    <ul className="answers">
      {finding.answers.map((answer) => {
        const product = finding.products.find((one) => answer.startsWith(`${one.product}: `));
        if (!product) return <li key={answer}>{answer}</li>;
        return (
          <li key={answer}>
            <strong>{product.product}</strong> <VerdictMark verdict={product.standing} />
            <span className="line">{answer.slice(product.product.length + 2)}</span>
          </li>
        );
      })}
    </ul>
  );
}

function BoardTable({ finding }: { readonly finding: CampaignFinding }) {
  const rows = useRowKeys();
  const { head } = text.board;
  if (finding.pieces.length === 0) return <p>{text.board.empty}</p>;
  return (
    <section id="board" aria-label={text.board.label}>
      <div className="board-label">
        <h2>{text.board.label}</h2>
        <p>{text.board.how}</p>
      </div>
      <table className="board" ref={rows}>
        <caption className="for-ears">{text.board.caption}</caption>
        <colgroup>
          <col className="col-piece" />
          <col className="col-gauging" />
          <col className="col-pull" />
          <col />
          <col className="col-zinc" />
          <col className="col-verdict" />
        </colgroup>
        <thead>
          <tr>
            {[head.piece, head.gauging, head.pull, head.break, head.zinc, head.verdict].map((name) => (
              <th key={name} scope="col">
                {name}
              </th>
            ))}
          </tr>
        </thead>
        {finding.products.map((product) => (
          <ProductRows
            key={product.product}
            code={finding.campaign.campaign}
            product={product}
            pieces={finding.pieces.filter((piece) => piece.product === product.product)}
          />
        ))}
      </table>
    </section>
  );
}
