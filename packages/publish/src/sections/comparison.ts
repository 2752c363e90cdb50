import type { Comparison, ProductFinding } from '@provinghouse/contract';
import type { ValueForMoney } from '@provinghouse/core';
import {
  breakingForceDots,
  type ComparisonIntervals,
  comparisonExtent,
  comparisonIntervals,
  dotsOf,
  intervalsOf,
} from '@provinghouse/figure';
import type { ReportDocument } from '../document.ts';
import { onPaper } from '../figure/paper.ts';
import { codeName } from '../typst/code.ts';
import { literal, type Typst } from '../typst/escape.ts';
import { bullets, caption, note, paragraph, section, subsection, table } from '../typst/table.ts';
import { asWritten, decimals, significant } from '../words/number.ts';

/** Products of one size side by side; a difference within the scatter is called one. */
export function comparisonSection(document: ReportDocument): Typst {
  const { comparisons } = document.finding;
  return [
    section('Comparison by size'),
    ...(comparisons.length === 0 ? [paragraph(literal('There is nothing to compare.'))] : []),
    ...comparisons.flatMap((comparison) => compare(comparison, document)),
  ].join('\n');
}

function compare(comparison: Comparison, document: ReportDocument): Typst[] {
  const products = comparison.products.flatMap(
    (code) => document.finding.products.find((product) => product.product === code) ?? [],
  );
  const dots = dotsOf(products, document.finding.pieces);
  const intervals = intervalsOf(comparison.statistics);
  return [
    `#need(${Math.min(120 + 27 * products.length + 26 * comparison.sentences.length, 500)})`,
    subsection(`${asWritten(comparison.nominalSize_mm)} mm`),
    ...(comparison.sentences.length === 0 ? [] : [bullets(comparison.sentences.map(literal))]),
    ...(dots.products.every((product) => product.pieces.length === 0)
      ? [paragraph(literal('No piece of this size shows a breaking force.'))]
      : [
          caption(literal('Every piece on one force scale')),
          onPaper((setting) => breakingForceDots(dots, setting)),
          note(
            literal(
              'Nothing is hidden behind a mean: each piece has its mark. An arrow or a ring is in no mean and in no bound.',
            ),
          ),
        ]),
    ...(intervals === null ? [] : pairFigures(intervals)),
    comparisonTable(products),
    note(
      literal(
        'Over minimum: mean above the minimum breaking force. Force per mass and per price: mean breaking force over kilograms per metre and over the price of a metre. No order of merit is meant by the order of the rows.',
      ),
    ),
    ...worthLines(comparison.worth),
  ];
}

/** What each product gives for mass, price and against its minimum, with limits, and who is likeliest best by each. */
function worthLines({ margin, forcePerMass, forcePerPrice }: ValueForMoney): Typst[] {
  const tables = [margin, forcePerMass, forcePerPrice].filter((one) => one.worths.length > 0);
  if (tables.length === 0) return [];
  return [
    caption(literal('The same with limits')),
    bullets(tables.map((one) => literal([...one.worths.map((worth) => worth.sentence), one.order.sentence].join(' ')))),
  ];
}

/** Rows of pairs that fit on a page together. */
const pairsOnAPage = 36;

/** Each pair with its interval, all on one scale however many pages they take. */
function pairFigures(intervals: ComparisonIntervals): Typst[] {
  const extent = comparisonExtent(intervals.pairs);
  const parts = Array.from({ length: Math.ceil(intervals.pairs.length / pairsOnAPage) }, (_, index) =>
    intervals.pairs.slice(index * pairsOnAPage, (index + 1) * pairsOnAPage),
  );
  return [
    caption(literal('Differences of the mean breaking forces, with intervals that hold for all pairs at once')),
    ...parts.map((pairs) => onPaper((setting) => comparisonIntervals({ ...intervals, pairs, extent }, setting))),
    note(
      literal(
        'Only an interval that stays clear of zero tells two products apart. Not distinguishable does not mean equal: these pieces do not show a difference.',
      ),
    ),
  ];
}

function comparisonTable(products: readonly ProductFinding[]): Typst {
  return table(
    [
      { heading: 'Product', width: '1fr' },
      { heading: 'n', align: 'right' },
      { heading: 'Mean', unit: 'kN', align: 'right' },
      { heading: 'Std dev.', unit: 'kN', align: 'right' },
      { heading: 'Least', unit: 'kN', align: 'right' },
      { heading: 'Greatest', unit: 'kN', align: 'right' },
      { heading: 'Over minimum', unit: '%', align: 'right' },
      { heading: 'Elongation, mean', unit: '%', align: 'right' },
      { heading: 'Per mass', unit: 'kN m/kg', align: 'right' },
      { heading: 'Per price', unit: 'kN m', align: 'right' },
    ],
    products.map((product) => [
      codeName(product.product),
      literal(String(product.breakingForce.n)),
      literal(significant(product.breakingForce.mean, 4)),
      product.breakingForce.n === 1 ? 'quiet("none: n = 1")' : literal(significant(product.breakingForce.sd, 2)),
      literal(significant(product.breakingForce.least, 4)),
      literal(significant(product.breakingForce.greatest, 4)),
      literal(decimals(product.marginOverMinimum_pct, 1)),
      literal(significant(product.elongation.mean)),
      literal(significant(product.forcePerMass_kN_m_per_kg)),
      literal(significant(product.forcePerPrice_kN_m)),
    ]),
  );
}
