import type { PieceFinding, ProductFinding } from '@provinghouse/contract';
import type { ReportDocument } from '../document.ts';
import type { TracePanel } from '../figure/panel.ts';
import { type RuleLine, traceFigure, traceKey } from '../figure/trace.ts';
import { codeColumn, codeName } from '../typst/code.ts';
import { joined, literal, type Typst } from '../typst/escape.ts';
import { caption, note, paragraph, section, subsection, table } from '../typst/table.ts';
import { absent, asWritten, decimals, measured, rounded } from '../words/number.ts';
import { breakWords, forceShown, verdictMark } from '../words/piece.ts';
import { sentences } from '../words/sentence.ts';
import { inferenceLines } from './inference.ts';
import { budgetTable, judgementTables } from './judgement.ts';

/** Results product by product: pieces, curves, judgements. */
export function resultsSection(document: ReportDocument): Typst {
  const { products } = document.finding;
  return [
    // The heading must not stay behind on a page that has no room for the first product.
    `#need(${mostNeeded})`,
    section('Results by product'),
    ...(products.length === 0 ? [paragraph(literal('No products, so no results.'))] : []),
    ...products.map((product, index) => productResults(product, document, index === 0)),
  ].join('\n');
}

/** Height of a heading, the table of pieces and a row of curves, in points: they are read together. */
function heightOf(pieces: number): number {
  return 310 + 16 * pieces;
}

/** Half a page: more than this is not kept together. */
const mostNeeded = 430;

function productResults(product: ProductFinding, document: ReportDocument, isFirst: boolean): Typst {
  const pieces = document.finding.pieces.filter((piece) => piece.product === product.product);
  const name = `${product.product}, ${product.supplier}, ${asWritten(product.nominalSize_mm)} mm`;
  const heading = [
    ...(isFirst ? [] : [`#need(${Math.min(heightOf(pieces.length), mostNeeded)})`]),
    subsection(name),
    paragraph(verdictMark(product.standing), 'h(6pt)', literal(`against ${product.specification.title}`)),
  ];
  if (pieces.length === 0) return [...heading, paragraph(literal('No piece was cut from this product.'))].join('\n');
  return [
    ...heading,
    pieceTable(pieces, document.finding.campaign.coverage_factor),
    ...summaries(product),
    ...curves(product, pieces, document),
    ...inferenceLines(product),
    ...judgementTables(product, pieces),
    ...budgetTable(product, pieces),
  ].join('\n');
}

function pieceTable(pieces: readonly PieceFinding[], coverageFactor: number): Typst {
  const rows = pieces.map((piece) => [
    codeName(piece.piece),
    literal(String(piece.links)),
    literal(decimals(piece.gauging?.meanDiameter_mm ?? null, 2)),
    literal(areaOf(piece, coverageFactor)),
    maximumOf(piece),
    literal(elongationOf(piece)),
    breakWords(piece),
    standingOf(piece),
  ]);
  return table(
    [
      codeColumn(
        'Piece',
        pieces.map((piece) => piece.piece),
      ),
      { heading: 'Links', align: 'right' },
      { heading: 'Bar mean', unit: 'mm', align: 'right' },
      { heading: 'Steel area', unit: 'mm² ± U', align: 'right' },
      { heading: 'Maximum', unit: 'kN ± U', align: 'right' },
      { heading: 'Elongation', unit: '% ± U', align: 'right' },
      { heading: 'Break', width: '1fr' },
      { heading: 'Verdict', width: '28mm' },
    ],
    rows,
  );
}

function areaOf(piece: PieceFinding, coverageFactor: number): string {
  const area = piece.gauging?.steelArea_mm2 ?? null;
  if (area === null) return absent;
  const standard = piece.gauging?.steelAreaUncertainty_mm2 ?? null;
  const text = rounded(area, standard === null ? null : standard * coverageFactor);
  return text.uncertainty === null ? text.value : `${text.value} ± ${text.uncertainty}`;
}

function maximumOf(piece: PieceFinding): Typst {
  const { pull } = piece;
  if (pull === null) return `quiet("not pulled")`;
  const force = literal(measured(pull.maximum));
  return pull.use === 'none' ? joined([force, 'linebreak()', 'quiet("not used")']) : force;
}

/** A piece without a usable pull may still be judged on its dimensions: that is said, so that nobody takes it for strength. */
function standingOf(piece: PieceFinding): Typst {
  const mark = verdictMark(piece.standing);
  const isPulled = piece.pull !== null && piece.pull.use !== 'none';
  return isPulled || piece.standing === 'not judged'
    ? mark
    : joined([mark, 'linebreak()', 'quiet("on gauging alone")']);
}

function elongationOf(piece: PieceFinding): string {
  return measured(piece.pull?.elongation ?? null);
}

function summaries(product: ProductFinding): Typst[] {
  const summary = [product.breakingForce, product.elongation]
    .map((one) => one.sentence)
    .filter((sentence) => sentence !== '');
  const left = product.breakingForce.excluded.map((one) => sentences([`${one.piece}: ${one.reason}`]));
  return [
    ...summary.map((sentence) => paragraph(literal(sentence))),
    ...(left.length === 0 ? [] : [note(literal(`Left out of the mean: ${left.join(' ')}`))]),
  ];
}

function curves(product: ProductFinding, pieces: readonly PieceFinding[], document: ReportDocument): Typst[] {
  const panels: TracePanel[] = pieces.flatMap((piece) => {
    if (piece.pull === null) return [];
    const { reading } = piece.pull;
    return [
      {
        piece: piece.piece,
        curve: document.curves[piece.pull.pull] ?? null,
        use: piece.pull.use,
        maximum_kN: forceShown(piece),
        spikes: reading?.spikes ?? [],
      },
    ];
  });
  if (panels.every((panel) => panel.curve === null))
    return [paragraph(literal('No recording of a pull was kept for this product.'))];
  return [
    caption(literal(`Curves of the pieces of ${product.product}`)),
    traceFigure(panels, ruleLines(product)),
    note(traceKey),
  ];
}

function ruleLines(product: ProductFinding): readonly RuleLine[] {
  const kinds = { minimum: 'breakingForce', proof: 'proofForce' } as const;
  return (['minimum', 'proof'] as const).flatMap((kind) => {
    const limit = product.specification.limits.find((one) => one.quantity === kinds[kind]);
    const force_kN = limit?.lower ?? limit?.nominal ?? null;
    return force_kN === null ? [] : [{ kind, force_kN }];
  });
}
