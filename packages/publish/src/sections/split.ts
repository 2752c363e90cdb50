import type { ProductFinding } from '@provinghouse/contract';
import type { StrengthSplit } from '@provinghouse/core';
import type { ReportDocument } from '../document.ts';
import { type SplitRow, splitFigure } from '../figure/split.ts';
import { codeColumn, codeName } from '../typst/code.ts';
import { literal, type Typst } from '../typst/escape.ts';
import { caption, note, paragraph, section, table } from '../typst/table.ts';
import { absent, asWritten, decimals, rounded } from '../words/number.ts';

interface Shown {
  readonly product: ProductFinding;
  readonly split: StrengthSplit;
}

/** Whether a chain is strong by its steel or by its size. */
export function splitSection(document: ReportDocument): Typst {
  const { products, campaign } = document.finding;
  const shown: Shown[] = products.flatMap((product) =>
    product.split === null ? [] : [{ product, split: product.split }],
  );
  const without = products.filter((product) => product.split === null).map((product) => product.product);
  const missing =
    without.length === 0
      ? []
      : [
          paragraph(
            literal(
              `No split for ${without.join(', ')}: it takes a breaking force and a gauged steel area on every piece that counts.`,
            ),
          ),
        ];
  return [
    section('Steel or size'),
    paragraph(
      literal(
        'A chain can pass its minimum because its steel is strong or because its bar is fat. Breaking force over minimum is the size factor (gauged over nominal area) times the steel factor (stress over the gauged steel against the stress of the grade).',
      ),
    ),
    ...(shown.length === 0 ? [] : splitTables(shown, campaign.coverage_factor)),
    ...missing,
  ].join('\n');
}

function splitTables(shown: readonly Shown[], coverageFactor: number): Typst[] {
  return [
    caption(literal('Mean piece of each product')),
    splitFigure(shown.map((one) => rowOf(one, coverageFactor))),
    note(
      literal(
        'Hollow square: stress over the nominal area, as the size on the mark promises. Filled square: over the gauged steel, with its U as a line where it is known. Upright line: stress of the grade claimed.',
      ),
    ),
    table(
      [
        codeColumn(
          'Product',
          shown.map((one) => one.product.product),
        ),
        { heading: 'Size factor', align: 'right' },
        { heading: 'Steel factor', align: 'right' },
        { heading: 'Over minimum', align: 'right' },
        { heading: 'Grade its steel bears', align: 'right', width: '19mm' },
        { heading: 'In words', width: '1fr' },
      ],
      shown.map(({ product, split }) => [
        codeName(product.product),
        literal(factor(split.sizeFactor, split.sizeFactorUncertainty, coverageFactor)),
        literal(factor(split.steelFactor, split.steelFactorUncertainty, coverageFactor)),
        literal(factor(split.totalFactor, null, coverageFactor)),
        literal(split.standardGrade === null ? 'none' : asWritten(split.standardGrade)),
        literal(split.sentence),
      ]),
    ),
  ];
}

function rowOf({ product, split }: Shown, coverageFactor: number): SplitRow {
  const standard = split.stressUncertainty_N_per_mm2;
  return {
    name: product.product,
    overNominal_N_per_mm2: split.stressOverNominalArea_N_per_mm2,
    overMeasured_N_per_mm2: split.stressOverMeasuredArea_N_per_mm2,
    expandedUncertainty_N_per_mm2: standard === null ? null : standard * coverageFactor,
    claimed_N_per_mm2: product.specification.gradeStress_N_per_mm2,
  };
}

function factor(value: number | null, standard: number | null, coverageFactor: number): string {
  if (value === null) return absent;
  if (standard === null || standard === 0) return decimals(value, 3);
  const text = rounded(value, standard * coverageFactor);
  return `${text.value} ± ${text.uncertainty}`;
}
