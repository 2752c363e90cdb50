import type { CampaignFinding, ProductFinding } from '@provinghouse/contract';
import type { LongChainFinding, LongChainLength } from '@provinghouse/core';
import { Fragment, lazy, Suspense } from 'react';
import { figureText } from '../../lib/figure.ts';
import { text } from '../../lib/text.ts';
import { type FoundCell, FoundTable } from './found-table.tsx';
import { Found, FoundFigure, type HowFound } from './how-found.tsx';
import { ModeTable } from './mode-table.tsx';
import { chancePercent } from './percent.ts';

// The drawing of statistics is the heaviest part of the screens: it is read when it is shown.
const ProductPictures = lazy(() => import('./product-pictures.tsx'));

const { how, longChainHead: head } = text.findings;

interface LongChainsProps {
  readonly finding: CampaignFinding;
  readonly products: readonly ProductFinding[];
}

/** What the short pieces say about long chains, product by product, loud where they cannot carry it. */
export function LongChains({ finding, products }: LongChainsProps) {
  const code = finding.campaign.campaign;
  return products.map((product) => (
    <Fragment key={product.product}>
      {product.longChain === null ? (
        <p className="soft">{text.findings.noLongChain(product.product)}</p>
      ) : (
        <LongChain code={code} name={product.product} found={product.longChain} />
      )}
      {product.longChain === null ? null : (
        <Suspense fallback={<p className="soft">{text.picture.drawing}</p>}>
          <ProductPictures code={code} product={product} pieces={finding.pieces} />
        </Suspense>
      )}
    </Fragment>
  ));
}

interface LongChainProps {
  readonly code: string;
  readonly name: string;
  readonly found: LongChainFinding;
}

function LongChain({ code, name, found }: LongChainProps) {
  const forces = found.lengths[0]?.holding.map((one) => one.force_kN) ?? [];
  return (
    <>
      <FoundTable
        title={text.findings.longChainOf(name)}
        note={
          <>
            <span className="line">{found.sentence}</span>
            {found.warning === null ? null : <strong className="loud">{found.warning}</strong>}
          </>
        }
        file={`${code}-${name}-long-chain-lengths`}
        columns={[
          { heading: head.length, keys: ['length_m'] },
          { heading: head.links, keys: ['links'], isNumber: true },
          { heading: head.median, keys: ['median_kN', 'median_from_kN', 'median_to_kN'], isNumber: true },
          { heading: head.estimate, keys: ['held_by_95_pct_estimate_kN'], isNumber: true },
          { heading: head.bound, keys: ['held_by_95_pct_bound_kN'], isNumber: true },
          { heading: head.bound99, keys: ['held_by_99_pct_bound_kN'], isNumber: true },
          ...forces.map((force) => ({
            heading: text.findings.holds(figureText({ value: force, unit: 'kN' })),
            keys: [`holds_${force}_kN_estimate`, `holds_${force}_kN_bound`],
            isNumber: true,
          })),
          { heading: head.mode, keys: ['governing_mode', 'share'] },
        ]}
        groups={[
          {
            key: name,
            rows: found.lengths.map((length) => ({
              key: String(length.length_m),
              cells: cellsOf(name, length, found),
            })),
          },
        ]}
      />
      <ModeTable code={code} name={name} found={found} />
    </>
  );
}

function cellsOf(name: string, length: LongChainLength, found: LongChainFinding): FoundCell[] {
  const of = text.findings.metres(length.length_m);
  const title = (heading: string) => `${name}, ${of}, ${heading}`;
  const [governing] = length.shares;
  const told = howOf(length, found);
  const at = (survival: number) => length.exceeded.find((force) => force.survival === survival) ?? null;
  const often = at(0.95);
  const seen = often?.boundOfSeenModes_kN ?? null;
  const boundSure = [
    told.sure,
    ...(seen === null ? [] : [how.boundSeen(figureText({ value: seen, unit: 'kN' }))]),
  ].join(' ');
  const force = (heading: string, value: number | null, sure: string): FoundCell => ({
    shown: <FoundFigure title={title(heading)} value={value} unit="kN" how={{ ...told, sure }} />,
    values: [value],
  });
  const median = length.medianInterval90_kN;
  return [
    { shown: <span className="figure">{of}</span>, values: [length.length_m] },
    {
      shown: (
        <Found
          title={title(head.links)}
          how={{
            inputs: how.chainLinks(of, figureText({ value: found.inputs.pitch_mm, unit: 'mm' })),
            method: how.chainLinksHow,
            sure: how.exact,
          }}
        >
          {length.links}
        </Found>
      ),
      values: [length.links],
    },
    {
      ...force(head.median, length.median_kN, median === null ? told.sure : `${medianText(median)} ${told.sure}`),
      values: [length.median_kN, median?.low ?? null, median?.high ?? null],
    },
    force(head.estimate, often?.estimate_kN ?? null, told.sure),
    force(head.bound, often?.bound_kN ?? null, boundSure),
    force(head.bound99, at(0.99)?.bound_kN ?? null, told.sure),
    ...length.holding.map((one): FoundCell => {
      const heading = text.findings.holds(figureText({ value: one.force_kN, unit: 'kN' }));
      return {
        shown: (
          <Found
            title={title(heading)}
            how={{ ...told, sure: `${how.holdsSure(chancePercent(one.bound))} ${told.sure}` }}
          >
            {one.estimate === null ? how.holdsOver(chancePercent(one.bound)) : chancePercent(one.estimate)}
          </Found>
        ),
        values: [one.estimate, one.bound],
      };
    }),
    {
      shown: governing ? (
        <Found title={title(head.mode)} how={{ ...told, method: `${how.governs} ${told.method}` }}>
          {text.findings.governs(governing.mode, governing.share)}
        </Found>
      ) : (
        text.none
      ),
      values: [governing?.mode ?? null, governing?.share ?? null],
    },
  ];
}

function howOf(length: LongChainLength, found: LongChainFinding): HowFound & { readonly sure: string } {
  const { pieces, breaks, atLeast, linksPulled } = found.inputs;
  return {
    sentence: length.sentence,
    inputs: how.chainFrom({ pieces, breaks, atLeast, links: linksPulled }),
    method: `${found.method}.`,
    sure: how.restsOn[length.reach.restsOn],
    doubts: found.doubts,
  };
}

function medianText({ low, high }: { readonly low: number; readonly high: number }): string {
  return how.medianSure(figureText({ value: low, unit: 'kN' }), figureText({ value: high, unit: 'kN' }));
}
