import type { TraceColumns } from './reading.ts';

/** The signals of one pull in bench units, sample by sample. Time never runs backwards; force holds no NaN. */
export interface TraceSignals {
  readonly time_s: Float64Array | null;
  readonly force_kN: Float64Array;
  /** Travel of the machine's table; NaN where the record has none. */
  readonly table_mm: Float64Array | null;
  /** Extension by a gauge on the piece; NaN where the record has none. */
  readonly extension_mm: Float64Array | null;
  readonly columns: TraceColumns;
  /** What the parser left out or had to say, in plain words. */
  readonly notes?: readonly string[];
}
