import './board.css';
import type { CampaignFinding } from '@provinghouse/contract';
import { CampaignFrame } from '../../components/campaign-frame.tsx';
import { Page, Section } from '../../components/page.tsx';
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
    <Page title={campaign.title} mark={campaign.campaign}>
      <Section label={text.board.question} note={text.board.askedBy(campaign.client)}>
        <p className="board-question">{campaign.question}</p>
      </Section>
      <Section label={text.board.answers} note={text.rule[finding.rule]}>
        <ul className="answers">
          {finding.answers.map((answer) => (
            <li key={answer}>{answer}</li>
          ))}
        </ul>
      </Section>
      <BoardTable finding={finding} />
    </Page>
  );
}

function BoardTable({ finding }: { readonly finding: CampaignFinding }) {
  const rows = useRowKeys();
  const { head } = text.board;
  if (finding.pieces.length === 0) return <p>{text.board.empty}</p>;
  return (
    <section aria-label={text.board.label}>
      <div className="board-label">
        <h2>{text.board.label}</h2>
        <p>{text.board.how}</p>
      </div>
      <table className="board" ref={rows}>
        <caption className="for-ears">{text.board.caption}</caption>
        <colgroup>
          <col className="col-piece" />
          <col span={3} />
          <col className="col-zinc" />
          <col />
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
