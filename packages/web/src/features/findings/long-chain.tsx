import type { CampaignFinding } from '@provinghouse/contract';
import type { LongChainFinding, LongChainLength } from '@provinghouse/core';
import { Fragment, lazy, Suspense } from 'react';
import { Figure } from '../../components/figure.tsx';
import { Section } from '../../components/page.tsx';
import { Told } from '../../components/told.tsx';
import { text } from '../../lib/text.ts';

// The drawing of statistics is the heaviest part of the screens: it is read when it is shown.
const ProductPictures = lazy(() => import('./product-pictures.tsx'));

/** What the short pieces say about long chains, product by product, loud where they cannot carry it. */
export function LongChains({ finding }: { readonly finding: CampaignFinding }) {
  return (
    <Section label={text.findings.longChain} note={text.findings.longChainHow}>
      {finding.products.map((product) => (
        <Fragment key={product.product}>
          <LongChain name={product.product} found={product.longChain} />
          <Suspense fallback={<p className="soft">{text.picture.drawing}</p>}>
            <ProductPictures code={finding.campaign.campaign} product={product} pieces={finding.pieces} />
          </Suspense>
        </Fragment>
      ))}
    </Section>
  );
}

function LongChain({ name, found }: { readonly name: string; readonly found: LongChainFinding | null }) {
  if (found === null) return <p className="soft">{text.findings.noLongChain(name)}</p>;
  return (
    <table className="leaf summary">
      <caption>
        <h3>{name}</h3>
        <span className="sentences">{found.sentence}</span>
        {found.warning === null ? null : <strong className="loud">{found.warning}</strong>}
      </caption>
      <LongChainHead />
      <tbody>
        {found.lengths.map((length) => (
          <LongChainRow key={length.length_m} name={name} length={length} found={found} />
        ))}
      </tbody>
    </table>
  );
}

function LongChainHead() {
  const { longChainHead: head } = text.findings;
  return (
    <thead>
      <tr>
        <th scope="col">{head.length}</th>
        {[head.links, head.median, head.estimate, head.bound].map((name) => (
          <th key={name} scope="col" className="num">
            {name}
          </th>
        ))}
        <th scope="col">{head.mode}</th>
      </tr>
    </thead>
  );
}

interface RowProps {
  readonly name: string;
  readonly length: LongChainLength;
  readonly found: LongChainFinding;
}

function LongChainRow({ name, length, found }: RowProps) {
  const often = length.exceeded.find((force) => force.survival === 0.95) ?? null;
  const told = { sentence: length.sentence, method: found.method, doubts: found.doubts };
  const [governing] = length.shares;
  return (
    <tr>
      <th scope="row">{text.findings.metres(length.length_m)}</th>
      <td className="num">{length.links}</td>
      <td className="num">
        <Figure value={length.median_kN} unit="kN" />
      </td>
      <td className="num">
        <Figure value={often?.estimate_kN ?? null} unit="kN" />
      </td>
      <td className="num">
        <Told title={`${name}, ${text.findings.metres(length.length_m)}`} told={told}>
          <Figure value={often?.bound_kN ?? null} unit="kN" />
        </Told>
      </td>
      <td>{governing ? text.findings.governs(governing.mode, governing.share) : text.none}</td>
    </tr>
  );
}
