import type { CampaignFinding, ProductFinding } from '@provinghouse/contract';
import { lazy, Suspense } from 'react';
import { VerdictMark } from '../../components/verdict-mark.tsx';
import { text } from '../../lib/text.ts';
import { verdicts } from '../../lib/verdicts.ts';
import { Fold } from './fold.tsx';
import { FoundFigure } from './how-found.tsx';
import { PieceTable } from './piece-table.tsx';
import { massHow, priceHow } from './product-how.tsx';
import { Standing } from './requirement-matrix.tsx';
import { RequirementRows } from './requirement-rows.tsx';
import { partId, type RequirementGroup } from './view.ts';

// The drawing of statistics is the heaviest part of the screens: it is read when it is shown.
const BudgetPicture = lazy(() => import('./budget-picture.tsx'));

interface ProductSectionProps {
  readonly finding: CampaignFinding;
  readonly product: ProductFinding;
  readonly groups: readonly RequirementGroup[];
  readonly startsOpen: boolean;
  readonly isBlind: boolean;
}

/** All that was found on one product. */
export function ProductSection({ finding, product, groups, startsOpen, isBlind }: ProductSectionProps) {
  const code = finding.campaign.campaign;
  const pieces = finding.pieces.filter((piece) => piece.product === product.product);
  return (
    <Fold
      id={partId('product', product.product)}
      label={product.product}
      gist={<Gist product={product} groups={groups} />}
      startsOpen={startsOpen}
    >
      <ClaimFacts finding={finding} product={product} isBlind={isBlind} />
      <RequirementRows
        code={code}
        title={text.findings.rows.title}
        file={`${code}-${product.product}-requirements`}
        groups={groups}
        headedBy="requirement"
      />
      {pieces.length === 0 ? null : <PieceTable code={code} product={product.product} pieces={pieces} />}
      {product.breakingForce.n === 0 ? null : (
        <Suspense fallback={<p className="soft">{text.picture.drawing}</p>}>
          <BudgetPicture code={code} product={product} pieces={pieces} />
        </Suspense>
      )}
    </Fold>
  );
}

/** Where a product, or a requirement, stands, for the line of a folded part. */
export function Gist({ product, groups }: Pick<ProductSectionProps, 'groups'> & { readonly product?: ProductFinding }) {
  const values = groups.flatMap((group) => group.values);
  const counts = verdicts
    .map((verdict) => ({ verdict, count: values.filter((one) => one.judgement.verdict === verdict).length }))
    .filter(({ count }) => count > 0);
  return (
    <span className="gist">
      {product === undefined ? null : <VerdictMark verdict={product.standing} />}
      <span className="soft">
        {counts.map(({ verdict, count }) => text.findings.rows.tally(count, verdict)).join(', ')}
      </span>
    </span>
  );
}

function ClaimFacts({ finding, product, isBlind }: Pick<ProductSectionProps, 'finding' | 'product' | 'isBlind'>) {
  const words = text.findings.product;
  const { title, edition } = product.specification;
  const facts = [
    [words.standing, <Standing key="standing" product={product} />],
    ...(isBlind ? [] : [[words.supplier, product.supplier] as const]),
    ...(product.description === null ? [] : [[words.description, product.description] as const]),
    [words.specification, words.specificationOf(title, edition)],
    ...(product.claimedBreakingForce_kN === null
      ? []
      : [
          [
            words.claimedForce,
            <FoundFigure
              key="claimed"
              title={`${product.product}, ${words.claimedForce}`}
              value={product.claimedBreakingForce_kN}
              unit="kN"
              how={{
                inputs: text.findings.how.asEntered,
                method: text.findings.how.claimed,
                sure: text.findings.how.entered,
              }}
            />,
          ] as const,
        ]),
    [
      words.mass,
      <FoundFigure
        key="mass"
        title={`${product.product}, ${words.mass}`}
        value={product.massPerMetre_kg_per_m}
        unit="kg/m"
        how={massHow(finding, product)}
      />,
    ],
    ...(isBlind
      ? []
      : [
          [
            words.price,
            <FoundFigure
              key="price"
              title={`${product.product}, ${words.price}`}
              value={product.pricePerMetre}
              unit={`${product.currency ?? ''}/m`}
              how={priceHow()}
            />,
          ] as const,
        ]),
  ] as const;
  return (
    <dl className="facts found-facts" aria-label={words.facts}>
      {facts.map(([name, value]) => (
        <div key={name} className="fact">
          <dt>{name}</dt>
          <dd>{value}</dd>
        </div>
      ))}
    </dl>
  );
}
