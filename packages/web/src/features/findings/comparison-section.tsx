import type { CampaignFinding, Comparison, ProductFinding } from '@provinghouse/contract';
import { lazy, Suspense } from 'react';
import { text } from '../../lib/text.ts';
import { ComparisonGroups } from './comparison-groups.tsx';
import { ComparisonPairs } from './comparison-pairs.tsx';
import { ComparisonTests } from './comparison-tests.tsx';
import { Sentences } from './sentences.tsx';
import { sizeText } from './size-text.ts';
import { SplitTable } from './split-table.tsx';
import { partId } from './view.ts';

// The drawing of statistics is the heaviest part of the screens: it is read when it is shown.
const SizePictures = lazy(() => import('./size-pictures.tsx'));

interface ComparisonSizeProps {
  readonly finding: CampaignFinding;
  readonly comparison: Comparison;
}

/** Products of one nominal size side by side: what is told apart, by how much, how surely, and whether steel or size did it. */
export function ComparisonSize({ finding, comparison }: ComparisonSizeProps) {
  const code = finding.campaign.campaign;
  const products = productsOf(comparison, finding);
  const file = `${code}-${comparison.nominalSize_mm}-mm`;
  const size = sizeText(products);
  const { statistics } = comparison;
  return (
    <section className="found-size" id={partId('size', String(comparison.nominalSize_mm))}>
      <h3 className="found-size-title">{text.findings.size(size)}</h3>
      {statistics === null ? <p className="soft">{text.findings.onlyOne}</p> : null}
      <Sentences sentences={comparison.sentences} />
      <Suspense fallback={<p className="soft">{text.picture.drawing}</p>}>
        <SizePictures code={code} comparison={comparison} products={products} pieces={finding.pieces} />
      </Suspense>
      {statistics === null || statistics.groups.length === 0 ? null : (
        <>
          <ComparisonGroups file={file} size={size} finding={finding} statistics={statistics} />
          <ComparisonPairs file={file} size={size} statistics={statistics} />
          <ComparisonTests file={file} size={size} statistics={statistics} />
          <Sentences sentences={statistics.doubts} />
        </>
      )}
      <SplitTable file={file} size={size} products={products} />
    </section>
  );
}

/** The products of a comparison, in its order. */
export function productsOf({ products }: Comparison, finding: CampaignFinding): ProductFinding[] {
  return products.flatMap((name) => finding.products.find((one) => one.product === name) ?? []);
}
