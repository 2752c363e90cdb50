import type { ReportDocument } from '../document.ts';
import { codeColumn, codeName } from '../typst/code.ts';
import { joined, literal, type Typst } from '../typst/escape.ts';
import { caption, note, paragraph, section, table } from '../typst/table.ts';
import { day } from '../words/day.ts';
import { asWritten, decimals, significant } from '../words/number.ts';
import { cell } from '../words/piece.ts';

/** What was tested: products with their claims, samples as received, how they were chosen. */
export function productsSection(document: ReportDocument): Typst {
  const { campaign, products, samples } = document.finding;
  return [
    section('Products and samples'),
    paragraph('strong("How the samples were chosen.")', '" "', literal(campaign.sampling ?? 'Not recorded.')),
    ...(products.length === 0 ? [paragraph(literal('No products are recorded.'))] : productTable(document)),
    ...(samples.length === 0 ? [paragraph(literal('No samples are recorded.'))] : sampleTable(document)),
  ].join('\n');
}

function productTable(document: ReportDocument): Typst[] {
  const rows = document.finding.products.map((product) => [
    joined([codeName(product.product), 'linebreak()', literal(product.supplier)]),
    cell(product.description),
    literal(product.specification.title),
    literal(asWritten(product.claimedBreakingForce_kN)),
    literal(product.pricePerMetre === null ? '–' : `${decimals(product.pricePerMetre, 2)} ${product.currency ?? ''}`),
    literal(significant(product.massPerMetre_kg_per_m, 4)),
    literal(String(product.pieces.length)),
  ]);
  return [
    caption(literal('Products')),
    table(
      [
        codeColumn(
          'Product, supplier',
          document.finding.products.map((product) => product.product),
        ),
        { heading: 'As sold', width: '1.2fr' },
        { heading: 'Sold under', width: '1fr' },
        { heading: 'Claimed', unit: 'kN', align: 'right' },
        { heading: 'Price', unit: 'per metre', align: 'right' },
        { heading: 'Mass', unit: 'kg/m', align: 'right' },
        { heading: 'Pieces', align: 'right' },
      ],
      rows,
    ),
    note(
      literal(
        'Supplier, description, specification, claimed breaking force and price are statements of the suppliers or of who asked, not results of this laboratory. Mass per metre was measured on the samples.',
      ),
    ),
  ];
}

function sampleTable(document: ReportDocument): Typst[] {
  const rows = document.finding.samples.map((sample) => [
    codeName(sample.sample),
    literal(day(sample.received_on)),
    cell(sample.received_by),
    cell(sample.bought_from),
    cell(sample.batch_mark),
    literal(significant(sample.length_m)),
    literal(significant(sample.mass_kg, 4)),
    cell(sample.condition),
  ]);
  return [
    caption(literal('Samples as received')),
    table(
      [
        codeColumn(
          'Sample',
          document.finding.samples.map((sample) => sample.sample),
        ),
        { heading: 'Received' },
        { heading: 'By' },
        { heading: 'Bought', width: '1fr' },
        { heading: 'Marks found', width: '0.8fr' },
        { heading: 'Length', unit: 'm', align: 'right' },
        { heading: 'Mass', unit: 'kg', align: 'right' },
        { heading: 'Condition', width: '1fr' },
      ],
      rows,
    ),
  ];
}
