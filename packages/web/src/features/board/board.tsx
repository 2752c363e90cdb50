import './board.css';
import type { CampaignFinding } from '@provinghouse/contract';
import type { Verdict } from '@provinghouse/core';
import { useMemo, useState } from 'react';
import { Link } from 'wouter';
import { CampaignFrame } from '../../components/campaign-frame.tsx';
import { ChoiceField, TextField } from '../../components/form-field.tsx';
import { Page, Section } from '../../components/page.tsx';
import { VerdictMark } from '../../components/verdict-mark.tsx';
import { hrefs } from '../../lib/route.ts';
import { text } from '../../lib/text.ts';
import { verdicts } from '../../lib/verdicts.ts';
import { boardLines } from './board-lines.ts';
import { BoardTable } from './board-table.tsx';

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
      {finding.products.length === 0 ? null : (
        <Section label={text.board.answers} note={text.rule[finding.rule]}>
          <Answers finding={finding} />
        </Section>
      )}
      {finding.pieces.length === 0 ? <NoPieces finding={finding} /> : <Pieces finding={finding} />}
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

/** What comes next while there is nothing to put on the board. */
function NoPieces({ finding }: { readonly finding: CampaignFinding }) {
  const { campaign } = finding.campaign;
  const isClaimed = finding.products.length > 0;
  return (
    <Section label={text.board.label}>
      <p>{isClaimed ? text.board.empty : text.board.emptyClaims}</p>
      <p className="form-keys">
        <Link className="press press-main" href={isClaimed ? hrefs.samples(campaign) : hrefs.brief(campaign)}>
          {isClaimed ? text.board.toSamples : text.board.toBrief}
        </Link>
      </p>
    </Section>
  );
}

function Pieces({ finding }: { readonly finding: CampaignFinding }) {
  const [words, setWords] = useState('');
  const [verdict, setVerdict] = useState<Verdict | null>(null);
  const lines = useMemo(() => boardLines(finding, { words, verdict }), [finding, words, verdict]);
  const shown = lines.filter(({ kind }) => kind === 'piece').length;
  const choices = verdicts.map((value) => ({ value, label: text.verdict[value] }));
  return (
    <section id="board" aria-label={text.board.label}>
      <div className="board-label">
        <h2>{text.board.label}</h2>
        <p>{text.board.how}</p>
      </div>
      <search className="board-filter">
        <TextField label={text.board.filter} value={words} onChange={setWords} />
        <ChoiceField
          label={text.board.standing}
          value={verdict ?? ''}
          choices={choices}
          empty={text.board.anyStanding}
          onChange={(value) => setVerdict(verdicts.find((one) => one === value) ?? null)}
        />
        <p className="soft" role="status">
          {text.board.shown(shown, finding.pieces.length)}
        </p>
      </search>
      {lines.length === 0 ? (
        <p>{text.board.noneFound}</p>
      ) : (
        <BoardTable code={finding.campaign.campaign} lines={lines} />
      )}
    </section>
  );
}
