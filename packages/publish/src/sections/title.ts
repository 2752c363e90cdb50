import { identityOf, type ReportDocument } from '../document.ts';
import { codeColumn, codeName } from '../typst/code.ts';
import { joined, literal, type Typst, verbatim } from '../typst/escape.ts';
import { bullets, caption, facts, note, table } from '../typst/table.ts';
import { day, span } from '../words/day.ts';
import { asWritten } from '../words/number.ts';
import { cell, verdictMark } from '../words/piece.ts';

/** First page: the question, who asked, the answer, and how each product stands. */
export function titleSection(document: ReportDocument): Typst {
  const { campaign, answers } = document.finding;
  return [
    '#v(6mm)',
    '#text(size: 9pt, weight: 600, fill: teal, tracking: 0.08em)[REPORT OF TESTS ON CHAIN]',
    `#block(above: 10pt, below: 14pt, text(size: 22pt, weight: 600, par(leading: 0.4em, ${literal(campaign.title)})))`,
    `#block(above: 6pt, below: 14pt, text(size: 12.5pt, style: "italic", ${literal(campaign.question)}))`,
    titleFacts(document),
    `#block(above: 16pt, below: 6pt, sticky: true, text(size: 11pt, weight: 600, fill: teal, "The answer"))`,
    bullets(
      answers.length === 0 ? [literal('No product was judged, so there is no answer yet.')] : answers.map(literal),
    ),
    ...standing(document),
    '#pagebreak(weak: true)',
    '#contents()',
  ].join('\n');
}

function titleFacts(document: ReportDocument): Typst {
  const { campaign, pieces } = document.finding;
  const tested = span(pieces.map((piece) => piece.pull?.pulledAt ?? null));
  return facts([
    { name: 'Asked by', content: cell(campaign.client) },
    { name: 'Laboratory', content: cell(campaign.laboratory) },
    { name: 'Campaign opened', content: literal(day(campaign.opened_on)) },
    { name: 'Pulls made', content: literal(tested ?? 'no dates recorded') },
    { name: 'Issued', content: joined([literal(day(document.issuedOn)), '", not signed"']) },
    {
      name: 'Identity',
      content: joined([
        verbatim(identityOf(document)),
        'linebreak()',
        `quiet(${verbatim(`record head ${document.recordHead}`)})`,
      ]),
    },
  ]);
}

function standing(document: ReportDocument): Typst[] {
  const { products, pieces } = document.finding;
  if (products.length === 0) return [];
  const rows = products.map((product) => {
    const pulled = pieces.filter((piece) => piece.product === product.product && piece.pull !== null).length;
    return [
      codeName(product.product),
      literal(product.supplier),
      literal(asWritten(product.nominalSize_mm)),
      literal(product.specification.title),
      literal(`${pulled} of ${product.pieces.length}`),
      verdictMark(product.standing),
    ];
  });
  return [
    caption(literal('Standing of each product against the specification it is sold under')),
    table(
      [
        codeColumn(
          'Product',
          products.map((product) => product.product),
        ),
        { heading: 'Supplier' },
        { heading: 'Size', unit: 'mm', align: 'right' },
        { heading: 'Judged by', width: '1fr' },
        { heading: 'Pieces pulled', align: 'right' },
        { heading: 'Standing', width: '31mm' },
      ],
      rows,
    ),
    note(
      literal(
        'One failed requirement fails the product; else one doubt leaves it inconclusive. Results hold only for the items tested, as received. What a product is judged by, and how, stands in the sections that follow.',
      ),
    ),
  ];
}
