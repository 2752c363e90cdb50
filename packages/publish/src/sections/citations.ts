import type { ReportDocument } from '../document.ts';
import { literal, type Typst } from '../typst/escape.ts';
import { paragraph, section, table } from '../typst/table.ts';
import { numberCitations } from '../words/citation.ts';

/** What the numbers in brackets stand for. */
export function citationsSection(document: ReportDocument): Typst {
  const { list } = numberCitations(document.finding);
  if (list.length === 0) return [section('Sources'), paragraph(literal('No source is cited.'))].join('\n');
  return [
    section('Sources'),
    table(
      [{ heading: 'No.', align: 'right' }, { heading: 'Kind' }, { heading: 'Source', width: '1fr' }],
      list.map((citation, index) => [`cited(${index + 1})`, literal(citation.kind), literal(citation.text)]),
    ),
  ].join('\n');
}
