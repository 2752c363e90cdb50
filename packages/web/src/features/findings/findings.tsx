import './findings.css';
import type { CampaignFinding, Comparison, ProductFinding } from '@provinghouse/contract';
import { lazy, Suspense } from 'react';
import { Link } from 'wouter';
import { CampaignFrame } from '../../components/campaign-frame.tsx';
import { Page, Section } from '../../components/page.tsx';
import { figureText } from '../../lib/figure.ts';
import { hrefs } from '../../lib/route.ts';
import { text } from '../../lib/text.ts';
import { BreakTallies } from './break-tallies.tsx';
import { InferenceTable } from './inference-table.tsx';
import { LongChains } from './long-chain.tsx';
import { ProductDecisions } from './product-decisions.tsx';
import { Readers } from './readers.tsx';
import { RequirementTable } from './requirement-table.tsx';
import { Sentences } from './sentences.tsx';
import { SplitTable } from './split-table.tsx';
import { SummaryTables } from './summary-table.tsx';
import { ValueTable } from './value-table.tsx';

// The drawing of statistics is the heaviest part of the screens: it is read when it is shown.
const SizePictures = lazy(() => import('./size-pictures.tsx'));

/** The findings of a campaign: requirements, products side by side, and what all this cannot say. */
export default function Findings({ code }: { readonly code: string }) {
  return <CampaignFrame code={code}>{(finding) => <FindingsPage finding={finding} />}</CampaignFrame>;
}

function FindingsPage({ finding }: { readonly finding: CampaignFinding }) {
  return (
    <Page title={text.findings.title} mark={finding.campaign.title} lead={finding.campaign.question}>
      <Section label={text.findings.rule}>
        <p className="sentences">{finding.ruleSentence}</p>
      </Section>
      <Section label={text.findings.requirements} note={text.findings.requirementsHow}>
        <RequirementTable finding={finding} />
      </Section>
      {finding.comparisons.map((comparison) => (
        <SizeSection key={comparison.nominalSize_mm} comparison={comparison} finding={finding} />
      ))}
      <LongChains finding={finding} />
      <Readers agreement={finding.agreement} />
      <Section label={text.findings.limits}>
        <Sentences sentences={finding.limitsOfTheFinding} />
      </Section>
      <Section label={text.findings.doubts}>
        {finding.doubts.length === 0 ? (
          <p className="soft">{text.findings.noDoubts}</p>
        ) : (
          <Sentences sentences={finding.doubts} />
        )}
      </Section>
      <Papers code={finding.campaign.campaign} />
    </Page>
  );
}

interface SizeSectionProps {
  readonly comparison: Comparison;
  readonly finding: CampaignFinding;
}

/** Products of one nominal size side by side. */
function SizeSection({ comparison, finding }: SizeSectionProps) {
  const products = comparison.products.flatMap((name) => finding.products.find((one) => one.product === name) ?? []);
  return (
    <Section label={text.findings.size(sizeText(products))}>
      <Suspense fallback={<p className="soft">{text.picture.drawing}</p>}>
        <SizePictures
          code={finding.campaign.campaign}
          comparison={comparison}
          products={products}
          pieces={finding.pieces}
        />
      </Suspense>
      <Sentences sentences={comparison.sentences} />
      <SummaryTables products={products} />
      <InferenceTable products={products} />
      <ProductDecisions products={products} />
      <SplitTable products={products} />
      <BreakTallies products={products} />
      <ValueTable products={products} worth={comparison.worth} />
    </Section>
  );
}

/** A nominal size is a name, not a reading: it carries no decimal places of its own. */
function sizeText(products: readonly ProductFinding[]): string {
  const size = products[0]?.nominalSize_mm ?? 0;
  return `${size}${figureText({ value: size, unit: 'mm' }).replace(/^[\d.]+/, '')}`;
}

function Papers({ code }: { readonly code: string }) {
  return (
    <Section label={text.findings.papers}>
      <p>{text.findings.papersHow}</p>
      <p className="papers">
        <a className="press" href={hrefs.report(code)}>
          {text.findings.toReport}
        </a>
        <Link className="press" href={hrefs.ledger(code)}>
          {text.findings.toLedger}
        </Link>
      </p>
    </Section>
  );
}
