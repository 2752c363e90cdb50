import type { PieceFinding, ProductFinding, ProductSummary } from '@provinghouse/contract';
import type { ReactNode } from 'react';
import { Figure, Spread } from '../../components/figure.tsx';
import { figureText } from '../../lib/figure.ts';
import { text } from '../../lib/text.ts';
import { CountedPieces, PieceLine, type SummaryKey } from './counted-pieces.tsx';
import { type FoundCell, type FoundColumn, FoundTable } from './found-table.tsx';
import { Found, FoundCount, FoundFigure } from './how-found.tsx';
import { meanSure, scatterSure } from './summary-how.tsx';

const summaries: readonly SummaryKey[] = ['breakingForce', 'elongation', 'steelStress'];
const { how, summaryHead: head } = text.findings;

interface SummaryTablesProps {
  readonly code: string;
  readonly products: readonly ProductFinding[];
  readonly pieces: readonly PieceFinding[];
}

/** For each quantity a table: products down, count, mean, scatter, range, and what was left out and why. */
export function SummaryTables({ code, products, pieces }: SummaryTablesProps) {
  return summaries.map((key) => (
    <FoundTable
      key={key}
      title={text.findings.summaries[key]}
      file={`${code}-${fileNames[key]}`}
      className="summary"
      columns={columnsOf(products[0]?.[key].unit ?? '')}
      groups={[
        {
          key,
          rows: products.map((product) => ({
            key: product.product,
            cells: cellsOf({
              code,
              product,
              of: key,
              pieces: pieces.filter((piece) => piece.product === product.product),
            }),
          })),
        },
      ]}
    />
  ));
}

const fileNames: Readonly<Record<SummaryKey, string>> = {
  breakingForce: 'breaking-force',
  elongation: 'elongation',
  steelStress: 'steel-stress',
};

function columnsOf(unit: string): FoundColumn[] {
  const suffix = unit === '%' ? 'pct' : unit.replaceAll('/', '_per_');
  return [
    { heading: head.product, keys: ['product'] },
    { heading: head.n, keys: ['n'], isNumber: true },
    { heading: head.mean, keys: [`mean_${suffix}`], isNumber: true },
    { heading: head.sd, keys: [`sd_${suffix}`], isNumber: true },
    { heading: head.cov, keys: ['cov_pct'], isNumber: true },
    { heading: head.range, keys: [`least_${suffix}`, `greatest_${suffix}`], isNumber: true },
    { heading: head.atLeast, keys: ['at_least'] },
    { heading: head.excluded, keys: ['left_out'] },
  ];
}

interface Summarised {
  readonly code: string;
  readonly product: ProductFinding;
  readonly of: SummaryKey;
  readonly pieces: readonly PieceFinding[];
}

function cellsOf(one: Summarised): FoundCell[] {
  const { product, of } = one;
  const { n, mean, sd, cov_pct, least, greatest, unit, sentence } = product[of];
  const name = product.product;
  const inputs = <CountedPieces code={one.code} pieces={one.pieces} of={of} unit={unit} />;
  return [
    { shown: name, values: [name] },
    {
      shown: (
        <FoundCount title={`${name}, ${head.n}`} inputs={inputs}>
          {n}
        </FoundCount>
      ),
      values: [n],
    },
    {
      shown: (
        <FoundFigure
          title={`${name}, ${head.mean}`}
          value={mean}
          unit={unit}
          how={{ sentence, inputs, method: how.mean, sure: meanSure(product, of) }}
        />
      ),
      values: [mean],
    },
    { shown: <ScatterOf one={one} inputs={inputs} />, values: [sd] },
    {
      shown: (
        <FoundFigure
          title={`${name}, ${head.cov}`}
          value={cov_pct}
          unit="%"
          how={{ inputs, method: how.cov, sure: scatterSure(n) }}
        />
      ),
      values: [cov_pct],
    },
    {
      shown:
        least === null || greatest === null ? (
          text.none
        ) : (
          <Found title={`${name}, ${head.range}`} how={{ inputs, method: how.range, sure: how.rangeSure }}>
            <span className="figure">{rangeOf(least, greatest, unit)}</span>
          </Found>
        ),
      values: [least, greatest],
    },
    { shown: <AtLeast one={one} />, values: [atLeastWords(product[of])] },
    { shown: <LeftOut summary={product[of]} />, values: [leftOutWords(product[of])] },
  ];
}

function ScatterOf({ one, inputs }: { readonly one: Summarised; readonly inputs: ReactNode }) {
  const { n, sd, unit } = one.product[one.of];
  if (n === 1) return <span className="soft small">{text.findings.noScatter}</span>;
  if (sd === null) return <Figure value={null} unit={unit} />;
  return (
    <Found title={`${one.product.product}, ${head.sd}`} how={{ inputs, method: how.sd, sure: scatterSure(n) }}>
      <Spread value={sd} unit={unit} />
    </Found>
  );
}

/** Values that are only a bound, each with why. */
function AtLeast({ one }: { readonly one: Summarised }) {
  const { atLeast, unit } = one.product[one.of];
  if (atLeast.length === 0) return <span className="soft">{text.none}</span>;
  return atLeast.map(({ piece, value }) => (
    <span key={piece} className="line">
      <Found
        title={`${piece}, ${head.atLeast}`}
        how={{
          inputs: <PieceLine code={one.code} piece={piece} />,
          method: how.atLeast,
          sure: text.origin.atLeast,
          doubts: one.pieces.find((found) => found.piece === piece)?.pull?.reasons ?? [],
        }}
      >
        {figureText({ value, unit })}
      </Found>{' '}
      <span className="soft small">{piece}</span>
    </span>
  ));
}

function LeftOut({ summary }: { readonly summary: ProductSummary }) {
  if (summary.excluded.length === 0) return <span className="soft">{text.none}</span>;
  return summary.excluded.map(({ piece, reason }) => (
    <span key={piece} className="line small">
      {piece}: <span className="soft">{reason}</span>
    </span>
  ));
}

function atLeastWords({ atLeast, unit }: ProductSummary): string | null {
  return atLeast.length === 0
    ? null
    : atLeast.map(({ piece, value }) => `${piece}: ${Number(value.toPrecision(12))} ${unit}`).join('; ');
}

function leftOutWords({ excluded }: ProductSummary): string | null {
  return excluded.length === 0 ? null : excluded.map(({ piece, reason }) => `${piece}: ${reason}`).join(' ');
}

/** From the least to the greatest, the unit once. */
export function rangeOf(least: number, greatest: number, unit: string): string {
  const from = figureText({ value: least, unit }).replace(/\u00a0.*$/, '');
  return text.limit.between(from, figureText({ value: greatest, unit }));
}
