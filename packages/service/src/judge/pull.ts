import type { PullFinding, Row } from '@provinghouse/contract';
import {
  type BreakReading,
  isInputError,
  nominalArea_mm2,
  partedInGrip,
  type RigFacts,
  readTrace,
  type TraceOptions,
  type TraceReading,
} from '@provinghouse/core';
import { campaignRow, certificateOn, type Evidence } from './evidence.ts';
import { elongationOf, maximumOf } from './measured-pull.ts';
import { parseOptions } from './parse-options.ts';

/** The piece a pull belongs to, as far as reading the pull needs it. */
export interface PulledPiece {
  readonly links: number;
  readonly nominalSize_mm: number;
  readonly gaugeLength_mm: number;
  readonly gaugeLengthUncertainty_mm: number;
  readonly gaugeLengthOrigin: string;
  readonly breaks: readonly BreakReading[];
}

/** Reads one pull and says what it may be used for. */
export function judgePull(row: Row<'pulls'>, piece: PulledPiece, evidence: Evidence): PullFinding {
  const rig = rigOf(row, evidence);
  const file = row.trace === null ? undefined : evidence.traces.get(row.trace);
  const { reading, fault } = file ? readOrFault(file.bytes, traceOptions(row, piece, evidence)) : unread;
  const k = campaignRow(evidence.rows).coverage_factor;
  const standing = fault
    ? { use: 'none' as const, reasons: [fault] }
    : useOf(row, reading, { breaks: piece.breaks, rig });
  const isAtLeast = standing.use === 'at least';
  const certificate = certificateOn(evidence.rows, row.rig, row.pulled_at?.slice(0, 10) ?? null);
  return {
    pull: row.pull,
    rig: row.rig,
    operator: row.operator,
    pulledAt: row.pulled_at,
    trace: row.trace,
    traceSha256: file?.sha256 ?? null,
    reading,
    maximum: standing.use === 'none' ? null : maximumOf(row, reading, { rig, certificate, k, isAtLeast }),
    elongation: standing.use === 'none' ? null : elongationOf(reading, piece, { rig, k }),
    use: standing.use,
    reasons: standing.reasons,
    note: row.note,
  };
}

interface Read {
  readonly reading: TraceReading | null;
  readonly fault: string | null;
}

const unread: Read = { reading: null, fault: null };

/** Bringing in reads every recording, but a later correction of columns or range may leave one that cannot be read. */
function readOrFault(bytes: Uint8Array, options: TraceOptions): Read {
  try {
    return { reading: readTrace(bytes, options), fault: null };
  } catch (error) {
    if (!isInputError(error)) throw error;
    return { reading: null, fault: `Its recording cannot be read. ${error.message}` };
  }
}

/** How a recording is to be read: its columns, the rig's class and range, the method's window of speed. */
function traceOptions(row: Row<'pulls'>, piece: PulledPiece, evidence: Evidence): TraceOptions {
  const rig = rigOf(row, evidence);
  const { table_speed_min_mm_per_min: slow, table_speed_max_mm_per_min: fast } = campaignRow(evidence.rows);
  return {
    ...parseOptions(row),
    area_mm2: nominalArea_mm2(piece.nominalSize_mm),
    gaugeLength_mm: piece.gaugeLength_mm,
    links: piece.links,
    rig: rigFactsOf(rig),
    ...(slow === null || fast === null ? {} : { rateLimits: { tableSpeed_mm_per_min: [slow, fast] } }),
  };
}

/** What reading a trace needs to know of its rig; what is not known is left out. */
export function rigFactsOf(rig: Row<'instruments'> | undefined): RigFacts {
  return {
    ...(rig?.class == null ? {} : { classPct: rig.class }),
    ...(rig ? { resolution_kN: rig.resolution } : {}),
    ...(rig?.range_maximum == null ? {} : { rangeMaximum_kN: rig.range_maximum }),
    ...(rig?.compliance_mm_per_kN == null ? {} : { compliance_mm_per_kN: rig.compliance_mm_per_kN }),
  };
}

function rigOf(row: Row<'pulls'>, { rows }: Evidence): Row<'instruments'> | undefined {
  return rows.instruments.find((instrument) => instrument.instrument === row.rig);
}

interface Rig {
  readonly rig: Row<'instruments'> | undefined;
}

function useOf(
  row: Row<'pulls'>,
  reading: TraceReading | null,
  around: Rig & { readonly breaks: readonly BreakReading[] },
): Pick<PullFinding, 'use' | 'reasons'> {
  const grip = partedInGrip(around.breaks);
  const declared = row.valid ? [] : [`Declared invalid: ${row.invalid_reason ?? 'no reason given'}.`];
  const force = reading ? reading.maximumForce_kN : row.panel_maximum_kN;
  if (force === null) return { use: 'none', reasons: [...declared, 'It shows no maximum force.'] };
  const outside = outsideRange(force, around.rig);
  if (outside) return { use: 'none', reasons: [...declared, outside] };
  if (grip)
    return { use: 'at least', reasons: [...declared, 'It parted in the grip: the chain held at least this force.'] };
  if (!row.valid) return { use: 'none', reasons: declared };
  if (reading && !reading.valid) return { use: 'none', reasons: ['The record is not fit for use.', ...reading.notes] };
  if (reading?.maximumIsAtLeast) return { use: 'at least', reasons: [atLeastReason(reading)] };
  return { use: 'value', reasons: [] };
}

function atLeastReason(reading: TraceReading): string {
  const clipped = reading.events.some((event) => event.kind === 'plateau at range limit');
  if (clipped) return 'The record is clipped at the range limit: the true maximum is at least this.';
  return reading.parted
    ? 'The record is broken near its maximum: the true maximum is at least this.'
    : 'The record stops before parting: the true maximum is at least this.';
}

/** Every reported force must lie inside the verified range of the certificate (ISO 7500-1; common practice). */
function outsideRange(force_kN: number, rig: Row<'instruments'> | undefined): string | null {
  if (rig?.range_minimum != null && force_kN < rig.range_minimum) {
    return `Its maximum lies below the verified range of ${rig.instrument}, which begins at ${rig.range_minimum} kN.`;
  }
  if (rig?.range_maximum != null && force_kN > rig.range_maximum * 1.0005) {
    return `Its maximum lies above the verified range of ${rig.instrument}, which ends at ${rig.range_maximum} kN.`;
  }
  return null;
}
