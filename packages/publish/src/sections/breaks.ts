import type { ReportDocument } from '../document.ts';
import { codeColumn, codeName, codeText } from '../typst/code.ts';
import { literal, type Typst } from '../typst/escape.ts';
import { caption, note, paragraph, section, type TableRow, table } from '../typst/table.ts';
import { cell } from '../words/piece.ts';
import { sentences } from '../words/sentence.ts';

/** Where and how the pieces parted: counts by product, then every reading of every examiner. */
export function breaksSection(document: ReportDocument): Typst {
  const { pieces } = document.finding;
  const read = pieces.filter((piece) => piece.breaks.length > 0);
  if (read.length === 0) return [section('Breaks'), paragraph(literal('No break was examined.'))].join('\n');
  const differing = read.filter((piece) => piece.examinersDiffer).map((piece) => piece.piece);
  const twice = read.filter((piece) => new Set(piece.breaks.map((reading) => reading.examiner)).size > 1).length;
  const agreement =
    twice === 0
      ? 'Each break was read by one examiner only, so nothing can be said about how well readers agree.'
      : differing.length === 0
        ? `${twice} of ${read.length} breaks were read by more than one examiner; they agree on all.`
        : `${twice} of ${read.length} breaks were read by more than one examiner. They differ on ${differing.join(', ')}; the first reading is the one counted.`;
  return [
    section('Breaks'),
    caption(literal('Counts by position and mode')),
    tallyTable(document),
    paragraph(literal(agreement)),
    ...agreementLines(document),
    caption(literal('Every reading')),
    readingTable(document),
    ...photographs(document),
  ].join('\n');
}

/** Agreement beyond chance, where two people or more read the breaks. */
function agreementLines({ finding }: ReportDocument): Typst[] {
  if (finding.agreement === null) return [];
  const { position, mode } = finding.agreement;
  return [
    paragraph(literal(`Where it broke: ${position.sentence}`)),
    paragraph(literal(`How it broke: ${mode.sentence}`)),
    note(literal(sentences([...new Set([...position.doubts, ...mode.doubts]), position.method]))),
  ];
}

function tallyTable(document: ReportDocument): Typst {
  const rows = document.finding.products.flatMap((product) => {
    if (product.breaks.length === 0) return [];
    const counts = product.breaks.map((tally) => `${tally.count} × ${tally.position}, ${tally.mode}`);
    const total = product.breaks.reduce((sum, tally) => sum + tally.count, 0);
    return [[codeName(product.product), literal(String(total)), literal(counts.join('; '))]];
  });
  return table(
    [
      codeColumn(
        'Product',
        document.finding.products.map((product) => product.product),
      ),
      { heading: 'Pieces read', align: 'right' },
      { heading: 'Position and mode', width: '1fr' },
    ],
    rows,
  );
}

function readingTable(document: ReportDocument): Typst {
  const rows: TableRow[] = document.finding.pieces.flatMap((piece) =>
    piece.breaks.map((reading, index) => [
      index === 0 ? codeName(piece.piece) : `quiet(${codeText(piece.piece)})`,
      literal(reading.link === 0 ? 'gripped' : String(reading.link)),
      literal(reading.examiner),
      literal(reading.position),
      literal(reading.mode),
      cell(reading.note),
      piece.examinersDiffer ? 'strong("differ")' : '""',
    ]),
  );
  return table(
    [
      codeColumn(
        'Piece',
        document.finding.pieces.map((piece) => piece.piece),
      ),
      { heading: 'Link' },
      { heading: 'Examiner' },
      { heading: 'Position' },
      { heading: 'Mode', width: '28mm' },
      { heading: 'Seen', width: '1fr' },
      { heading: 'Readers' },
    ],
    rows,
  );
}

/** Photographs are kept in the record; the report names them. */
function photographs(document: ReportDocument): Typst[] {
  const rows = document.finding.photographs.map((one) => [
    literal(one.file),
    cell(one.piece),
    cell(one.caption),
    cell(one.by),
  ]);
  if (rows.length === 0) return [];
  return [
    caption(literal('Photographs kept in the record')),
    table(
      [
        { heading: 'File', width: '1fr' },
        codeColumn(
          'Piece',
          document.finding.pieces.map((piece) => piece.piece),
        ),
        { heading: 'Shows', width: '1.4fr' },
        { heading: 'By' },
      ],
      rows,
    ),
  ];
}
