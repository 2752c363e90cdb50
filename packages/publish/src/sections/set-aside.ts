import type { PieceFinding } from '@provinghouse/contract';
import type { ReportDocument } from '../document.ts';
import { codeColumn, codeName, codeText } from '../typst/code.ts';
import { literal, type Typst } from '../typst/escape.ts';
import { caption, note, paragraph, section, table } from '../typst/table.ts';
import { measured, significant } from '../words/number.ts';
import { cell, forceShown } from '../words/piece.ts';
import { sentences } from '../words/sentence.ts';

/** Pulls that are no plain values: not used, or only "at least"; pieces never pulled; repeats. */
export function setAsideSection(document: ReportDocument): Typst {
  const { pieces } = document.finding;
  const aside = pieces.filter((piece) => piece.pull !== null && piece.pull.use !== 'value');
  const unpulled = pieces.filter((piece) => piece.pull === null).map((piece) => piece.piece);
  const repeats = pieces.filter((piece) => piece.otherPulls.length > 0);
  return [
    section('Pulls set aside'),
    ...(aside.length === 0
      ? [paragraph(literal('Every pull that was made counts as a plain value.'))]
      : asideTable(aside)),
    ...(unpulled.length === 0 ? [] : [paragraph('strong("Not pulled:")', '" "', literal(`${unpulled.join(', ')}.`))]),
    ...repeats.map((piece) =>
      paragraph(literal(`Further pulls of ${piece.piece}, listed but not judged: ${piece.otherPulls.join(', ')}.`)),
    ),
  ].join('\n');
}

function asideTable(pieces: readonly PieceFinding[]): Typst[] {
  const rows = pieces.map((piece) => [
    codeName(piece.piece),
    codeText(piece.pull?.pull ?? ''),
    literal(piece.pull?.use === 'none' ? 'not used' : 'at least'),
    literal(piece.pull?.maximum ? measured(piece.pull.maximum) : significant(forceShown(piece), 4)),
    cell(sentences([...(piece.pull?.reasons ?? []), ...(piece.pull?.note ? [`Note: ${piece.pull.note}`] : [])])),
  ]);
  return [
    caption(literal('Pulls that are less than a plain value')),
    table(
      [
        codeColumn(
          'Piece',
          pieces.map((piece) => piece.piece),
        ),
        codeColumn(
          'Pull',
          pieces.map((piece) => piece.pull?.pull ?? ''),
        ),
        { heading: 'Used as' },
        { heading: 'Force reached', unit: 'kN', align: 'right' },
        { heading: 'Why', width: '1fr' },
      ],
      rows,
    ),
    note(
      literal(
        'A pull not used is listed here and in the figures and enters no mean, no comparison and no verdict. A force "at least" can show that a minimum was reached, never that it was missed; it enters no mean.',
      ),
    ),
  ];
}
