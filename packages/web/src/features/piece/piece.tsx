import './piece.css';
import type { CampaignFinding, PieceFinding, ProductFinding } from '@provinghouse/contract';
import { Link } from 'wouter';
import { CampaignFrame } from '../../components/campaign-frame.tsx';
import { Figure } from '../../components/figure.tsx';
import { Notice } from '../../components/notice.tsx';
import { Opens } from '../../components/opens.tsx';
import { Page, Section } from '../../components/page.tsx';
import { Photographs } from '../../components/photographs.tsx';
import { VerdictMark } from '../../components/verdict-mark.tsx';
import { hrefs } from '../../lib/route.ts';
import { text } from '../../lib/text.ts';
import { BreakTable } from './break-table.tsx';
import { GaugingTable } from './gauging-table.tsx';
import { JudgementTable } from './judgement-table.tsx';
import { Neighbours } from './neighbours.tsx';
import { PullMatter } from './pull-matter.tsx';
import { ZincFacts } from './zinc-facts.tsx';

interface PieceAddress {
  readonly code: string;
  readonly piece: string;
}

/** One piece: its pull, and everything it is judged by. */
export default function Piece({ code, piece }: PieceAddress) {
  return <CampaignFrame code={code}>{(finding) => <Found finding={finding} name={piece} />}</CampaignFrame>;
}

function Found({ finding, name }: { readonly finding: CampaignFinding; readonly name: string }) {
  const piece = finding.pieces.find((one) => one.piece === name);
  const product = finding.products.find((one) => one.product === piece?.product);
  if (piece && product) return <PiecePage finding={finding} piece={piece} product={product} />;
  return (
    <Notice title={text.piece.unknown(name)}>
      <p>{text.piece.unknownCure}</p>
      <p>
        <Link href={hrefs.board(finding.campaign.campaign)}>{text.piece.toBoard}</Link>
      </p>
    </Notice>
  );
}

interface PiecePageProps {
  readonly finding: CampaignFinding;
  readonly piece: PieceFinding;
  readonly product: ProductFinding;
}

function PiecePage({ finding, piece, product }: PiecePageProps) {
  const code = finding.campaign.campaign;
  return (
    <Page
      title={piece.piece}
      mark={<VerdictMark verdict={piece.standing} />}
      lead={<Lead piece={piece} product={product} />}
      aside={<Neighbours code={code} pieces={finding.pieces} at={piece.piece} />}
    >
      <Section label={text.piece.pull} {...pullNote(piece)}>
        <PullMatter code={code} piece={piece} product={product} />
      </Section>
      <Section label={text.piece.judgement} note={text.piece.judgementHow}>
        <JudgementTable judgements={piece.judgements} rule={finding.ruleSentence} />
      </Section>
      <Section label={text.piece.gauging}>
        <GaugingTable piece={piece} />
      </Section>
      <Section label={text.piece.breaks} {...(piece.breaks.length === 0 ? {} : { note: text.readers.rule })}>
        <BreakTable code={code} piece={piece} />
      </Section>
      <Section label={text.piece.zinc}>
        <ZincFacts zinc={piece.zinc} />
      </Section>
      <Section label={text.photograph.label}>
        <Photographs book={code} of={{ piece: piece.piece }} caption={null} />
      </Section>
      {piece.note === null ? null : (
        <Section label={text.piece.note}>
          <p>{piece.note}</p>
        </Section>
      )}
    </Page>
  );
}

function pullNote({ pull }: PieceFinding): { readonly note?: string } {
  return pull === null ? {} : { note: `${pull.pull}, ${text.piece.pullFacts(pull.rig, pull.operator)}` };
}

function Lead({ piece, product }: { readonly piece: PieceFinding; readonly product: ProductFinding }) {
  return (
    <p>
      {text.piece.of(product.supplier, product.product)}, {product.specification.title}, {text.piece.links(piece.links)}
      , {text.piece.gaugeLength}{' '}
      <Opens title={text.piece.gaugeLength} content={<p>{piece.gaugeLengthOrigin}</p>}>
        <Figure value={piece.gaugeLength_mm} unit="mm" />
      </Opens>
    </p>
  );
}
