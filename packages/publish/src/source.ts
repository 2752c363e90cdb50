import { readFileSync } from 'node:fs';
import { identityOf, type ReportDocument } from './document.ts';
import { issueDay } from './issue-day.ts';
import { breaksSection } from './sections/breaks.ts';
import { citationsSection } from './sections/citations.ts';
import { comparisonSection } from './sections/comparison.ts';
import { derivationSection } from './sections/derivation.ts';
import { limitsSection } from './sections/limits.ts';
import { longChainSection } from './sections/long-chain.ts';
import { methodSection } from './sections/method.ts';
import { peopleSection } from './sections/people.ts';
import { productsSection } from './sections/products.ts';
import { requirementsSection } from './sections/requirements.ts';
import { resultsSection } from './sections/results.ts';
import { setAsideSection } from './sections/set-aside.ts';
import { splitSection } from './sections/split.ts';
import { titleSection } from './sections/title.ts';
import { zincSection } from './sections/zinc.ts';
import { literal, type Typst } from './typst/escape.ts';

const house = readFileSync(new URL('./typst/house.typ', import.meta.url), 'utf8');

/** Sections in the order in which they are printed. */
const sections: readonly ((document: ReportDocument) => Typst)[] = [
  titleSection,
  productsSection,
  methodSection,
  requirementsSection,
  resultsSection,
  setAsideSection,
  breaksSection,
  zincSection,
  splitSection,
  comparisonSection,
  longChainSection,
  limitsSection,
  derivationSection,
  peopleSection,
  citationsSection,
];

/**
 * The Typst source of a report: the house of styles, then one call for each thing shown. The same document gives the same
 * text. Throws an InputError (`report/issue-date`) when `issuedOn` is not a day of the calendar.
 */
export function reportSource(document: ReportDocument): Typst {
  const { campaign } = document.finding;
  const marking = campaign.marking === null || campaign.marking.trim() === '' ? 'none' : literal(campaign.marking);
  const { year, month, day } = issueDay(document.issuedOn);
  return [
    house,
    '// body',
    '#show: report.with(',
    `  title: ${literal(campaign.title)},`,
    `  identity: ${literal(identityOf(document))},`,
    `  marking: ${marking},`,
    `  issued: datetime(year: ${year}, month: ${month}, day: ${day}),`,
    ')',
    ...sections.map((section) => section(document)),
    '#end-mark()',
    '',
  ].join('\n');
}
