import {
  type CampaignRows,
  type ColumnsAsked,
  type Row,
  rowWith,
  type TracePreview,
  type TracePreviewRequest,
} from '@provinghouse/contract';
import { isInputError, readTraceHeader } from '@provinghouse/core';
import { attachments, benchBook, readBlob } from '@provinghouse/store';
import { rowsShown } from '../blind/rows-shown.ts';
import type { Effects } from '../effects.ts';
import { rowsOf } from '../entry/index.ts';
import { inThread } from '../in-thread.ts';
import { ownStandardsOf } from '../judge/own-standards.ts';
import { unitsOffered } from './column-questions.ts';
import { keptAs } from './kept-as.ts';
import { byHeader, profileOf, wholeLines } from './profile.ts';
import { type FilePreview, type PreviewInput, readPreview } from './read-preview.ts';

/** A larger file takes longer to read than a thread takes to start, and is read in one, so that the server goes on answering. */
const threadFrom_bytes = 512 * 1024;

/**
 * What a file that was sent would be as the recording of a pull: its columns with their units, which is taken for what and why, what only a
 * person can settle, a thinned curve, the maximum with its uncertainty, and what to doubt. Nothing is kept.
 * @throws StoreError `store/unknown-blob`, `store/unknown-campaign`
 */
export async function previewTrace(
  campaign: string,
  request: TracePreviewRequest,
  effects: Effects,
): Promise<TracePreview> {
  const { store } = effects;
  const { sha256 } = request;
  const rows = await rowsShown(campaign, { store });
  const bytes = await readBlob(store, sha256);
  const begun = await begin(request, bytes, effects);
  const files = await attachments(store, campaign);
  const input: PreviewInput = {
    bytes,
    sha256,
    asked: begun.asked,
    pull: coming(request, begun.asked),
    isPieceKnown: rows.pieces.some(({ piece }) => piece === request.piece),
    rows: await withRig(onlyNeeded(rows, request.piece), request.rig, effects),
    ownStandards: await ownStandardsOf(campaign, store),
  };
  return {
    sha256,
    size_bytes: bytes.length,
    ...begun,
    ...(await read(input, effects)),
    keptAs: await keptAs(sha256, campaign, store),
    pathsTaken: files.filter(({ path }) => path.startsWith('traces/')).map(({ path }) => path),
    units: unitsOffered,
  };
}

function read(input: PreviewInput, effects: Effects): FilePreview | Promise<FilePreview> {
  if (input.bytes.length < threadFrom_bytes) return readPreview(input);
  return inThread<FilePreview>(new URL('./preview-thread.ts', import.meta.url), input, effects);
}

/** The columns it is read with: as asked, else as for the newest recording of the rig that has the same header. */
async function begin(
  { columns, rig }: TracePreviewRequest,
  bytes: Uint8Array,
  { store }: Effects,
): Promise<Pick<TracePreview, 'asked' | 'profile'>> {
  if (columns) return { asked: columns, profile: null };
  if (rig === null) return { asked: byHeader, profile: null };
  try {
    const { cells } = readTraceHeader(wholeLines(bytes.subarray(0, 64 * 1024), bytes.length));
    const profile = await profileOf(rig, cells, store);
    return { asked: profile?.columns ?? byHeader, profile: profile?.of ?? null };
  } catch (error) {
    // What is wrong with the file is told where it is read.
    if (!isInputError(error)) throw error;
    return { asked: byHeader, profile: null };
  }
}

/** The row it would become. */
function coming({ name, rig, piece, pulledAt }: TracePreviewRequest, asked: ColumnsAsked): Row<'pulls'> {
  return rowWith('pulls', {
    pull: name,
    piece: piece ?? '',
    rig: rig ?? '',
    pulled_at: pulledAt,
    trace: name,
    time_column: asked.time,
    force_column: asked.force,
    table_column: asked.table,
    extension_column: asked.extension,
    valid: true,
  });
}

/** A thread is handed a copy of all it works on. */
function onlyNeeded(rows: CampaignRows, piece: string | null): CampaignRows {
  return {
    ...rows,
    gauging: rows.gauging.filter((row) => row.piece === piece),
    zinc: rows.zinc.filter((row) => row.piece === piece),
    photographs: [],
    custody: [],
    checks: [],
  };
}

/** A rig that stands in Kit and not yet in the campaign is known all the same: it comes in with the pull. */
async function withRig(rows: CampaignRows, rig: string | null, { store }: Effects): Promise<CampaignRows> {
  if (rig === null || rows.instruments.some(({ instrument }) => instrument === rig)) return rows;
  const own = <R extends { readonly instrument: string }>(all: readonly R[]) =>
    all.filter(({ instrument }) => instrument === rig);
  return {
    ...rows,
    instruments: [...rows.instruments, ...own(await rowsOf(store, benchBook, 'instruments'))],
    calibrations: [...rows.calibrations, ...own(await rowsOf(store, benchBook, 'calibrations'))],
  };
}
