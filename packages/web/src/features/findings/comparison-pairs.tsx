import type { ComparedPair, Comparison as GroupComparison } from '@provinghouse/core';
import { text } from '../../lib/text.ts';
import { type FoundCell, FoundTable } from './found-table.tsx';
import { Found, FoundFigure, type HowFound } from './how-found.tsx';
import { rangeOf } from './summary-table.tsx';

const { how, pairsHead: head, apart } = text.findings;

interface ComparisonPairsProps {
  readonly file: string;
  readonly size: string;
  readonly statistics: GroupComparison;
}

/** Every pair of products of a size: the difference of their means, its joint limits, and three ways of judging it. */
export function ComparisonPairs({ file, size, statistics }: ComparisonPairsProps) {
  return (
    <FoundTable
      title={text.findings.ofSize(text.findings.pairs, size)}
      note={text.findings.pairsHow}
      file={`${file}-pairs`}
      columns={[
        { heading: head.pair, keys: ['first', 'second'] },
        { heading: head.difference, keys: ['difference_kN', 'standard_error_kN'], isNumber: true },
        { heading: head.interval, keys: ['difference_from_kN', 'difference_to_kN'], isNumber: true },
        { heading: head.p, keys: ['p'], isNumber: true },
        { heading: head.pooled, keys: ['p_pooled'], isNumber: true },
        { heading: head.ranks, keys: ['p_ranks'], isNumber: true },
        { heading: head.effect, keys: ['effect_g', 'effect_from', 'effect_to'], isNumber: true },
        { heading: head.apart, keys: ['told_apart'] },
      ]}
      groups={[
        {
          key: 'pairs',
          rows: statistics.pairs.map((pair) => ({
            key: `${pair.first} ${pair.second}`,
            cells: cellsOf(pair, statistics),
          })),
        },
      ]}
    />
  );
}

function cellsOf(pair: ComparedPair, statistics: GroupComparison): FoundCell[] {
  const { first, second, difference, lower, upper, standardError, p, distinguishable, effect, sentence, reason } = pair;
  const name = text.findings.pairOf(first, second);
  const inputs = how.pairFrom(first, second);
  const doubts = reason === null ? [] : [reason];
  const interval = lower === null || upper === null ? null : rangeOf(lower, upper, 'kN');
  const told = { sentence, inputs, method: `${statistics.method}.`, doubts };
  const pooled = statistics.pooledPairs.pairs.find((one) => isSame(one, pair))?.p ?? null;
  const ranked = statistics.rankPairs.pairs.find((one) => isSame(one, pair))?.adjustedP ?? null;
  const toldApart = distinguishable === null ? apart.cannotTell : distinguishable ? apart.yes : apart.no;
  return [
    { shown: name, values: [first, second] },
    {
      shown: (
        <FoundFigure
          title={`${name}, ${head.difference}`}
          value={difference}
          unit="kN"
          how={{ ...told, sure: interval === null ? how.meanUnsure : how.jointInterval(interval) }}
        />
      ),
      values: [difference, standardError],
    },
    {
      shown:
        interval === null ? (
          text.none
        ) : (
          <Found title={`${name}, ${head.interval}`} how={{ ...told, sure: how.isInterval }}>
            <span className="figure">{interval}</span>
          </Found>
        ),
      values: [lower, upper],
    },
    chanceCell(`${name}, ${head.p}`, p, { ...told, sure: how.testSure }),
    chanceCell(`${name}, ${head.pooled}`, pooled, {
      inputs,
      method: `${statistics.pooledPairs.method}.`,
      sure: how.testSure,
      doubts: statistics.pooledPairs.doubts,
    }),
    chanceCell(`${name}, ${head.ranks}`, ranked, {
      inputs,
      method: `${statistics.rankPairs.method}.`,
      sure: how.testSure,
      doubts: statistics.rankPairs.doubts,
    }),
    {
      shown:
        effect.g === null ? (
          text.none
        ) : (
          <Found
            title={`${name}, ${head.effect}`}
            how={{
              sentence: effect.sentence,
              inputs,
              method: `${effect.method}.`,
              sure: effectSure(effect),
              doubts: effect.doubts,
            }}
          >
            <span className="figure">{signed(effect.g.toFixed(2))}</span>
          </Found>
        ),
      values: [effect.g, effect.lower, effect.upper],
    },
    {
      shown: (
        <Found title={`${name}, ${head.apart}`} how={{ ...told, sure: how.jointly }}>
          {toldApart}
        </Found>
      ),
      values: [toldApart],
    },
  ];
}

function chanceCell(title: string, p: number | null, how: HowFound): FoundCell {
  return {
    shown:
      p === null ? (
        text.none
      ) : (
        <Found title={title} how={how}>
          <span className="figure">{text.findings.chance(p)}</span>
        </Found>
      ),
    values: [p],
  };
}

function effectSure({ lower, upper, confidence }: ComparedPair['effect']): string {
  if (lower === null || upper === null) return how.meanUnsure;
  const between = text.limit.between(signed(lower.toFixed(2)), signed(upper.toFixed(2)));
  return how.intervalIs(between, `${Math.round(100 * confidence)}\u00a0%`);
}

function signed(digits: string): string {
  return digits.replace('-', '\u2212');
}

function isSame(a: { readonly first: string; readonly second: string }, b: ComparedPair): boolean {
  return (a.first === b.first && a.second === b.second) || (a.first === b.second && a.second === b.first);
}
