import { type Limit, rulebook, type Specification } from '@provinghouse/core';
import type { ReportDocument } from '../document.ts';
import { literal, type Typst } from '../typst/escape.ts';
import { note, paragraph, section, subsection, table } from '../typst/table.ts';
import { type NumberedCitations, numberCitations, remarkOn, sourceOf, specificationsOf } from '../words/citation.ts';
import { limitWords, quantityOf } from '../words/limit.ts';
import { asWritten } from '../words/number.ts';
import { sentences } from '../words/sentence.ts';

/** Every limit with its source and the marks of how far it can be trusted. */
export function requirementsSection(document: ReportDocument): Typst {
  const specifications = specificationsOf(document.finding);
  const citations = numberCitations(document.finding);
  return [
    section('Requirements and where they come from'),
    paragraph(
      literal(
        'The limits were taken from the pages cited, not from official copies of the standards. A boxed word warns: memory, written down without a page; inference, concluded from a pattern; derived, computed by a published formula; conflict, pages differ; suspect, probably a misprint.',
      ),
    ),
    ...(specifications.length === 0 ? [paragraph(literal('No specification is in use.'))] : []),
    ...specifications.flatMap((specification) => specificationTable(specification, citations)),
  ].join('\n');
}

/** The letter of the rulebook and what it means there. */
function confidence(specification: Specification): string {
  const meaning = rulebook.conventions.confidence[specification.confidence];
  return ` Confidence ${specification.confidence}${meaning === undefined ? '' : `: ${meaning}`}.`;
}

function specificationTable(specification: Specification, citations: NumberedCitations): Typst[] {
  const stress =
    specification.gradeStress_N_per_mm2 === null
      ? ''
      : ` Mean stress over both legs at the minimum breaking force: ${asWritten(specification.gradeStress_N_per_mm2)} N/mm².`;
  const remarks = specification.limits.flatMap((limit) => {
    const remark = remarkOn(limit);
    return remark === null ? [] : [`${quantityOf(limit)}: ${remark}`];
  });
  return [
    subsection(specification.title),
    paragraph(
      literal(
        `Standard ${specification.standard}, edition ${specification.edition}.${stress}${confidence(specification)}`,
      ),
    ),
    ...(specification.limits.length === 0
      ? [paragraph(literal('It gives no limits for this size and grade.'))]
      : [limitTable(specification.limits, citations)]),
    ...(remarks.length === 0 ? [] : [note(literal(sentences(remarks)))]),
  ];
}

function limitTable(limits: readonly Limit[], citations: NumberedCitations): Typst {
  return table(
    [
      { heading: 'Requirement', width: '0.9fr' },
      { heading: 'Limit', width: '24mm' },
      { heading: 'Nominal', align: 'right' },
      { heading: 'Unit' },
      { heading: 'Place, sources, marks', width: '1.25fr' },
      { heading: 'Second page' },
    ],
    limits.map((limit) => [
      literal(quantityOf(limit)),
      literal(limitWords(limit)),
      literal(asWritten(limit.nominal)),
      `unit(${literal(limit.unit)})`,
      sourceOf(limit, citations),
      literal(limit.provenance.crossChecked ? 'agrees' : 'none'),
    ]),
  );
}
