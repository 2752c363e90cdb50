import type { ReportDocument } from '../document.ts';
import { literal, type Typst } from '../typst/escape.ts';
import { bullets, paragraph, section, subsection } from '../typst/table.ts';

/** Usual words of caution. They hold for every campaign and cannot be switched off. */
const cautions: readonly string[] = [
  'The results hold only for the items tested, as received. They say nothing certain about other lengths, other batches or other purchases of the same product.',
  'This is not a lifting approval and no certificate of any product. Do not use chain for lifting, overhead, or where people may be below it or in line with it, on the strength of this report.',
  'A breaking force is not a working load. Where codes, rules of classification or law apply, they come first; the choice of chain for a use belongs to licensed or otherwise qualified practice.',
  'The chain that was tested has been pulled beyond its strength. No part of it may ever be used again; it should be cut and scrapped.',
  'A pull to destruction releases stored energy along the axis in an instant, more with a longer piece and a softer machine. Nobody stands in line at either end; a guard alone may not hold broken fittings; nobody approaches a held load; force is lowered before anything is touched.',
];

/** What the finding cannot say, what was doubtful on the way, and cautions for the reader. */
export function limitsSection(document: ReportDocument): Typst {
  const { limitsOfTheFinding, doubts } = document.finding;
  return [
    section('Limits, doubts and cautions'),
    subsection('Limits of the finding'),
    list(limitsOfTheFinding, 'None were stated.'),
    subsection('Doubts'),
    list(doubts, 'None were found.'),
    subsection('Cautions'),
    bullets(cautions.map(literal)),
  ].join('\n');
}

function list(items: readonly string[], none: string): Typst {
  return items.length === 0 ? paragraph(literal(none)) : bullets(items.map(literal));
}
