import { readFileSync } from 'node:fs';
import { InputError } from '@provinghouse/core';
import { issueDay } from '../issue-day.ts';
import { literal, type Typst, verbatim } from '../typst/escape.ts';
import { labelText } from './address.ts';
import { type LabelDocument, type PieceLabel, type SheetMeasures, sheetMeasures } from './document.ts';
import { qrSvg } from './qr.ts';

const house = readFileSync(new URL('./label.typ', import.meta.url), 'utf8');

/** Signs of a code that stand legibly on the smallest label. */
const longestCode = 64;

/**
 * The Typst source of a run of labels. The same document gives the same text.
 *
 * @throws InputError `report/issue-date`, `report/label-none`, `report/label-used`, `report/label-origin`,
 * `report/label-too-long`
 */
export function labelSource(document: LabelDocument): Typst {
  const measures = sheetMeasures[document.sheet];
  const used = usedLabels(document, measures);
  if (document.labels.length === 0) {
    throw new InputError(
      'report/label-none',
      'There is no piece to print a label for; cut the samples into pieces first.',
    );
  }
  const { year, month, day } = issueDay(document.printedOn);
  const { page, label, top, columns } = measures;
  const empty = Array.from({ length: used }, () => `empty-label(width: ${label.width}mm, height: ${label.height}mm)`);
  const printed = document.labels.map((one) => labelCall(one, document, measures));
  return [
    house,
    '// body',
    '#show: labels.with(',
    `  title: ${literal(`Labels of ${document.campaign}`)},`,
    `  issued: datetime(year: ${year}, month: ${month}, day: ${day}),`,
    `  page-size: (${page.width}mm, ${page.height}mm),`,
    `  top: ${top}mm,`,
    ')',
    `#label-grid(columns: ${columns},`,
    ...[...empty, ...printed].map((call) => `  ${call},`),
    ')',
    '',
  ].join('\n');
}

function usedLabels({ used = 0, sheet }: LabelDocument, { columns, rows }: SheetMeasures): number {
  const most = columns * rows - 1;
  if (Number.isInteger(used) && used >= 0 && used <= most) return used;
  throw new InputError(
    'report/label-used',
    `${used} labels of the first sheet used: on ${sheet} it can be 0 to ${most}.`,
    {
      used,
      most,
    },
  );
}

function requireReadable(piece: string): void {
  if (piece.length <= longestCode) return;
  throw new InputError(
    'report/label-too-long',
    `The code "${piece.slice(0, 80)}" has ${piece.length} signs; a label shows ${longestCode} at most. Give the piece a shorter code.`,
    { piece, longestCode },
  );
}

function labelCall(label: PieceLabel, document: LabelDocument, { label: size, code, inset }: SheetMeasures): Typst {
  requireReadable(label.piece);
  const text = labelText({ origin: document.origin, campaign: document.campaign, piece: label.piece });
  const parts = [
    verbatim(label.piece),
    verbatim(document.campaign),
    literal(details(label).join(', ')),
    JSON.stringify(qrSvg(text, code)),
    verbatim(`QR code: ${text}`),
    `width: ${size.width}mm, height: ${size.height}mm, side: ${code}mm, inset: ${inset}mm`,
    `marks: ${document.withCuttingMarks === true}`,
  ];
  return `piece-label(${parts.join(', ')})`;
}

function details({ links, nominalSize_mm }: PieceLabel): string[] {
  return [
    ...(links === null ? [] : [`${links} ${links === 1 ? 'link' : 'links'}`]),
    ...(nominalSize_mm === null ? [] : [`${nominalSize_mm} mm`]),
  ];
}
