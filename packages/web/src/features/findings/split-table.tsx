import type { ProductFinding } from '@provinghouse/contract';
import type { StrengthSplit } from '@provinghouse/core';
import type { FigureSetting } from '@provinghouse/figure';
import { useMemo } from 'react';
import { StatisticFigure } from '../../components/statistic-figure.tsx';
import { figureText, uncertaintyText } from '../../lib/figure.ts';
import { text } from '../../lib/text.ts';
import { type FoundCell, FoundTable } from './found-table.tsx';
import { Found, FoundFigure, type HowFound } from './how-found.tsx';
import { splitFigure, splitFigureTable } from './split-figure.ts';

const { how, splitHead: head } = text.findings;

interface SplitTableProps {
  readonly file: string;
  readonly size: string;
  readonly products: readonly ProductFinding[];
}

/** Whether the force comes of the steel or of the bar: a picture, its numbers, and a sentence for each product. */
export function SplitTable({ file, size, products }: SplitTableProps) {
  const bars = useMemo(
    () =>
      products.flatMap(({ product, split }) =>
        split === null
          ? []
          : [
              {
                product,
                size_pct: over(split.sizeFactor),
                total_pct: split.totalFactor === null ? null : over(split.totalFactor),
              },
            ],
      ),
    [products],
  );
  const draw = useMemo(() => (setting: FigureSetting) => splitFigure(bars, setting), [bars]);
  if (bars.length === 0) return null;
  return (
    <>
      <StatisticFigure
        title={text.findings.ofSize(text.findings.split, size)}
        how={text.findings.splitHow}
        file={`${file}-split`}
        draw={draw}
        table={splitFigureTable(bars)}
      />
      <FoundTable
        title={text.findings.ofSize(text.findings.splitNumbers, size)}
        file={`${file}-steel-or-size`}
        columns={[
          { heading: head.product, keys: ['product'] },
          { heading: head.size, keys: ['by_size_pct'], isNumber: true },
          { heading: head.steel, keys: ['by_steel_pct'], isNumber: true },
          { heading: head.total, keys: ['together_pct'], isNumber: true },
          { heading: head.stress, keys: ['stress_gauged_N_per_mm2', 'standard_uncertainty_N_per_mm2'], isNumber: true },
          { heading: head.nominalStress, keys: ['stress_nominal_N_per_mm2'], isNumber: true },
          { heading: head.grade, keys: ['grade_of_the_steel'], isNumber: true },
          { heading: head.standard, keys: ['standard_grade'], isNumber: true },
          { heading: head.guarded, keys: ['standard_grade_guarded'], isNumber: true },
        ]}
        groups={[
          {
            key: 'split',
            rows: products.map((product) => ({ key: product.product, cells: cellsOf(product) })),
          },
        ]}
      />
      <dl className="facts found-facts">
        {products.map(({ product, split }) => (
          <div key={product} className="fact">
            <dt>{product}</dt>
            <dd>{split?.sentence ?? <span className="soft">{text.findings.noSplit}</span>}</dd>
          </div>
        ))}
      </dl>
    </>
  );
}

/** A factor as what it lies over one, in per cent. */
function over(factor: number): number {
  return 100 * (factor - 1);
}

function cellsOf(product: ProductFinding): FoundCell[] {
  const { split, product: name } = product;
  if (split === null) {
    const none = { shown: text.none, values: [null] };
    return [
      { shown: name, values: [name] },
      none,
      none,
      none,
      { shown: text.none, values: [null, null] },
      none,
      none,
      none,
      none,
    ];
  }
  const inputs = how.splitFrom(figureText({ value: product.breakingForce.mean ?? 0, unit: 'kN' }), areaText(product));
  const sure = sureOf(split);
  const of = (heading: string, method: string, known: string): { title: string; how: HowFound } => ({
    title: `${name}, ${heading}`,
    how: { sentence: split.sentence, inputs, method, sure: known },
  });
  const pct = (factor: number | null) => (factor === null ? null : over(factor));
  return [
    { shown: name, values: [name] },
    number(pct(split.sizeFactor), '%', of(head.size, how.sizeFactor, sure.size)),
    number(pct(split.steelFactor), '%', of(head.steel, how.steelFactor, sure.steel)),
    number(pct(split.totalFactor), '%', of(head.total, how.totalFactor, how.totalSure)),
    {
      shown: (
        <FoundFigure
          {...of(head.stress, how.stress, sure.stress)}
          value={split.stressOverMeasuredArea_N_per_mm2}
          unit="N/mm2"
        />
      ),
      values: [split.stressOverMeasuredArea_N_per_mm2, split.stressUncertainty_N_per_mm2],
    },
    number(split.stressOverNominalArea_N_per_mm2, 'N/mm2', of(head.nominalStress, how.nominalStress, how.totalSure)),
    number(Number(split.honestGrade.toFixed(1)), 'grade', of(head.grade, how.grade, sure.stress), split.honestGrade),
    number(split.standardGrade, 'grade', of(head.standard, how.standardGrade, how.gradeSure)),
    number(split.guardedStandardGrade, 'grade', of(head.guarded, how.guardedGrade, how.gradeSure)),
  ];
}

/** A grade is a number without a unit, written as it is. */
function number(
  value: number | null,
  unit: string,
  of: { title: string; how: HowFound },
  kept: number | null = value,
): FoundCell {
  return {
    shown: unit === 'grade' ? <GradeFigure value={value} of={of} /> : <FoundFigure {...of} value={value} unit={unit} />,
    values: [kept],
  };
}

function GradeFigure({ value, of }: { readonly value: number | null; readonly of: { title: string; how: HowFound } }) {
  if (value === null) return <FoundFigure {...of} value={null} unit="" />;
  return (
    <Found {...of}>
      <span className="figure">{value}</span>
    </Found>
  );
}

function sureOf(split: StrengthSplit) {
  const share = (u: number | null) => (u === null ? text.origin.noUncertainty : how.u(uncertaintyText(100 * u, '%')));
  const stress = split.stressUncertainty_N_per_mm2;
  return {
    size: share(split.sizeFactorUncertainty),
    steel: share(split.steelFactorUncertainty),
    stress: stress === null ? text.origin.noUncertainty : how.u(uncertaintyText(stress, 'N/mm2')),
  };
}

/** The mean gauged area of the counted pieces is not in the finding; it follows from the nominal one and the size factor. */
function areaText({ split }: ProductFinding): string {
  if (split === null) return text.notRecorded;
  return figureText({ value: split.sizeFactor * split.nominalArea_mm2, unit: 'mm2' });
}
