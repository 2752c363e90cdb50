import './findings.css';
import { type CampaignFinding, isBlind } from '@provinghouse/contract';
import { type Quantity, quantityNames } from '@provinghouse/core';
import { useDeferredValue, useMemo } from 'react';
import { Link } from 'wouter';
import { CampaignFrame } from '../../components/campaign-frame.tsx';
import { Page, Section } from '../../components/page.tsx';
import { hrefs } from '../../lib/route.ts';
import { text } from '../../lib/text.ts';
import { useAddressState } from '../../lib/use-address-state.ts';
import { Contents, type Part } from './contents.tsx';
import { FilterBar } from './filter-bar.tsx';
import { Fold } from './fold.tsx';
import { FoldsContext, useFolds } from './folds.ts';
import { FoundParts } from './found-parts.tsx';
import { ProductSection } from './product-section.tsx';
import { type Progress, progressOf } from './progress.ts';
import { RequirementMatrix } from './requirement-matrix.tsx';
import { RequirementSection } from './requirement-section.tsx';
import { Sentences } from './sentences.tsx';
import { Summary } from './summary.tsx';
import { Teaching } from './teaching.tsx';
import { isFiltered, partId, type Shown, shownOf, type View, viewCodec } from './view.ts';

/** The findings of a campaign: requirements, products side by side, and what all this cannot say. */
export default function Findings({ code }: { readonly code: string }) {
  return <CampaignFrame code={code}>{(finding) => <FindingsPage finding={finding} />}</CampaignFrame>;
}

/** Few enough rows to be seen together: a filter that leaves so many opens the parts they stand in. */
const fewRows = 60;

function FindingsPage({ finding }: { readonly finding: CampaignFinding }) {
  const code = finding.campaign.campaign;
  // What stands below the first windows is made when those are shown.
  const isWhole = useDeferredValue(true, false);
  const folds = useFolds(code, isWhole);
  const [view, setView] = useAddressState(viewCodec);
  const seen = useDeferredValue(view);
  const shown = useMemo(() => shownOf(finding, seen), [finding, seen]);
  const progress = progressOf(finding);
  const blind = isBlind(finding.campaign);
  const quantities = [...new Set(shown.groups.map(({ limit }) => limit.quantity))];
  const opens = isFiltered(seen) && shown.values <= fewRows;
  return (
    <FoldsContext value={folds}>
      <Page title={text.findings.title} mark={finding.campaign.title} lead={finding.campaign.question}>
        {blind ? (
          <Section label={text.campaign.blind.blind.label}>
            <p className="findings-blind">{text.findings.blind}</p>
          </Section>
        ) : null}
        <Missing code={code} progress={progress} />
        {progress.hasProducts ? (
          <>
            <Contents parts={partsOf({ shown, view: seen, quantities })} />
            <Section label={text.findings.filter.label} note={text.findings.filter.note}>
              <FilterBar finding={finding} view={view} shown={shown} onView={setView} />
            </Section>
            <Fold id="answers" label={text.findings.answers}>
              <Sentences sentences={finding.answers} />
              <h3 className="findings-rule">{text.findings.rule}</h3>
              <p className="sentences">{finding.ruleSentence}</p>
            </Fold>
            <Summary finding={finding} products={shown.products} progress={progress} />
            <Fold id="requirements" label={text.findings.requirements} note={text.findings.requirementsHow}>
              <RequirementMatrix code={code} shown={shown} isBlind={blind} />
            </Fold>
            <SetOut finding={finding} view={seen} shown={shown} quantities={quantities} isBlind={blind} opens={opens} />
            {isWhole ? <FoundParts finding={finding} products={shown.products} progress={progress} /> : null}
          </>
        ) : null}
        <Papers code={code} />
      </Page>
    </FoldsContext>
  );
}

/** The first thing that is missing for more to be found, and where to go for it. */
function Missing({ code, progress }: { readonly code: string; readonly progress: Progress }) {
  const words = text.findings.teaching;
  const missing = !progress.hasProducts
    ? { words: words.products, label: words.toProducts, to: hrefs.brief(code) }
    : !progress.hasPieces
      ? { words: words.pieces, label: words.toPieces, to: hrefs.samples(code) }
      : !progress.hasPulls
        ? { words: words.pulls, label: words.toPulls, to: hrefs.pulls(code) }
        : !progress.hasBreaks
          ? { words: words.breaks, label: words.toBreaks, to: hrefs.breaks(code) }
          : null;
  return missing === null ? null : (
    <Section label={words.label}>
      <Teaching {...missing} />
    </Section>
  );
}

interface SetOutProps {
  readonly finding: CampaignFinding;
  readonly view: View;
  readonly shown: Shown;
  readonly quantities: readonly Quantity[];
  readonly isBlind: boolean;
  readonly opens: boolean;
}

/** Every value against its requirement, product by product or requirement by requirement. */
function SetOut({ finding, view, shown, quantities, isBlind: blind, opens }: SetOutProps) {
  if (view.by === 'requirement') {
    return quantities.map((quantity) => (
      <RequirementSection
        key={quantity}
        finding={finding}
        quantity={quantity}
        groups={shown.groups.filter(({ limit }) => limit.quantity === quantity)}
        startsOpen={opens}
      />
    ));
  }
  const asksForValues = view.verdict !== '' || view.words.trim() !== '';
  return shown.products.flatMap((product) => {
    const groups = shown.groups.filter((group) => group.product === product);
    if (asksForValues && groups.length === 0) return [];
    return [
      <ProductSection
        key={product.product}
        finding={finding}
        product={product}
        groups={groups}
        startsOpen={opens}
        isBlind={blind}
      />,
    ];
  });
}

interface PartsAsked {
  readonly shown: Shown;
  readonly view: View;
  readonly quantities: readonly Quantity[];
}

function partsOf({ shown, view, quantities }: PartsAsked): Part[] {
  const words = text.findings;
  const setOut =
    view.by === 'requirement'
      ? quantities.map((quantity) => ({ id: partId('requirement', quantity), label: quantityNames[quantity] }))
      : shown.products.map(({ product }) => ({ id: partId('product', product), label: product }));
  return [
    { id: 'answers', label: words.answers },
    { id: 'summary', label: words.summary },
    { id: 'requirements', label: words.requirements },
    ...setOut,
    { id: 'comparisons', label: words.comparisons },
    { id: 'long-chain', label: words.longChain },
    { id: 'value', label: words.value },
    { id: 'breaks', label: words.breaks },
    { id: 'zinc', label: words.zinc },
    { id: 'readers', label: words.readers.label },
    { id: 'doubts', label: words.doubts },
    { id: 'limits', label: words.limits },
  ];
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
