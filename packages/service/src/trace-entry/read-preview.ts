import type {
  CampaignRows,
  ColumnsAsked,
  PieceFinding,
  PreviewColumn,
  Row,
  TracePreview,
} from '@provinghouse/contract';
import {
  firstRows,
  isInputError,
  type OwnStandard,
  parseTrace,
  readTrace,
  readTraceHeader,
  specificationFor,
  type TraceHeader,
  type TraceReading,
  thinSignals,
} from '@provinghouse/core';
import { certificateOn, type Evidence } from '../judge/evidence.ts';
import { maximumOf } from '../judge/measured-pull.ts';
import { parseOptions } from '../judge/parse-options.ts';
import { judgePiece } from '../judge/piece.ts';
import { rigFactsOf } from '../judge/pull.ts';
import { readColumns } from './column-questions.ts';

/** All that a preview rests on, so that it can be made in a thread. */
export interface PreviewInput {
  readonly bytes: Uint8Array;
  readonly sha256: string;
  readonly asked: ColumnsAsked;
  /** The row of pulls it would become. */
  readonly pull: Row<'pulls'>;
  /** False while nobody has said whose recording it is. */
  readonly isPieceKnown: boolean;
  /** Rows of the campaign, with those of the rig even where the campaign does not know it yet. */
  readonly rows: CampaignRows;
  readonly ownStandards: readonly OwnStandard[];
}

/** What the bytes alone say. */
export type FilePreview = Pick<
  TracePreview,
  'columns' | 'questions' | 'taken' | 'reading' | 'maximum' | 'curve' | 'doubts' | 'fault'
>;

/** Enough for a small plot at two samples a pixel column. */
const pointsDrawn = 800;

const rowsShown = 3;

const nothing: FilePreview = {
  columns: [],
  questions: [],
  taken: { time: null, force: null, table: null, extension: null },
  reading: null,
  maximum: null,
  curve: null,
  doubts: [],
  fault: null,
};

/** Reads a file as the recording it would be; what stands against that is told, not thrown. */
export function readPreview(input: PreviewInput): FilePreview {
  let known = nothing;
  try {
    const header = readTraceHeader(input.bytes);
    known = { ...known, columns: columnsOf(header) };
    const { taken, questions } = readColumns(header.cells, input.asked);
    known = { ...known, taken, questions };
    return questions.length > 0 ? known : { ...known, ...readPull(input) };
  } catch (error) {
    if (!isInputError(error)) throw error;
    return { ...known, fault: { code: error.code, words: error.message } };
  }
}

function columnsOf(header: TraceHeader): PreviewColumn[] {
  const rows = firstRows(header, rowsShown);
  return header.cells.map(({ index, name, unitText, finding }) => ({
    column: index + 1,
    name,
    unitText,
    unit: finding?.kind === 'known' ? finding.unit.symbol : null,
    first: rows.map((row) => row[index] ?? ''),
  }));
}

function readPull(input: PreviewInput): Pick<FilePreview, 'reading' | 'maximum' | 'curve' | 'doubts'> {
  const { bytes, pull } = input;
  const options = parseOptions(pull);
  const curve = thinSignals(parseTrace(bytes, options), pointsDrawn);
  const judged = input.isPieceKnown ? judgedPiece(input) : null;
  const found: Found = judged?.pull ?? alone(input);
  // A finding tells of a recording it cannot read in one sentence; here its own fault is wanted.
  const reading = found.reading ?? readTrace(bytes, options);
  return {
    reading,
    maximum: found.maximum,
    curve,
    doubts: [...found.reasons, ...reading.notes, ...rigDoubts(input), ...unitDoubts(judged)].filter(
      (doubt, at, all) => all.indexOf(doubt) === at,
    ),
  };
}

/** The piece as it would be judged with this pull as its only one, by the code that judges it later. */
function judgedPiece(input: PreviewInput): PieceFinding | null {
  const { rows, pull, ownStandards } = input;
  const piece = rows.pieces.find((one) => one.piece === pull.piece);
  const sample = rows.samples.find((one) => one.sample === piece?.sample);
  const product = rows.products.find((one) => one.product === sample?.product);
  if (!piece || !product) return null;
  const specification = specificationFor({
    standard: product.specification,
    size_mm: product.nominal_size_mm,
    ...(product.grade === null ? {} : { grade: product.grade }),
    own: ownStandards,
  });
  return judgePiece(piece, { product, specification }, evidenceOf(input));
}

function evidenceOf({ rows, pull, bytes, sha256, ownStandards }: PreviewInput): Evidence {
  return {
    rows: { ...rows, pulls: [pull], breaks: [] },
    traces: new Map([[pull.trace ?? '', { bytes, sha256 }]]),
    ownStandards,
  };
}

interface Found {
  readonly reading: TraceReading | null;
  readonly maximum: TracePreview['maximum'];
  readonly reasons: readonly string[];
}

/** The recording by itself: nobody has said yet of which piece it is, so nothing that needs its length or area is told. */
function alone({ rows, pull, bytes }: PreviewInput): Found {
  const rig = rows.instruments.find((one) => one.instrument === pull.rig);
  const reading = readTrace(bytes, { ...parseOptions(pull), rig: rigFactsOf(rig) });
  const certificate = certificateOn(rows, pull.rig, day(pull));
  const k = rows.campaign[0]?.coverage_factor ?? 2;
  return {
    reading,
    maximum: maximumOf(pull, reading, { rig, certificate, k, isAtLeast: reading.maximumIsAtLeast }),
    reasons: [],
  };
}

function day({ pulled_at }: Row<'pulls'>): string | null {
  return pulled_at?.slice(0, 10) ?? null;
}

function rigDoubts({ rows, pull }: PreviewInput): string[] {
  if (pull.rig === '') return ['No rig is named yet: its part of the uncertainty is missing.'];
  if (certificateOn(rows, pull.rig, day(pull))) return [];
  const when = day(pull);
  return [
    when === null
      ? `${pull.rig} has no certificate in the record.`
      : `${pull.rig} had no certificate in force on ${when}.`,
  ];
}

/** Newtons taken for kilonewtons, or the other way round, lie a factor of 1000 from the limit. */
function unitDoubts(judged: PieceFinding | null): string[] {
  const force = judged?.judgements.find(({ limit }) => limit.quantity === 'breakingForce');
  const ratio = force?.measured && force.limit.lower ? force.measured.value / force.limit.lower : 1;
  if (ratio < 10 && ratio > 0.1) return [];
  return [
    `The maximum is ${Number(ratio.toPrecision(2))} times the least breaking force asked for: see whether the unit of the force is right.`,
  ];
}
