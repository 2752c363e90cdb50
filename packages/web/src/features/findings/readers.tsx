import type { ReaderAgreement } from '@provinghouse/contract';
import type { Kappa } from '@provinghouse/core';
import { text } from '../../lib/text.ts';
import { type FoundCell, FoundTable } from './found-table.tsx';
import { Found, type HowFound } from './how-found.tsx';
import { sharePercent } from './percent.ts';

const { readers: words, how } = text.findings;

interface ReadersProps {
  readonly code: string;
  readonly agreement: ReaderAgreement | null;
}

/** How far the readers of the breaks agree beyond chance. */
export function Readers({ code, agreement }: ReadersProps) {
  if (agreement === null) return <p className="soft">{words.none}</p>;
  const rows = [
    [words.position, agreement.position],
    [words.mode, agreement.mode],
  ] as const;
  return (
    <FoundTable
      title={words.title}
      note={words.who(agreement.readers)}
      file={`${code}-readers`}
      className="found-tests"
      columns={[
        { heading: words.head.what, keys: ['what'] },
        { heading: words.head.kappa, keys: ['kappa', 'standard_error'], isNumber: true },
        { heading: words.head.interval, keys: ['kappa_from', 'kappa_to'], isNumber: true },
        { heading: words.head.observed, keys: ['agreed'], isNumber: true },
        { heading: words.head.expected, keys: ['by_chance'], isNumber: true },
        { heading: words.head.n, keys: ['read_twice'], isNumber: true },
        { heading: words.head.says, keys: ['says'] },
      ]}
      groups={[
        {
          key: 'readers',
          rows: rows.map(([name, kappa]) => ({ key: name, cells: cellsOf(name, kappa, agreement.readers.length) })),
        },
      ]}
    />
  );
}

function cellsOf(name: string, kappa: Kappa, readers: number): FoundCell[] {
  const { kappa: value, standardError, lower, upper, observed, expected, n, sentence } = kappa;
  const { head } = words;
  const inputs = how.kappaFrom(n, readers);
  const title = (heading: string) => `${name}, ${heading}`;
  const limits = lower === null || upper === null ? null : text.limit.between(two(lower), two(upper));
  const told: HowFound = {
    sentence,
    inputs,
    method: `${kappa.method}.`,
    sure: limits === null || standardError === null ? how.noneStated : how.kappaSure(two(standardError), limits),
    doubts: kappa.doubts,
  };
  return [
    { shown: name, values: [name] },
    {
      shown: (
        <Found title={title(head.kappa)} how={told}>
          {value === null ? text.findings.standsOut.cannotTell : two(value)}
        </Found>
      ),
      values: [value, standardError],
    },
    {
      shown:
        limits === null ? (
          text.none
        ) : (
          <Found title={title(head.interval)} how={{ ...told, sure: how.isInterval }}>
            <span className="figure">{limits}</span>
          </Found>
        ),
      values: [lower, upper],
    },
    share(title(head.observed), observed, { inputs, method: how.kappaShare, sure: how.exact }),
    share(title(head.expected), expected, { inputs, method: how.kappaChance, sure: how.noneStated }),
    {
      shown: (
        <Found title={title(head.n)} how={{ inputs, method: how.kappaCount, sure: how.exact, doubts: kappa.doubts }}>
          {n}
        </Found>
      ),
      values: [n],
    },
    { shown: <span className="soft small">{sentence}</span>, values: [sentence] },
  ];
}

function two(value: number): string {
  return value.toFixed(2).replace('-', '\u2212');
}

function share(title: string, value: number | null, how: HowFound): FoundCell {
  return {
    shown:
      value === null ? (
        text.none
      ) : (
        <Found title={title} how={how}>
          {sharePercent(value)}
        </Found>
      ),
    values: [value],
  };
}
