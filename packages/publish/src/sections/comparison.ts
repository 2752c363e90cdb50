import type { Comparison, ProductFinding } from '@provinghouse/contract';
import type { ReportDocument } from '../document.ts';
import { dotStrips, type Strip, type StripDot } from '../figure/dot-strip.ts';
import { codeName } from '../typst/code.ts';
import { literal, type Typst } from '../typst/escape.ts';
import { bullets, caption, note, paragraph, section, subsection, table } from '../typst/table.ts';
import { asWritten, decimals, significant } from '../words/number.ts';
import { forceShown } from '../words/piece.ts';

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
  const strips = products.map((product) => stripOf(product, document));
  return [
    `#need(${Math.min(120 + 27 * products.length + 26 * comparison.sentences.length, 500)})`,
    subsection(`${asWritten(comparison.nominalSize_mm)} mm`),
    ...(comparison.sentences.length === 0 ? [] : [bullets(comparison.sentences.map(literal))]),
    ...(strips.every((strip) => strip.dots.length === 0)
      ? [paragraph(literal('No piece of this size shows a breaking force.'))]
      : [
          caption(literal('Every piece on one force scale')),
          dotStrips(strips, 'kN'),
          note(
            literal(
              'Filled disc: a value, with its U as a line. Arrow: at least this much. Ring: pull not used. Full upright line: the minimum asked of the product. Broken upright line: mean of the filled discs.',
            ),
          ),
        ]),
    comparisonTable(products),
    note(
      literal(
        'Over minimum: mean above the minimum breaking force. Force per mass and per price: mean breaking force over kilograms per metre and over the price of a metre. No order of merit is meant by the order of the rows.',
      ),
    ),
  ];
}

function stripOf(product: ProductFinding, document: ReportDocument): Strip {
  const dots: StripDot[] = document.finding.pieces.flatMap((piece) => {
    const value = forceShown(piece);
    if (piece.product !== product.product || piece.pull === null || value === null) return [];
    const kind = piece.pull.use === 'none' ? 'excluded' : piece.pull.use;
    return [{ value, kind, expandedUncertainty: piece.pull.maximum?.expandedUncertainty ?? null }];
  });
  const minimum = product.specification.limits.find((limit) => limit.quantity === 'breakingForce')?.lower ?? null;
  return { name: product.product, dots, mean: product.breakingForce.mean, minimum };
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
