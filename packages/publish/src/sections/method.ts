import type { DecisionRule } from '@provinghouse/core';
import type { ReportDocument } from '../document.ts';
import { joined, literal, type Typst } from '../typst/escape.ts';
import { note, paragraph, section, subsection, table } from '../typst/table.ts';
import { asWritten } from '../words/number.ts';
import { cell } from '../words/piece.ts';
import { unitWords } from '../words/sentence.ts';

/** How the pulls were made, with what instruments, and how a value meets its limit. */
export function methodSection(document: ReportDocument): Typst {
  const { campaign, instruments, rule, ruleSentence } = document.finding;
  return [
    section('Method, instruments and decision rule'),
    paragraph(literal(campaign.method ?? 'The method is not recorded.'), '" "', literal(speedWindow(document))),
    ...departures(document),
    subsection('Instruments'),
    ...(instruments.length === 0 ? [paragraph(literal('No instruments are recorded.'))] : instrumentTable(document)),
    subsection('Decision rule'),
    paragraph(literal(ruleSentence), '" "', literal(risk(rule))),
    paragraph(
      literal(
        `Expanded uncertainties are U = k u with k = ${asWritten(campaign.coverage_factor)}. Values are printed to two significant digits of their U (JCGM 100:2008 7.2.6); verdicts are reached on unrounded numbers.`,
      ),
    ),
  ].join('\n');
}

function speedWindow(document: ReportDocument): string {
  const { table_speed_min_mm_per_min: least, table_speed_max_mm_per_min: greatest } = document.finding.campaign;
  if (least === null && greatest === null) return 'The method sets no limits to the table speed.';
  const from = least === null ? '' : ` at least ${asWritten(least)} mm/min`;
  const to = greatest === null ? '' : ` at most ${asWritten(greatest)} mm/min`;
  return `Table speed in the loaded part:${from}${from !== '' && to !== '' ? ' and' : ''}${to}.`;
}

/** Deviations from the method belong in the report (ISO/IEC 17025:2017 7.8.2.1 n). */
function departures(document: ReportDocument): Typst[] {
  const outside = document.finding.pieces.flatMap((piece) => {
    const share = piece.pull?.reading?.shareInsideRateLimits ?? null;
    return share === null || share >= 0.995 ? [] : [`${piece.piece} (${Math.round(100 * share)} % inside)`];
  });
  if (outside.length === 0) return [];
  return [
    paragraph(
      'strong("Departures.")',
      '" "',
      literal(`The speed left its limits for part of the loaded time: ${outside.join(', ')}.`),
    ),
  ];
}

function instrumentTable(document: ReportDocument): Typst[] {
  const { instruments, calibrations } = document.finding;
  const rows = instruments.flatMap((instrument) => {
    const own = calibrations.filter((calibration) => calibration.instrument === instrument.instrument);
    const unit = unitWords(instrument.unit);
    const range =
      instrument.range_minimum === null && instrument.range_maximum === null
        ? '–'
        : `${asWritten(instrument.range_minimum)} to ${asWritten(instrument.range_maximum)} ${unit}`;
    const facts = [
      joined([`strong(${literal(instrument.instrument)})`, 'linebreak()', literal(instrument.kind)]),
      cell(instrument.description),
      literal(`${asWritten(instrument.resolution)} ${unit}`),
      literal(range),
      literal(instrument.class === null ? '–' : asWritten(instrument.class)),
    ];
    if (own.length === 0) return [[...facts, 'strong("no certificate on record")', '"–"', '"–"']];
    return own.map((calibration, index) => [
      ...(index === 0 ? facts : facts.map(() => '""')),
      joined([literal(calibration.calibration), 'linebreak()', `quiet(${literal(`of ${calibration.calibrated_on}`)})`]),
      literal(calibration.due_on),
      literal(
        calibration.expanded_uncertainty === null
          ? 'by class'
          : `${asWritten(calibration.expanded_uncertainty)} ${unit}, k = ${asWritten(calibration.coverage_factor ?? 2)}`,
      ),
    ]);
  });
  return [
    table(
      [
        { heading: 'Instrument' },
        { heading: 'Description', width: '1fr' },
        { heading: 'Resolution' },
        { heading: 'Verified range' },
        { heading: 'Class' },
        { heading: 'Certificate', width: '27mm' },
        { heading: 'Due' },
        { heading: 'U on certificate' },
      ],
      rows,
    ),
    note(literal('Class: greatest error of indication in per cent, ISO 7500-1 for force.')),
  ];
}

/** The risk that goes with the rule must be stated (ISO/IEC 17025:2017 7.8.6.1; figures of ILAC-G8:09/2019). */
function risk(rule: DecisionRule): string {
  return rule === 'simple acceptance'
    ? 'A value at its limit has a risk of up to 50 % of being accepted wrongly (ILAC-G8:09/2019).'
    : 'With a guard band of U at 95 % coverage the risk of accepting wrongly is below 2.5 % (ILAC-G8:09/2019).';
}
