import type { ProductFinding } from '@provinghouse/contract';
import { type Quantity, quantityNames } from '@provinghouse/core';
import { VerdictMark } from '../../components/verdict-mark.tsx';
import { text } from '../../lib/text.ts';
import { type FoundCell, FoundTable } from './found-table.tsx';
import { Found } from './how-found.tsx';
import { RequirementVerdict } from './requirement-verdict.tsx';
import type { Shown } from './view.ts';

interface RequirementMatrixProps {
  readonly code: string;
  readonly shown: Shown;
  /** Suppliers are kept back. */
  readonly isBlind: boolean;
}

/** Requirements down, products across: each cell the verdict, the count, and behind it the pieces that decide. */
export function RequirementMatrix({ code, shown, isBlind }: RequirementMatrixProps) {
  const { products, groups } = shown;
  const quantities = [...new Set(groups.map(({ limit }) => limit.quantity))];
  const { requirement, overall } = text.findings;
  return (
    <FoundTable
      title={text.findings.caption}
      file={`${code}-requirements`}
      className="requirements"
      columns={[
        { heading: requirement, keys: ['requirement'] },
        ...products.map((product) => ({
          heading: <ProductHead product={product} isBlind={isBlind} />,
          keys: [`${product.product}_verdict`, `${product.product}_pieces`],
        })),
      ]}
      groups={[
        {
          key: 'requirements',
          rows: quantities.map((quantity) => ({
            key: quantity,
            cells: [
              { shown: quantityNames[quantity], values: [quantityNames[quantity]] },
              ...products.map((product) => verdictCell(code, product, quantity)),
            ],
          })),
        },
        {
          key: 'standing',
          rows: [
            {
              key: 'standing',
              cells: [{ shown: overall, values: [overall] }, ...products.map((product) => standingCell(product))],
            },
          ],
        },
      ]}
    />
  );
}

function ProductHead({ product, isBlind }: { readonly product: ProductFinding; readonly isBlind: boolean }) {
  return (
    <>
      <span className="line requirements-product">{product.product}</span>
      {isBlind ? null : <span className="line">{product.supplier}</span>}
      {product.specification.title}
    </>
  );
}

function verdictCell(code: string, product: ProductFinding, quantity: Quantity): FoundCell {
  const judgement = product.judgements.find((one) => one.quantity === quantity);
  if (judgement === undefined)
    return { shown: <span className="soft">{text.findings.notAsked}</span>, values: [text.findings.notAsked, null] };
  return {
    shown: <RequirementVerdict code={code} judgement={judgement} />,
    values: [judgement.verdict, judgement.counts[judgement.verdict]],
  };
}

function standingCell(product: ProductFinding): FoundCell {
  return { shown: <Standing product={product} />, values: [product.standing, null] };
}

/** The standing of a product; opens to the verdicts it is made of. */
export function Standing({ product }: { readonly product: ProductFinding }) {
  const { how, overall } = text.findings;
  return (
    <Found
      title={`${product.product}, ${overall.toLowerCase()}`}
      how={{
        inputs: (
          <>
            {how.standingFrom(product.judgements.length)}
            <span className="how-list">
              {product.judgements.map((judgement) => (
                <span key={judgement.quantity} className="line">
                  {quantityNames[judgement.quantity]}: {text.verdict[judgement.verdict]}
                </span>
              ))}
            </span>
          </>
        ),
        method: how.standing,
        sure: how.verdictSure,
      }}
    >
      <VerdictMark verdict={product.standing} />
    </Found>
  );
}
