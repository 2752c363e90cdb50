import type { PieceFinding, ProductFinding, ProductJudgement } from '@provinghouse/contract';
import { type Judgement, quantityNames, type Verdict } from '@provinghouse/core';
import { budgetBars, budgetOf } from '@provinghouse/figure';
import { onPaper } from '../figure/paper.ts';
import { codeText } from '../typst/code.ts';
import { joined, literal, type Typst } from '../typst/escape.ts';
import { caption, note, type TableRow, table, whole } from '../typst/table.ts';
import { flags } from '../words/citation.ts';
import { acceptanceWords, limitWords, quantityOf } from '../words/limit.ts';
import { absent, asWritten, measured, significant } from '../words/number.ts';
import { verdictMark } from '../words/piece.ts';
import { sentences } from '../words/sentence.ts';

/** Each requirement over all pieces, then each piece with its value, acceptance limits, verdict and reason. */
export function judgementTables(product: ProductFinding, pieces: readonly PieceFinding[]): Typst[] {
  return [...requirementTable(product), ...detailTable(product, pieces)];
}

const counted: readonly Verdict[] = ['conforms', 'does not conform', 'inconclusive', 'not judged'];
const countWords: Readonly<Record<Verdict, readonly [one: string, many: string]>> = {
  conforms: ['conforms', 'conform'],
  'does not conform': ['does not conform', 'do not conform'],
  inconclusive: ['inconclusive', 'inconclusive'],
  'not judged': ['not judged', 'not judged'],
};

function countsOf(judgement: ProductJudgement): string {
  return counted
    .filter((verdict) => judgement.counts[verdict] > 0)
    .map((verdict) => `${judgement.counts[verdict]} ${countWords[verdict][judgement.counts[verdict] === 1 ? 0 : 1]}`)
    .join(', ');
}

function isPlain(judgement: ProductJudgement): boolean {
  return counted.filter((verdict) => judgement.counts[verdict] > 0).length < 2;
}

function requirementTable(product: ProductFinding): Typst[] {
  if (product.judgements.length === 0) return [];
  return [
    caption(literal(`Requirements over the pieces of ${product.product}`)),
    table(
      [
        { heading: 'Requirement', width: '47mm' },
        { heading: 'Verdict', width: '31mm' },
        { heading: 'Pieces', width: '1fr' },
      ],
      product.judgements.map((judgement) => [
        literal(quantityNames[judgement.quantity]),
        verdictMark(judgement.verdict),
        // All pieces alike need no more words than their number.
        literal(isPlain(judgement) ? countsOf(judgement) : judgement.sentence),
      ]),
    ),
  ];
}

interface Detail {
  readonly piece: string;
  readonly judgement: Judgement;
}

function detailTable(product: ProductFinding, pieces: readonly PieceFinding[]): Typst[] {
  const details: Detail[] = pieces.flatMap((piece) =>
    piece.judgements.map((judgement) => ({ piece: piece.piece, judgement })),
  );
  if (details.length === 0) return [];
  const reasons = [...new Set(details.map((detail) => detail.judgement.reason))];
  const rules = [...new Set(details.map((detail) => detail.judgement.rule))];
  const groups = Map.groupBy(
    details,
    (detail) => `${quantityOf(detail.judgement.limit)} ${limitWords(detail.judgement.limit)}`,
  );
  const rows: TableRow[] = [...groups.values()].flatMap((group) => [
    ...heading(group),
    ...(isUnmeasured(group) ? [groupRow(group, reasons)] : group.map((detail) => detailRow(detail, reasons))),
  ]);
  return [
    caption(literal(`Each judgement on ${product.product}, by ${rules.join(' and ')}`)),
    table(
      [
        { heading: 'Piece', width: '1fr' },
        { heading: 'Value ± U', align: 'right', width: '36mm' },
        { heading: 'Accepted', align: 'right', width: '36mm' },
        { heading: 'Verdict', width: '31mm' },
        { heading: 'Reason', align: 'center' },
      ],
      rows,
    ),
    note(...reasons.flatMap((reason, index) => [`strong(${literal(letter(index))})`, `" "; ${literal(reason)}; "  "`])),
  ];
}

function heading(group: readonly Detail[]): TableRow[] {
  const first = group[0];
  if (first === undefined) return [];
  const { limit } = first.judgement;
  const isNominal = limit.lower === null && limit.upper === null;
  const words = literal(
    `${quantityOf(limit)}: ${isNominal ? `nominal ${asWritten(limit.nominal)}` : limitWords(limit)} ${limit.unit}`,
  );
  return [{ across: joined([words, ...flags(limit.provenance).map((mark) => `h(5pt); ${mark}`)]) }];
}

/** True when no piece has a value and all for the same reason: one row says it for all. */
function isUnmeasured(group: readonly Detail[]): boolean {
  return (
    group.length > 1 &&
    group.every(({ judgement }) => judgement.measured === null && judgement.reason === group[0]?.judgement.reason)
  );
}

function groupRow(group: readonly Detail[], reasons: readonly string[]): readonly Typst[] {
  const reason = group[0]?.judgement.reason ?? '';
  const dash = literal(absent);
  return [
    literal(`all ${group.length} pieces`),
    dash,
    dash,
    verdictMark('not judged'),
    literal(letter(reasons.indexOf(reason))),
  ];
}

function detailRow(detail: Detail, reasons: readonly string[]): readonly Typst[] {
  const { acceptance, measured: value, reason, verdict } = detail.judgement;
  const accepted = acceptanceWords(acceptance, value?.expandedUncertainty ?? null);
  return [
    codeText(detail.piece),
    literal(measured(value)),
    literal(accepted),
    verdictMark(verdict),
    literal(letter(reasons.indexOf(reason))),
  ];
}

/** a to z, then aa, ab ... */
function letter(index: number): string {
  const last = String.fromCharCode(97 + (index % 26));
  return index < 26 ? last : letter(Math.floor(index / 26) - 1) + last;
}

/** The uncertainty budget of the least breaking force that counts: the one a challenge would start with. */
export function budgetTable(product: ProductFinding, pieces: readonly PieceFinding[]): Typst[] {
  const found = budgetOf(product, pieces);
  const maximum = pieces.find((piece) => piece.piece === found?.piece)?.pull?.maximum ?? null;
  if (found === null || maximum === null) return [];
  const { contributions, expandedUncertainty, coverageFactor, origin, unit } = maximum;
  const total = expandedUncertainty === null ? absent : significant(expandedUncertainty, 2);
  return whole([
    caption(literal(`How the uncertainty of the maximum of ${found.piece}, the least of them, comes about`)),
    onPaper((setting) => budgetBars(found.budget, setting)),
    table(
      [
        { heading: 'Contribution', width: '0.8fr' },
        { heading: 'Standard uncertainty', unit, align: 'right' },
        { heading: 'Source', width: '1.4fr' },
      ],
      contributions.map((one) => [
        literal(one.name),
        literal(significant(one.standardUncertainty, 2)),
        literal(one.source),
      ]),
    ),
    note(literal(sentences([`Root of the sum of squares times k = ${coverageFactor}: U = ${total} ${unit}`, origin]))),
  ]);
}
