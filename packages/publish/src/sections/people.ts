import type { ReportDocument } from '../document.ts';
import { joined, literal, type Typst } from '../typst/escape.ts';
import { paragraph, section, table } from '../typst/table.ts';
import { cell } from '../words/piece.ts';

/** Who did what, and the lines for signatures that have not been given. */
export function peopleSection(document: ReportDocument): Typst {
  const { people } = document.finding;
  const rows = people.map((person) => [`strong(${literal(person.name)})`, literal(person.person), cell(person.role)]);
  return [
    '#need(190)',
    section('People and signatures'),
    rows.length === 0
      ? paragraph(literal('Nobody is named in the record.'))
      : table(
          [
            { heading: 'Name', width: '0.8fr' },
            { heading: 'In the tables' },
            { heading: 'Part in this campaign', width: '1.4fr' },
          ],
          rows,
        ),
    paragraph(
      joined([
        'strong("This report is not signed.")',
        '" "',
        literal('Nobody has approved it. The lines below are empty until a person signs.'),
      ]),
    ),
    '#signature("Tests carried out by")',
    '#signature("Report approved by")',
  ].join('\n');
}
