import type { ProductFinding } from '@provinghouse/contract';
import type { StrengthSplit } from '@provinghouse/core';
import { text } from '../../lib/text.ts';

/** Whether the force comes of the steel or of the bar: a picture and a sentence for each product. */
export function SplitTable({ products }: { readonly products: readonly ProductFinding[] }) {
  const splits = products.flatMap((product) => product.split ?? []);
  const reach = Math.max(
    0.05,
    ...splits.map((split) =>
      Math.max(Math.abs(split.sizeFactor - 1), Math.abs((split.totalFactor ?? split.sizeFactor) - 1)),
    ),
  );
  return (
    <figure className="split">
      <figcaption>
        <h3>{text.findings.split}</h3>
        <Legend />
      </figcaption>
      {products.map((product) => (
        <div key={product.product} className="split-row">
          <span className="strip-name">{product.product}</span>
          {product.split === null ? (
            <p className="soft">{text.findings.noSplit}</p>
          ) : (
            <>
              <SplitBar product={product.product} split={product.split} reach={reach} />
              <p className="small">{product.split.sentence}</p>
            </>
          )}
        </div>
      ))}
    </figure>
  );
}

interface SplitBarProps {
  readonly product: string;
  readonly split: StrengthSplit;
  /** The largest departure from the minimum among the products, so that all bars share one scale. */
  readonly reach: number;
}

/** From the minimum at the middle: first the step the bar makes, then from there the step the steel makes. Leftwards is a loss. */
function SplitBar({ product, split, reach }: SplitBarProps) {
  const place = (factor: number) => 110 + (100 * (factor - 1)) / reach;
  const total = split.totalFactor ?? split.sizeFactor;
  return (
    <svg className="split-bar" viewBox="0 0 220 44" role="img" aria-label={text.findings.splitLabel(product)}>
      <line className="strip-base" x1="0" x2="220" y1="22" y2="22" />
      <line className="strip-minimum" x1="110" x2="110" y1="2" y2="42" />
      <rect
        className="split-size"
        x={Math.min(place(1), place(split.sizeFactor))}
        y="8"
        width={Math.abs(place(split.sizeFactor) - place(1))}
        height="12"
      />
      <rect
        className="split-steel"
        x={Math.min(place(split.sizeFactor), place(total))}
        y="24"
        width={Math.abs(place(total) - place(split.sizeFactor))}
        height="12"
      />
      <line className="split-joint" x1={place(split.sizeFactor)} x2={place(split.sizeFactor)} y1="8" y2="36" />
    </svg>
  );
}

function Legend() {
  const { splitLegend: legend } = text.findings;
  return (
    <p className="strip-legend soft small">
      {text.findings.splitHow}
      <span className="strip-key">
        <svg width="10" height="14" aria-hidden="true">
          <line className="strip-minimum" x1="5" x2="5" y1="0" y2="14" />
        </svg>
        {legend.nominal}
      </span>
      <span className="strip-key">
        <svg width="18" height="12" aria-hidden="true">
          <rect className="split-size" x="0.5" y="0.5" width="17" height="11" />
        </svg>
        {legend.size}
      </span>
      <span className="strip-key">
        <svg width="18" height="12" aria-hidden="true">
          <rect className="split-steel" width="18" height="12" />
        </svg>
        {legend.steel}
      </span>
    </p>
  );
}
