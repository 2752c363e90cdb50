import type { PullFinding, Row } from '@provinghouse/contract';
import {
  type BreakReading,
  type Contribution,
  combine,
  isInputError,
  type MeasuredValue,
  nominalArea_mm2,
  partedInGrip,
  readTrace,
  rectangular,
  type TraceOptions,
  type TraceReading,
} from '@provinghouse/core';
import { campaignRow, type Evidence } from './evidence.ts';
import { parseOptions } from './parse-options.ts';

/** The piece a pull belongs to, as far as reading the pull needs it. */
export interface PulledPiece {
  readonly links: number;
  readonly nominalSize_mm: number;
  readonly gaugeLength_mm: number;
  readonly gaugeLengthUncertainty_mm: number;
  readonly breaks: readonly BreakReading[];
}

/** Reads one pull and says what it may be used for. */
export function judgePull(row: Row<'pulls'>, piece: PulledPiece, evidence: Evidence): PullFinding {
  const rig = evidence.rows.instruments.find((instrument) => instrument.instrument === row.rig);
  const file = row.trace === null ? undefined : evidence.traces.get(row.trace);
  const { reading, fault } = file ? readOrFault(file.bytes, traceOptions(row, piece, evidence)) : unread;
  const k = campaignRow(evidence.rows).coverage_factor;
  const standing = fault
    ? { use: 'none' as const, reasons: [fault] }
    : useOf(row, reading, { breaks: piece.breaks, rig });
  const isAtLeast = standing.use === 'at least';
  return {
    pull: row.pull,
    rig: row.rig,
    operator: row.operator,
    pulledAt: row.pulled_at,
    trace: row.trace,
    traceSha256: file?.sha256 ?? null,
    reading,
    maximum: standing.use === 'none' ? null : maximumOf(row, reading, { rig, k, isAtLeast }),
    elongation: standing.use === 'none' ? null : elongationOf(reading, piece, { rig, k, isAtLeast }),
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
  const rig = evidence.rows.instruments.find((instrument) => instrument.instrument === row.rig);
  const { table_speed_min_mm_per_min: slow, table_speed_max_mm_per_min: fast } = campaignRow(evidence.rows);
  return {
    ...parseOptions(row),
    area_mm2: nominalArea_mm2(piece.nominalSize_mm),
    gaugeLength_mm: piece.gaugeLength_mm,
    links: piece.links,
    rig: {
      ...(rig?.class == null ? {} : { classPct: rig.class }),
      ...(rig ? { resolution_kN: rig.resolution } : {}),
      ...(rig?.range_maximum == null ? {} : { rangeMaximum_kN: rig.range_maximum }),
      ...(rig?.compliance_mm_per_kN == null ? {} : { compliance_mm_per_kN: rig.compliance_mm_per_kN }),
    },
    ...(slow === null || fast === null ? {} : { rateLimits: { tableSpeed_mm_per_min: [slow, fast] } }),
  };
}

/** The part of a force's uncertainty that all pulls on a rig share. */
export const rigContribution = 'rig, error of indication';

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

interface Judged extends Rig {
  readonly k: number;
  readonly isAtLeast: boolean;
}

function maximumOf(row: Row<'pulls'>, reading: TraceReading | null, judged: Judged): MeasuredValue | null {
  const value = reading ? reading.maximumForce_kN : row.panel_maximum_kN;
  if (value === null) return null;
  const contributions = reading ? tracedForce(value, reading, judged) : keyedForce(value, row, judged);
  return measured(value, 'kN', contributions, {
    ...judged,
    origin: reading
      ? `largest true reading before parting, column ${reading.columns.force.name} of ${row.trace}`
      : 'read off the panel by eye and keyed in',
  });
}

/** Without a class the calibration of the force is unknown, and so is the uncertainty: no contributions at all. */
function tracedForce(value: number, reading: TraceReading, { rig }: Judged): Contribution[] {
  const total = reading.maximumForceUncertainty_kN;
  if (rig?.class == null || total === null) return [];
  const classPart = rectangular((rig.class / 100) * value);
  const resolution = rig.resolution / Math.sqrt(12);
  const rest = Math.sqrt(Math.max(0, total ** 2 - classPart ** 2 - resolution ** 2));
  return [
    {
      name: rigContribution,
      standardUncertainty: classPart,
      source: `ISO 7500-1 class ${rig.class} (memory), rectangular`,
    },
    { name: 'rig, resolution', standardUncertainty: resolution, source: 'half a step, rectangular (JCGM 100 4.3.7)' },
    { name: 'noise and sampling at the peak', standardUncertainty: rest, source: 'the trace itself' },
  ];
}

function keyedForce(value: number, row: Row<'pulls'>, { rig }: Judged): Contribution[] {
  if (rig?.class == null || row.panel_uncertainty_kN === null) return [];
  return [
    {
      name: rigContribution,
      standardUncertainty: rectangular((rig.class / 100) * value),
      source: `ISO 7500-1 class ${rig.class} (memory), rectangular`,
    },
    { name: 'read by eye', standardUncertainty: row.panel_uncertainty_kN, source: 'stated by the operator' },
  ];
}

function elongationOf(reading: TraceReading | null, piece: PulledPiece, judged: Judged): MeasuredValue | null {
  const value = reading?.totalUltimateElongation_pct ?? null;
  if (!reading || value === null) return null;
  const extension_mm = (value / 100) * piece.gaugeLength_mm;
  const from = reading.columns.extension ?? reading.columns.table;
  return measured(value, '%', elongationParts(value, extension_mm, reading, { piece, rig: judged.rig }), {
    ...judged,
    // A clipped force does not shorten the extension; a break in the grip does.
    isAtLeast: !reading.parted || partedInGrip(piece.breaks),
    origin: `extension at parting from column ${from?.name ?? 'unknown'}, counted from the toe-corrected origin, over the gauge length of ${piece.gaugeLength_mm.toFixed(1)} mm`,
  });
}

function elongationParts(
  value: number,
  extension_mm: number,
  reading: TraceReading,
  known: Rig & { readonly piece: PulledPiece },
): Contribution[] {
  const { rig, piece } = known;
  if (rig?.extension_class == null) return [];
  const perMm = 100 / piece.gaugeLength_mm;
  const step_mm =
    ((reading.tableSpeed_mm_per_min ?? 0) / 60) * (1 / (reading.sampleRate_Hz ?? Number.POSITIVE_INFINITY));
  return [
    {
      name: 'extension, error of indication',
      standardUncertainty: rectangular((rig.extension_class / 100) * extension_mm) * perMm,
      source: `ISO 9513 class ${rig.extension_class} (memory), rectangular`,
    },
    {
      name: 'gauge length',
      standardUncertainty: (value * piece.gaugeLengthUncertainty_mm) / piece.gaugeLength_mm,
      source: 'how the gauge length was had',
    },
    {
      name: 'sampling at parting',
      standardUncertainty: rectangular(step_mm) * perMm,
      source: 'one sample of table travel',
    },
    ...unknownStretch(reading, rig, perMm),
  ];
}

/**
 * Table travel holds the stretch of the rig. Where its compliance was never measured, that stretch lies anywhere between nothing and all
 * of the elastic part of the extension.
 */
function unknownStretch(reading: TraceReading, rig: Rig['rig'], perMm: number): Contribution[] {
  const { extensionAtParting_mm: whole, plasticExtension_mm: plastic } = reading;
  if (reading.travelFrom !== 'table' || rig?.compliance_mm_per_kN != null || whole === null || plastic === null)
    return [];
  return [
    {
      name: 'stretch of the rig, not measured',
      standardUncertainty: rectangular(whole - plastic) * perMm,
      source: 'between nothing and all of the elastic part',
    },
  ];
}

function measured(
  value: number,
  unit: string,
  contributions: readonly Contribution[],
  about: Judged & { readonly origin: string },
): MeasuredValue {
  const u = combine(contributions);
  return {
    value,
    unit,
    expandedUncertainty: u === null ? null : about.k * u,
    coverageFactor: about.k,
    isAtLeast: about.isAtLeast,
    origin: about.origin,
    contributions,
  };
}
