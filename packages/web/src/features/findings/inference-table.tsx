import type { PieceFinding, ProductDecision, ProductFinding } from '@provinghouse/contract';
import type { ReactNode } from 'react';
import { VerdictMark } from '../../components/verdict-mark.tsx';
import { uncertaintyText } from '../../lib/figure.ts';
import { text } from '../../lib/text.ts';
import { CountedPieces } from './counted-pieces.tsx';
import { type FoundCell, FoundTable } from './found-table.tsx';
import { Found, FoundFigure } from './how-found.tsx';
import { meanSure, toldHow } from './summary-how.tsx';
import { rangeOf } from './summary-table.tsx';

const { how, inferenceHead: head, decisionHead, standsOut } = text.findings;

interface InferenceTablesProps {
  readonly code: string;
  readonly products: readonly ProductFinding[];
  readonly pieces: readonly PieceFinding[];
}

/** What a few pieces let one say of the next ones: each figure opens to its sentence, method and doubts. */
export function InferenceTables(given: InferenceTablesProps) {
  return (
    <>
      <FoundTable
        title={text.findings.inference}
        note={text.findings.inferenceHow}
        file={`${given.code}-inference`}
        className="summary"
        columns={[
          { heading: head.product, keys: ['product'] },
          { heading: head.mean, keys: ['mean_from_kN', 'mean_to_kN'], isNumber: true },
          { heading: head.bound, keys: ['tolerance_bound_kN'], isNumber: true },
          { heading: head.characteristic, keys: ['characteristic_kN'], isNumber: true },
          { heading: head.outlier, keys: ['outlier', 'outlier_kN', 'outlier_p'] },
          { heading: head.normality, keys: ['normality_p'] },
        ]}
        groups={[
          {
            key: 'inference',
            rows: given.products.map((product) => ({ key: product.product, cells: inferred(product, given) })),
          },
        ]}
      />
      <Decisions {...given} />
    </>
  );
}

function inferred(product: ProductFinding, { code, pieces }: InferenceTablesProps): FoundCell[] {
  const { mean, tolerance, characteristic, outlier, normality } = product.inference;
  const name = product.product;
  const inputs = <Counted code={code} product={product} pieces={pieces} />;
  const outlying = outlier.standsOut === null ? standsOut.cannotTell : outlier.standsOut ? standsOut.yes : standsOut.no;
  return [
    { shown: name, values: [name] },
    {
      shown: (
        <Found title={`${name}, ${head.mean}`} how={toldHow(mean, inputs, meanSure(product, 'breakingForce'))}>
          {mean.lower === null || mean.upper === null ? text.none : rangeOf(mean.lower, mean.upper, 'kN')}
        </Found>
      ),
      values: [mean.lower, mean.upper],
    },
    {
      shown: (
        <FoundFigure
          title={`${name}, ${head.bound}`}
          value={tolerance.lower}
          unit="kN"
          how={toldHow(tolerance, inputs, how.oneSided)}
        />
      ),
      values: [tolerance.lower],
    },
    {
      shown: (
        <FoundFigure
          title={`${name}, ${head.characteristic}`}
          value={characteristic.characteristic}
          unit="kN"
          how={toldHow(characteristic, inputs, how.oneSided)}
        />
      ),
      values: [characteristic.characteristic],
    },
    {
      shown: (
        <Found title={`${name}, ${head.outlier}`} how={toldHow(outlier, inputs, how.testSure)}>
          {outlying}
        </Found>
      ),
      values: [outlying, outlier.value, outlier.p],
    },
    {
      shown: (
        <Found title={`${name}, ${head.normality}`} how={toldHow(normality, inputs, how.testSure)}>
          {normality.p === null ? standsOut.cannotTell : text.findings.chance(normality.p)}
        </Found>
      ),
      values: [normality.p],
    },
  ];
}

interface CountedProps {
  readonly code: string;
  readonly product: ProductFinding;
  readonly pieces: readonly PieceFinding[];
}

/** The counted forces of a product. */
export function Counted({ code, product, pieces }: CountedProps) {
  const own = pieces.filter((piece) => piece.product === product.product);
  return <CountedPieces code={code} pieces={own} of="breakingForce" unit="kN" />;
}

/** Products as a whole against their minimum breaking force: the mean, and nearly all of the pieces. */
function Decisions({ code, products, pieces }: InferenceTablesProps) {
  return (
    <FoundTable
      title={text.findings.decisions}
      note={text.findings.decisionsHow}
      file={`${code}-decisions`}
      className="summary"
      columns={[
        { heading: decisionHead.product, keys: ['product'] },
        { heading: decisionHead.mean, keys: ['mean_verdict', 'mean_sentence'] },
        { heading: decisionHead.bound, keys: ['bound_verdict', 'bound_sentence'] },
      ]}
      groups={[
        {
          key: 'decisions',
          rows: products.map((product) => {
            const inputs = <Counted key={product.product} code={code} product={product} pieces={pieces} />;
            const { meanDecision, boundDecision } = product.inference;
            const sure = commonOf(product, pieces);
            return {
              key: product.product,
              cells: [
                { shown: product.product, values: [product.product] },
                decided(`${product.product}, ${decisionHead.mean}`, meanDecision, { inputs, sure }),
                decided(`${product.product}, ${decisionHead.bound}`, boundDecision, { inputs, sure }),
              ],
            };
          }),
        },
      ]}
    />
  );
}

/** What the forces of a product share: the uncertainty of the rig, the greatest where several pulled. */
function commonOf(product: ProductFinding, pieces: readonly PieceFinding[]): string {
  const parts = pieces
    .filter((piece) => piece.product === product.product)
    .flatMap(({ pull }) => pull?.maximum?.contributions ?? []);
  const [first] = parts.toSorted((a, b) => b.standardUncertainty - a.standardUncertainty);
  return first === undefined
    ? how.noneStated
    : `${how.verdictSure} ${how.largestPart(first.name, uncertaintyText(first.standardUncertainty, 'kN'))}`;
}

interface DecidedFrom {
  readonly inputs: ReactNode;
  readonly sure: string;
}

function decided(title: string, decision: ProductDecision | null, { inputs, sure }: DecidedFrom): FoundCell {
  if (decision === null)
    return { shown: <span className="soft">{text.findings.notAsked}</span>, values: [text.findings.notAsked, null] };
  return {
    shown: (
      <Found title={title} how={toldHow(decision, inputs, sure)}>
        <VerdictMark verdict={decision.verdict} />
      </Found>
    ),
    values: [decision.verdict, decision.sentence],
  };
}
