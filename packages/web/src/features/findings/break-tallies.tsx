import type { ProductFinding } from '@provinghouse/contract';
import { text } from '../../lib/text.ts';

/** How the pieces of each product parted, most frequent first. */
export function BreakTallies({ products }: { readonly products: readonly ProductFinding[] }) {
  return (
    <div className="tallies">
      <h3>{text.findings.breaks}</h3>
      <dl className="facts">
        {products.map((product) => (
          <div key={product.product} className="fact">
            <dt>{product.product}</dt>
            <dd>
              {product.breaks.length === 0
                ? text.notRecorded
                : product.breaks
                    .map((tally) => text.findings.breaksOf(tally.count, tally.position, tally.mode))
                    .join('; ')}
            </dd>
          </div>
        ))}
      </dl>
    </div>
  );
}
