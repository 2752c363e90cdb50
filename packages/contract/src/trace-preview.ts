import type { MeasuredValue, Signal, TraceReading } from '@provinghouse/core';
import type { PullCurve } from './finding.ts';

/** Which column of a recording serves each signal, as a row of pulls says it: a name or number, a unit in brackets, `none`; null leaves it to the header. */
export type ColumnsAsked = { readonly [signal in Signal]: string | null };

/** A file that was sent and waits: what would it be as the recording of a pull? Nothing is kept by asking. */
export interface TracePreviewRequest {
  readonly sha256: string;
  /** Name of the file as it was dropped. */
  readonly name: string;
  readonly rig: string | null;
  /** Piece it belongs to, once somebody has said so: lengths and areas come from it. */
  readonly piece: string | null;
  /** When the pull was made, ISO 8601. */
  readonly pulledAt: string | null;
  /** Left out, the columns begin as they were taken for the newest recording of that rig with the same header. */
  readonly columns?: ColumnsAsked;
}

/** A column as the file describes it. */
export interface PreviewColumn {
  /** 1-based place. */
  readonly column: number;
  readonly name: string;
  /** As written; null where the file names none. */
  readonly unitText: string | null;
  /** The unit it was found to mean; null where it is missing, unknown or could mean several. */
  readonly unit: string | null;
  /** Its first readings, as written. */
  readonly first: readonly string[];
}

/** What only a person can settle: which column, or which unit. Nothing is guessed. */
export interface ColumnQuestion {
  readonly signal: Signal;
  readonly asks: 'column' | 'unit';
  /** Code of the fault that the reading would end in. */
  readonly code: string;
  /** Columns that could be meant; for a unit, the column without it. */
  readonly columns: readonly number[];
  /** Units that fit. */
  readonly units: readonly string[];
}

/** A column taken for a signal, and why. */
export interface ColumnTaken {
  readonly column: number;
  readonly name: string;
  readonly unit: string;
  readonly because: string;
}

/** A pull of the record whose recording has the same bytes. */
export interface KeptAs {
  readonly campaign: string;
  readonly pull: string;
  readonly piece: string;
}

export interface TracePreview {
  readonly sha256: string;
  readonly size_bytes: number;
  readonly columns: readonly PreviewColumn[];
  /** The columns it was read with. */
  readonly asked: ColumnsAsked;
  /** The pull whose columns it began with; null where the header alone decided, or somebody chose. */
  readonly profile: { readonly campaign: string; readonly pull: string } | null;
  readonly questions: readonly ColumnQuestion[];
  /** While questions are open, only those of signals that are settled. */
  readonly taken: { readonly [signal in Signal]: ColumnTaken | null };
  readonly reading: TraceReading | null;
  /** The maximum with its budget, as a finding will state it. */
  readonly maximum: MeasuredValue | null;
  readonly curve: Omit<PullCurve, 'pull'> | null;
  readonly doubts: readonly string[];
  /** Why it cannot be a recording; null where it can. */
  readonly fault: { readonly code: string; readonly words: string } | null;
  readonly keptAs: readonly KeptAs[];
  /** Paths below traces/ that the campaign holds already. */
  readonly pathsTaken: readonly string[];
  /** Units a person may give a column of each kind. */
  readonly units: { readonly [dimension in 'time' | 'force' | 'length']: readonly string[] };
}

/** The order in which the pieces of a campaign are to be pulled, drawn by lot from the seed of its plan. */
export interface PlannedPulls {
  readonly order: readonly { readonly piece: string; readonly block: number; readonly position: number }[];
  /** Null where the plan has no seed: then there is no order, and the list is empty. */
  readonly seed: number | null;
  readonly sentence: string | null;
}
