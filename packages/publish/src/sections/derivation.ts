import type { PieceFinding } from '@provinghouse/contract';
import type { ReportDocument } from '../document.ts';
import { codeColumn, codeName, codeText } from '../typst/code.ts';
import { joined, literal, type Typst, verbatim } from '../typst/escape.ts';
import { bullets, caption, note, paragraph, section, subsection, table } from '../typst/table.ts';
import { absent, decimals, significant } from '../words/number.ts';
import { cell } from '../words/piece.ts';
import { sentences } from '../words/sentence.ts';

/** What was read from each recording, and how anyone can come to the same numbers. */
export function derivationSection(document: ReportDocument): Typst {
  const { pieces } = document.finding;
  const recorded = pieces.filter((piece) => piece.pull?.reading);
  return [
    section('How to derive these numbers again'),
    paragraph(
      literal('Every number in this report follows from the raw record.'),
      `" Judged and set by "; ${verbatim(document.software)}; ". Record head "; ${verbatim(document.recordHead)}; "."`,
    ),
    bullets(
      [
        'Take the data package of the campaign; check each recording against the SHA-256 below.',
        'Read the columns named below from each recording; the maximum is the largest true reading before parting, after the spikes listed are left out.',
        'Compare each value with the limits of the requirements section by the decision rule.',
      ].map(literal),
    ),
    ...(recorded.length === 0
      ? [paragraph(literal('There are no recordings.'))]
      : [subsection('What the recordings say'), ...readingTable(recorded)]),
    ...hashes(pieces),
  ].join('\n');
}

function readingTable(pieces: readonly PieceFinding[]): Typst[] {
  const rows = pieces.flatMap((piece) => {
    const reading = piece.pull?.reading;
    if (!reading) return [];
    const interval = reading.stiffnessInterval95_kN_per_mm;
    const stiffness = literal(significant(reading.stiffness_kN_per_mm));
    return [
      [
        codeName(piece.piece),
        literal(String(reading.samples)),
        literal(significant(reading.sampleRate_Hz)),
        literal(significant(reading.zeroForce_kN, 2)),
        stiffness,
        literal(interval === null ? absent : `${significant(interval.lower)} to ${significant(interval.upper)}`),
        literal(significant(reading.kneeForce_kN)),
        literal(significant(reading.tableSpeed_mm_per_min)),
        literal(significant(reading.extensionAtMaximum_mm)),
        literal(significant(reading.energyToMaximum_J)),
        literal(reading.parted ? significant(reading.partingForce_kN) : 'not parted'),
        literal(String(reading.spikes.length)),
      ],
    ];
  });
  return [
    table(
      [
        { heading: 'Piece', width: '1fr' },
        { heading: 'Samples', align: 'right' },
        { heading: 'Rate', unit: 'Hz', align: 'right' },
        { heading: 'Zero', unit: 'kN', align: 'right' },
        { heading: 'Stiffness', unit: 'kN/mm', align: 'right' },
        { heading: '95 % of it', unit: 'kN/mm', align: 'right' },
        { heading: 'Knee', unit: 'kN', align: 'right' },
        { heading: 'Speed', unit: 'mm/min', align: 'right' },
        { heading: 'Extension at maximum', unit: 'mm', align: 'right', width: '17mm' },
        { heading: 'Energy to maximum', unit: 'J', align: 'right', width: '17mm' },
        { heading: 'Parting', unit: 'kN', align: 'right' },
        { heading: 'Spikes', align: 'right' },
      ],
      rows,
    ),
    ...remarks(pieces),
  ];
}

function remarks(pieces: readonly PieceFinding[]): Typst[] {
  const lines = pieces.flatMap((piece) => {
    const reading = piece.pull?.reading;
    if (!reading) return [];
    const spikes = reading.spikes.map(
      (spike) => `spike left out at ${decimals(spike.time_s, 2)} s (${decimals(spike.force_kN, 2)} kN)`,
    );
    const dips = reading.events
      .filter((event) => event.kind !== 'parted' && event.kind !== 'end of record')
      .map(
        (event) =>
          `${event.kind} at ${decimals(event.time_s, 2)} s, ${decimals(event.force_kN, 2)} kN${event.regained === true ? ', regained' : ''}`,
      );
    const said = [...spikes, ...dips, ...reading.notes];
    return said.length === 0 ? [] : [`strong(${literal(`${piece.piece}:`)}); " "; ${literal(sentences(said))}`];
  });
  return lines.length === 0
    ? []
    : [caption(literal('Seen in the recordings')), `#note(bullets(${lines.map((line) => `{ ${line} }`).join(', ')},))`];
}

function hashes(pieces: readonly PieceFinding[]): Typst[] {
  const kept = pieces.filter((piece) => piece.pull !== null);
  if (kept.length === 0) return [];
  const rows = kept.flatMap((piece) => {
    const { pull } = piece;
    if (pull === null) return [];
    const columns = pull.reading === null ? null : columnsOf(pull.reading.columns);
    return [
      [
        codeName(pull.pull),
        codeText(piece.piece),
        joined([
          cell(pull.trace === null ? 'no recording: the maximum was read off the panel' : pull.trace),
          ...(columns === null ? [] : ['h(8pt)', `quiet(${literal(columns)})`]),
          ...(pull.traceSha256 === null ? [] : ['linebreak()', verbatim(pull.traceSha256)]),
        ]),
      ],
    ];
  });
  return [
    subsection('Recordings and their SHA-256'),
    note(literal('A hash that differs by one character means that the recording is not the one that was judged.')),
    table(
      [
        codeColumn(
          'Pull',
          kept.map((piece) => piece.pull?.pull ?? ''),
        ),
        codeColumn(
          'Piece',
          kept.map((piece) => piece.piece),
        ),
        { heading: 'Recording, columns read, SHA-256', width: '1fr' },
      ],
      rows,
    ),
  ];
}

interface Named {
  readonly name: string;
  readonly unit: string;
}

function columnsOf(columns: Readonly<Record<'time' | 'force' | 'table' | 'extension', Named | null>>): string {
  return (['time', 'force', 'table', 'extension'] as const)
    .flatMap((signal) => {
      const column = columns[signal];
      return column === null ? [] : [`${signal}: ${column.name} [${column.unit}]`];
    })
    .join(', ');
}
