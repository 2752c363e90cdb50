import type { ProductDecision, ProductFinding } from '@provinghouse/contract';
import { Told } from '../../components/told.tsx';
import { VerdictMark } from '../../components/verdict-mark.tsx';
import { text } from '../../lib/text.ts';

/** Products as a whole against their minimum breaking force: the mean, and nearly all of the pieces. */
export function ProductDecisions({ products }: { readonly products: readonly ProductFinding[] }) {
  const { decisionHead: head } = text.findings;
  return (
    <table className="leaf summary">
      <caption>
        <h3>{text.findings.decisions}</h3>
        <span className="small">{text.findings.decisionsHow}</span>
      </caption>
      <thead>
        <tr>
          {[head.product, head.mean, head.bound].map((name) => (
            <th key={name} scope="col">
              {name}
            </th>
          ))}
        </tr>
      </thead>
      <tbody>
        {products.map(({ product, inference }) => (
          <tr key={product}>
            <th scope="row">{product}</th>
            <DecisionCell title={`${product}, ${head.mean}`} decision={inference.meanDecision} />
            <DecisionCell title={`${product}, ${head.bound}`} decision={inference.boundDecision} />
          </tr>
        ))}
      </tbody>
    </table>
  );
}

function DecisionCell({ title, decision }: { readonly title: string; readonly decision: ProductDecision | null }) {
  return (
    <td>
      {decision === null ? (
        <span className="soft">{text.findings.notAsked}</span>
      ) : (
        <Told title={title} told={decision}>
          <VerdictMark verdict={decision.verdict} />
        </Told>
      )}
    </td>
  );
}
