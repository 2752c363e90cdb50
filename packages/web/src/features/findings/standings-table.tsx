import type { CampaignFinding, ProductFinding } from '@provinghouse/contract';
import { LimitOrigin } from '../../components/limit-origin.tsx';
import { text } from '../../lib/text.ts';
import { verdicts } from '../../lib/verdicts.ts';
import { type FoundCell, FoundTable } from './found-table.tsx';
import { Found, FoundCount, FoundFigure } from './how-found.tsx';
import { Counted } from './inference-table.tsx';
import { Standing } from './requirement-matrix.tsx';
import { meanSure } from './summary-how.tsx';

const { how, standingsHead: head } = text.findings;

interface StandingsTableProps {
  readonly finding: CampaignFinding;
  readonly products: readonly ProductFinding[];
}

/** Each product in a line: where it stands, and its force against what was asked. */
export function StandingsTable({ finding, products }: StandingsTableProps) {
  return (
    <FoundTable
      title={text.findings.standings}
      file={`${finding.campaign.campaign}-standings`}
      className="summary"
      columns={[
        { heading: head.product, keys: ['product'] },
        { heading: head.standing, keys: ['standing'] },
        { heading: head.force, keys: ['mean_breaking_force_kN'], isNumber: true },
        { heading: head.minimum, keys: ['minimum_kN'] },
        { heading: head.margin, keys: ['above_minimum_pct'], isNumber: true },
        { heading: head.pieces, keys: ['counted', 'pieces'], isNumber: true },
        { heading: head.judged, keys: ['judged', 'not_judged'], isNumber: true },
      ]}
      groups={[
        {
          key: 'standings',
          rows: products.map((product) => ({ key: product.product, cells: cellsOf(product, finding) })),
        },
      ]}
    />
  );
}

function cellsOf(product: ProductFinding, finding: CampaignFinding): FoundCell[] {
  const name = product.product;
  const { n, mean, unit, sentence } = product.breakingForce;
  const limit = product.specification.limits.find((one) => one.quantity === 'breakingForce');
  const counts = verdicts.map((verdict) => product.judgements.reduce((sum, one) => sum + one.counts[verdict], 0));
  const all = counts.reduce((sum, count) => sum + count, 0);
  const unjudged = product.judgements.reduce((sum, one) => sum + one.counts['not judged'], 0);
  const inputs = <Counted code={finding.campaign.campaign} product={product} pieces={finding.pieces} />;
  return [
    { shown: name, values: [name] },
    { shown: <Standing product={product} />, values: [product.standing] },
    {
      shown: (
        <FoundFigure
          title={`${name}, ${head.force}`}
          value={mean}
          unit={unit}
          how={{ sentence, inputs, method: how.mean, sure: meanSure(product, 'breakingForce') }}
        />
      ),
      values: [mean],
    },
    {
      shown:
        limit === undefined ? <span className="soft">{text.findings.notAsked}</span> : <LimitOrigin limit={limit} />,
      values: [limit?.lower ?? null],
    },
    {
      shown: (
        <FoundFigure
          title={`${name}, ${head.margin}`}
          value={product.marginOverMinimum_pct}
          unit="%"
          how={{ inputs, method: how.margin, sure: meanSure(product, 'breakingForce') }}
        />
      ),
      values: [product.marginOverMinimum_pct],
    },
    {
      shown: (
        <FoundCount title={`${name}, ${head.pieces}`} inputs={inputs}>
          {text.campaigns.pulled(n, product.pieces.length)}
        </FoundCount>
      ),
      values: [n, product.pieces.length],
    },
    {
      shown: (
        <Found
          title={`${name}, ${head.judged}`}
          how={{
            inputs: verdicts.map((verdict, at) => (
              <span key={verdict} className="line">
                {text.findings.rows.tally(counts[at] ?? 0, verdict)}
              </span>
            )),
            method: how.judged,
            sure: how.exact,
          }}
        >
          {text.campaigns.pulled(all - unjudged, all)}
        </Found>
      ),
      values: [all - unjudged, unjudged],
    },
  ];
}
