import type { Comparison as GroupComparison } from '@provinghouse/core';
import { text } from '../../lib/text.ts';
import { FoundTable } from './found-table.tsx';
import { Found } from './how-found.tsx';
import { toldHow } from './summary-how.tsx';

const { how, testsHead, testNames } = text.findings;

interface ComparisonTestsProps {
  readonly file: string;
  readonly size: string;
  readonly statistics: GroupComparison;
}

interface Test {
  readonly method: string;
  readonly sentence: string;
  readonly doubts: readonly string[];
  readonly p: number | null;
}

/** The tests over all products of a size, each with its sentence. */
export function ComparisonTests({ file, size, statistics }: ComparisonTestsProps) {
  const { welch, classic, ranks, equalScatter, effect, groups } = statistics;
  const { brownForsythe, bartlett } = equalScatter;
  const tests = [
    { name: testNames.welch, sign: 'F', statistic: welch.f, degrees: degreesOf(welch), test: welch },
    { name: testNames.classic, sign: 'F', statistic: classic.f, degrees: degreesOf(classic), test: classic },
    { name: testNames.ranks, sign: 'H', statistic: ranks.h, degrees: String(ranks.degreesOfFreedom), test: ranks },
    {
      name: testNames.brownForsythe,
      sign: 'F',
      statistic: brownForsythe.statistic,
      degrees: degreesOf(brownForsythe),
      test: brownForsythe,
    },
    {
      name: testNames.bartlett,
      sign: 'χ²',
      statistic: bartlett.statistic,
      degrees: degreesOf(bartlett),
      test: bartlett,
    },
    { name: testNames.effect, sign: 'ω²', statistic: effect.omegaSquared, degrees: null, test: { ...effect, p: null } },
  ];
  const inputs = how.allProducts(groups.map((group) => group.name));
  return (
    <FoundTable
      title={text.findings.ofSize(text.findings.tests, size)}
      note={text.findings.testsHow}
      file={`${file}-tests`}
      className="found-tests"
      columns={[
        { heading: testsHead.test, keys: ['test'] },
        { heading: testsHead.statistic, keys: ['statistic', 'degrees_of_freedom'], isNumber: true },
        { heading: testsHead.p, keys: ['p'], isNumber: true },
        { heading: testsHead.says, keys: ['says'] },
      ]}
      groups={[
        {
          key: 'tests',
          rows: tests.map(({ name, sign, statistic, degrees, test }) => {
            const made = degrees === null ? inputs : `${inputs}; ${how.degrees(degrees)}`;
            return {
              key: name,
              cells: [
                { shown: name, values: [name] },
                {
                  shown: (
                    <TestNumber title={`${name}, ${sign}`} test={test} inputs={made} words={wordsOf(sign, statistic)} />
                  ),
                  values: [statistic, degrees],
                },
                {
                  shown: (
                    <TestNumber
                      title={`${name}, p`}
                      test={test}
                      inputs={made}
                      words={test.p === null ? null : text.findings.chance(test.p)}
                    />
                  ),
                  values: [test.p],
                },
                { shown: <span className="soft small">{test.sentence}</span>, values: [test.sentence] },
              ],
            };
          }),
        },
      ]}
    />
  );
}

interface TestNumberProps {
  readonly title: string;
  readonly test: Test;
  readonly inputs: string;
  readonly words: string | null;
}

function TestNumber({ title, test, inputs, words }: TestNumberProps) {
  if (words === null) return text.none;
  return (
    <Found title={title} how={toldHow(test, inputs, how.testSure)}>
      <span className="figure">{words}</span>
    </Found>
  );
}

function wordsOf(sign: string, statistic: number | null): string | null {
  return statistic === null ? null : `${sign}\u00a0=\u00a0${statistic.toPrecision(3)}`;
}

function degreesOf(test: {
  readonly degreesOfFreedomBetween: number;
  readonly degreesOfFreedomWithin: number | null;
}): string {
  const within = test.degreesOfFreedomWithin;
  const round = (value: number) => String(Number(value.toFixed(1)));
  return within === null
    ? round(test.degreesOfFreedomBetween)
    : how.degreesOf(round(test.degreesOfFreedomBetween), round(within));
}
