import type { CampaignFinding } from '@provinghouse/contract';
import type { ComparedGroup, Comparison as GroupComparison } from '@provinghouse/core';
import { text } from '../../lib/text.ts';
import { PieceLine } from './counted-pieces.tsx';
import { type FoundCell, FoundTable } from './found-table.tsx';
import { Found, FoundCount, FoundFigure, type HowFound } from './how-found.tsx';
import { Counted } from './inference-table.tsx';
import { chancePercent, sharePercent } from './percent.ts';
import { scatterSure } from './summary-how.tsx';
import { rangeOf } from './summary-table.tsx';

const { how, groupsHead: head } = text.findings;

interface ComparisonGroupsProps {
  readonly file: string;
  readonly size: string;
  readonly finding: CampaignFinding;
  readonly statistics: GroupComparison;
}

/** The means of a size with the letters they share, and the chance of each to be the best. */
export function ComparisonGroups({ file, size, finding, statistics }: ComparisonGroupsProps) {
  return (
    <FoundTable
      title={text.findings.ofSize(text.findings.groups, size)}
      note={text.findings.groupsHow}
      file={`${file}-means`}
      className="summary"
      columns={[
        { heading: head.product, keys: ['product'] },
        { heading: head.n, keys: ['n'], isNumber: true },
        { heading: head.leftOut, keys: ['at_least'], isNumber: true },
        { heading: head.mean, keys: ['mean_kN', 'sd_kN'], isNumber: true },
        { heading: head.interval, keys: ['mean_from_kN', 'mean_to_kN'], isNumber: true },
        { heading: head.letters, keys: ['letters'] },
        { heading: head.best, keys: ['probability_of_best'], isNumber: true },
        { heading: head.rank, keys: ['mean_rank'], isNumber: true },
      ]}
      groups={[
        {
          key: 'groups',
          rows: statistics.groups.map((group) => ({
            key: group.name,
            cells: [...groupCells(group, finding, statistics), ...orderCells(group.name, statistics)],
          })),
        },
      ]}
    />
  );
}

function groupCells(group: ComparedGroup, finding: CampaignFinding, statistics: GroupComparison): FoundCell[] {
  const { name, n, leftOut, mean, sd, lower, upper, letters } = group;
  const product = finding.products.find((one) => one.product === name);
  const code = finding.campaign.campaign;
  const inputs = product === undefined ? name : <Counted code={code} product={product} pieces={finding.pieces} />;
  const method = `${how.groups} ${statistics.method}.`;
  const open = product?.breakingForce.atLeast ?? [];
  const interval = lower === null || upper === null ? null : rangeOf(lower, upper, 'kN');
  const meanSureness =
    interval === null ? how.meanUnsure : how.intervalIs(interval, sharePercent(statistics.confidence));
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
        <Found
          title={`${name}, ${head.leftOut}`}
          how={{
            inputs:
              open.length === 0
                ? how.noneSuch
                : open.map(({ piece }) => <PieceLine key={piece} code={code} piece={piece} />),
            method: how.leftOut,
            sure: how.exact,
          }}
        >
          {leftOut}
        </Found>
      ),
      values: [leftOut],
    },
    {
      shown: (
        <FoundFigure
          title={`${name}, ${head.mean}`}
          value={mean}
          unit="kN"
          how={{ inputs, method, sure: `${meanSureness} ${sd === null ? '' : scatterSure(n)}` }}
        />
      ),
      values: [mean, sd],
    },
    {
      shown:
        interval === null ? (
          text.none
        ) : (
          <Found title={`${name}, ${head.interval}`} how={{ inputs, method, sure: how.isInterval }}>
            <span className="figure">{interval}</span>
          </Found>
        ),
      values: [lower, upper],
    },
    {
      shown:
        letters === '' ? (
          text.none
        ) : (
          <Found title={`${name}, ${head.letters}`} how={lettersHow(statistics)}>
            {letters}
          </Found>
        ),
      values: [letters],
    },
  ];
}

function lettersHow({ sentences, groups, method }: GroupComparison): HowFound {
  return {
    sentence: sentences.alike,
    inputs: how.allProducts(groups.map((group) => group.name)),
    method: `${how.letters} ${method}.`,
    sure: how.jointly,
  };
}

function orderCells(name: string, { order }: GroupComparison): FoundCell[] {
  const place = order.ranked.find((one) => one.name === name);
  if (place === undefined) {
    const reason = order.notRanked.find((one) => one.name === name)?.reason ?? null;
    return [
      { shown: <span className="soft small">{reason ?? text.none}</span>, values: [null] },
      { shown: text.none, values: [null] },
    ];
  }
  const inputs = how.allProducts(order.ranked.map((one) => one.name));
  const sure = how.bestSure(order.simulationError.toPrecision(1));
  return [
    {
      shown: (
        <Found
          title={`${name}, ${head.best}`}
          how={{
            sentence: order.sentence,
            inputs,
            method: `${how.best(order.draws)} ${order.method}.`,
            sure,
            doubts: order.doubts,
          }}
        >
          {chancePercent(place.best)}
        </Found>
      ),
      values: [place.best],
    },
    {
      shown: (
        <Found
          title={`${name}, ${head.rank}`}
          how={{ inputs, method: `${how.rank} ${order.method}.`, sure, doubts: order.doubts }}
        >
          {place.meanRank.toFixed(2)}
        </Found>
      ),
      values: [place.meanRank],
    },
  ];
}
