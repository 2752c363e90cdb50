import type { PieceFinding, ProductFinding } from '@provinghouse/contract';
import { adherenceWords, type ThicknessRule, thicknessRules, type ZincSurvey } from '@provinghouse/core';
import type { ReactNode } from 'react';
import { Figure } from '../../components/figure.tsx';
import { Opens } from '../../components/opens.tsx';
import { figureText } from '../../lib/figure.ts';
import { text } from '../../lib/text.ts';
import { PieceLine, PieceLines } from './counted-pieces.tsx';
import { type FoundCell, type FoundColumn, FoundTable } from './found-table.tsx';
import { Found, FoundFigure } from './how-found.tsx';
import { zincMeanHow } from './zinc-how.ts';

const { how, zincHead: head } = text.findings;

interface ZincTablesProps {
  readonly code: string;
  readonly products: readonly ProductFinding[];
  readonly pieces: readonly PieceFinding[];
}

/** The zinc of each product beside what is recommended, and how it held on the pieces after the pull. */
export function ZincTables({ code, products, pieces }: ZincTablesProps) {
  const [rule] = thicknessRules();
  return (
    <>
      <FoundTable
        title={text.findings.zincSurvey}
        file={`${code}-zinc`}
        className="summary"
        columns={surveyColumns}
        groups={[
          {
            key: 'zinc',
            rows: products.map((product) => ({
              key: product.product,
              cells: surveyCells({
                code,
                product,
                rule,
                pieces: pieces.filter((piece) => piece.product === product.product),
              }),
            })),
          },
        ]}
      />
      <Adherence code={code} products={products} pieces={pieces} />
    </>
  );
}

const surveyColumns: readonly FoundColumn[] = [
  { heading: head.product, keys: ['product'] },
  { heading: head.readings, keys: ['readings'], isNumber: true },
  { heading: head.mean, keys: ['mean_um', 'standard_uncertainty_um'], isNumber: true },
  { heading: head.least, keys: ['least_link_mean_um'], isNumber: true },
  { heading: head.rule, keys: ['recommended_least_um'] },
  { heading: head.against, keys: ['least_link_mean_against_it'] },
  { heading: head.adherence, keys: ['worst_adherence'] },
  { heading: head.flaked, keys: ['greatest_bare_share_pct'], isNumber: true },
];

interface Surveyed {
  readonly code: string;
  readonly product: ProductFinding;
  readonly pieces: readonly PieceFinding[];
  readonly rule: ThicknessRule | undefined;
}

function surveyCells({ code, product, pieces, rule }: Surveyed): FoundCell[] {
  const { zinc, product: name } = product;
  const u = zinc?.standardUncertainty_um ?? null;
  const read = <SurveyedPieces code={code} pieces={pieces} />;
  const least = zinc?.leastLinkMean_um ?? null;
  return [
    { shown: name, values: [name] },
    {
      shown: (
        <Found title={`${name}, ${head.readings}`} how={{ inputs: read, method: how.zincCount, sure: how.exact }}>
          {zinc?.readings ?? 0}
        </Found>
      ),
      values: [zinc?.readings ?? 0],
    },
    {
      shown: (
        <FoundFigure
          title={`${name}, ${head.mean}`}
          value={zinc?.mean_um ?? null}
          unit="um"
          uncertainty={u === null ? null : 2 * u}
          how={{ ...zincMeanHow(zinc), inputs: read }}
        />
      ),
      values: [zinc?.mean_um ?? null, u],
    },
    {
      shown: (
        <FoundFigure
          title={`${name}, ${head.least}`}
          value={least}
          unit="um"
          how={{ inputs: read, method: how.zincLeast, sure: how.zincLeastSure }}
        />
      ),
      values: [least],
    },
    ...ruleCells(rule, least),
    adherenceCell(name, zinc, read),
    {
      shown: (
        <FoundFigure
          title={`${name}, ${head.flaked}`}
          value={zinc?.greatestFlakedShare_pct ?? null}
          unit="%"
          how={{ inputs: read, method: how.flaked, sure: how.flakedSure }}
        />
      ),
      values: [zinc?.greatestFlakedShare_pct ?? null],
    },
  ];
}

/** The pieces of a product whose zinc was read, each with its mean. */
function SurveyedPieces({ code, pieces }: { readonly code: string; readonly pieces: readonly PieceFinding[] }) {
  const read = pieces.filter((piece) => piece.zinc !== null);
  if (read.length === 0) return how.noneSuch;
  return read.map(({ piece, zinc }) => (
    <PieceLine key={piece} code={code} piece={piece}>
      {how.readings(zinc?.readings ?? 0)}
      {zinc?.mean_um == null ? null : `, ${head.mean.split(' ')[0]} ${figureText({ value: zinc.mean_um, unit: 'um' })}`}
      {zinc?.worstAdherence == null ? null : `, ${text.findings.adherenceGrade(zinc.worstAdherence)}`}
    </PieceLine>
  ));
}

function ruleCells(rule: ThicknessRule | undefined, least: number | null): FoundCell[] {
  if (rule === undefined) {
    const none = { shown: text.none, values: [null] };
    return [none, none];
  }
  const { above, below, unknown } = text.findings.zincStands;
  const stands = least === null ? unknown : least >= rule.leastMean_um ? above : below;
  return [
    {
      shown: (
        <Opens title={head.rule} content={<RuleSources rule={rule} />}>
          <span className="figure">{text.findings.zincRule(figureText({ value: rule.leastMean_um, unit: 'um' }))}</span>
        </Opens>
      ),
      values: [rule.leastMean_um],
    },
    { shown: stands, values: [stands] },
  ];
}

function RuleSources({ rule }: { readonly rule: ThicknessRule }) {
  return (
    <>
      <p>{rule.statement}</p>
      <p>{how.zincRule}</p>
      <ul aria-label={text.origin.sources}>
        {rule.sources.map((source) => (
          <li key={source.url ?? source.citation}>
            {source.about ?? source.citation}
            {source.url === undefined ? null : <span className="line soft">{source.url}</span>}
          </li>
        ))}
      </ul>
      <p className="soft">{rule.crossChecked ? text.origin.checked : text.origin.unchecked}</p>
    </>
  );
}

function adherenceCell(name: string, zinc: ZincSurvey | null, inputs: ReactNode): FoundCell {
  const worst = zinc?.worstAdherence ?? null;
  return {
    shown:
      worst === null ? (
        <Figure value={null} unit="" />
      ) : (
        <Found title={`${name}, ${head.adherence}`} how={{ inputs, method: how.adherence, sure: how.adherenceSure }}>
          {worst}: {adherenceWords[worst]}
        </Found>
      ),
    values: [worst],
  };
}

/** Pieces by the worst grade of adherence that was seen on them. */
function Adherence({ code, products, pieces }: ZincTablesProps) {
  const read = pieces.filter((piece) => piece.zinc?.worstAdherence != null);
  if (read.length === 0) return <p className="soft">{text.findings.noAdherence}</p>;
  const grades = adherenceWords.map((_, grade) => grade);
  return (
    <FoundTable
      title={text.findings.adherence}
      note={adherenceWords.map((words, grade) => (
        <span key={words} className="adherence-key">
          {grade} {words}
        </span>
      ))}
      file={`${code}-adherence`}
      className="found-tally"
      columns={[
        { heading: head.product, keys: ['product'] },
        ...grades.map((grade) => ({ heading: String(grade), keys: [`grade_${grade}`], isNumber: true })),
        { heading: text.findings.adherenceHead.read, keys: ['read'], isNumber: true },
      ]}
      groups={[
        {
          key: 'adherence',
          rows: products.map(({ product }) => {
            const own = read.filter((piece) => piece.product === product);
            return {
              key: product,
              cells: [
                { shown: product, values: [product] },
                ...grades.map((grade) =>
                  gradeCell(
                    `${product}, ${text.findings.adherenceGrade(grade)}`,
                    code,
                    own.filter(({ zinc }) => zinc?.worstAdherence === grade),
                  ),
                ),
                gradeCell(`${product}, ${text.findings.adherenceHead.read}`, code, own),
              ],
            };
          }),
        },
      ]}
    />
  );
}

function gradeCell(title: string, code: string, pieces: readonly PieceFinding[]): FoundCell {
  const inputs = <PieceLines code={code} pieces={pieces.map(({ piece }) => piece)} />;
  return {
    shown:
      pieces.length === 0 ? (
        <span className="soft">0</span>
      ) : (
        <Found title={title} how={{ inputs, method: how.adherenceCount, sure: how.adherenceSure }}>
          {pieces.length}
        </Found>
      ),
    values: [pieces.length],
  };
}
