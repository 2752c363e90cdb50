import type { Row } from '@provinghouse/contract';
import {
  type Budget,
  type Contribution,
  combine,
  contributionsOf,
  elongationBudget,
  extensionClassOf,
  forceBudget,
  forceClassOf,
  type MeasuredValue,
  partedInGrip,
  type RigKnowledge,
  rectangular,
  type TraceReading,
} from '@provinghouse/core';
import type { PulledPiece } from './pull.ts';

/** The part of a force's uncertainty that all pulls on a rig share, as its budget names it. */
export const rigContribution = 'rig, error of indication';

export interface MeasuredWith {
  readonly rig: Row<'instruments'> | undefined;
  /** Coverage factor of the campaign. */
  readonly k: number;
}

interface ForceMeasuredWith extends MeasuredWith {
  readonly certificate: Row<'calibrations'> | undefined;
  readonly isAtLeast: boolean;
}

/** The maximum force of a pull with its uncertainty budget; null when the pull shows none. */
export function maximumOf(
  row: Row<'pulls'>,
  reading: TraceReading | null,
  by: ForceMeasuredWith,
): MeasuredValue | null {
  const value = reading ? reading.maximumForce_kN : row.panel_maximum_kN;
  if (value === null || value <= 0) return null;
  const origin = reading
    ? `largest true reading before parting, column ${reading.columns.force.name} of ${row.trace}`
    : 'read off the panel by eye and keyed in';
  const isKnown = reading ? reading.maximumForceUncertainty_kN !== null : row.panel_uncertainty_kN !== null;
  const known = by.rig && isKnown ? forceOf(value, { row, reading, rig: by.rig, by }) : null;
  return measured(value, 'kN', known ? contributionsOf(known) : [], { k: by.k, isAtLeast: by.isAtLeast, origin });
}

interface ForceReading {
  readonly row: Row<'pulls'>;
  readonly reading: TraceReading | null;
  readonly rig: Row<'instruments'>;
  readonly by: ForceMeasuredWith;
}

function forceOf(force_kN: number, { row, reading, rig, by }: ForceReading): Budget {
  return forceBudget(
    {
      force_kN,
      rig: rigKnowledge(rig, by.certificate, row.pulled_at),
      ...(reading
        ? {
            trace: {
              noise_kN: scatterOf(reading, rig, force_kN),
              recordedStep_kN: reading.resolution_kN,
            },
          }
        : {}),
      readByEye_kN: reading ? null : row.panel_uncertainty_kN,
    },
    { coverage: { factor: by.k } },
  );
}

function rigKnowledge(
  rig: Row<'instruments'>,
  certificate: Row<'calibrations'> | undefined,
  pulledAt: string | null,
): RigKnowledge {
  return {
    instrument: rig.instrument,
    class: rig.class === null ? null : (forceClassOf(rig.class)?.class ?? null),
    resolution_kN: rig.resolution,
    certificate:
      certificate?.expanded_uncertainty == null
        ? null
        : {
            certificate: certificate.calibration,
            expandedUncertainty: certificate.expanded_uncertainty,
            coverageFactor: certificate.coverage_factor ?? 2,
          },
    yearsSinceCalibration: certificate && pulledAt !== null ? yearsBetween(certificate.calibrated_on, pulledAt) : null,
  };
}

function yearsBetween(day: string, later: string): number {
  return (Date.parse(later) - Date.parse(day)) / (365.25 * 24 * 3600 * 1000);
}

/** What the reading of the trace found at the maximum beyond class and resolution: noise, and the rise missed between samples. */
function scatterOf(reading: TraceReading, rig: Row<'instruments'>, force_kN: number): number {
  const total = reading.maximumForceUncertainty_kN ?? 0;
  const ofClass = rig.class === null ? 0 : rectangular((rig.class / 100) * force_kN);
  const step = Math.max(rig.resolution, reading.resolution_kN ?? 0);
  return Math.sqrt(Math.max(0, total ** 2 - ofClass ** 2 - step ** 2 / 12));
}

/** The total ultimate elongation with its uncertainty budget; null when the trace shows none. */
export function elongationOf(
  reading: TraceReading | null,
  piece: PulledPiece,
  { rig, k }: MeasuredWith,
): MeasuredValue | null {
  const value = reading?.totalUltimateElongation_pct ?? null;
  if (!reading || value === null) return null;
  const from = reading.columns.extension ?? reading.columns.table;
  const contributions = contributionsOf(elongationKnown(value, reading, piece, rig));
  return measured(
    value,
    '%',
    contributions.length === 0 ? [] : [...contributions, ...unknownStretch(reading, piece, rig)],
    {
      k,
      // A clipped force does not shorten the extension; a break in the grip does.
      isAtLeast: !reading.parted || partedInGrip(piece.breaks),
      origin: `extension at parting from column ${from?.name ?? 'unknown'}, counted from the toe-corrected origin, over the gauge length of ${piece.gaugeLength_mm.toFixed(1)} mm`,
    },
  );
}

function elongationKnown(value: number, reading: TraceReading, piece: PulledPiece, rig: MeasuredWith['rig']): Budget {
  const { tableSpeed_mm_per_min: speed, sampleRate_Hz: rate } = reading;
  return elongationBudget({
    extension_mm: (value / 100) * piece.gaugeLength_mm,
    gaugeLength_mm: {
      value: piece.gaugeLength_mm,
      standardUncertainty: piece.gaugeLengthUncertainty_mm,
      degreesOfFreedom: null,
      source: piece.gaugeLengthOrigin,
    },
    extensionClass: rig?.extension_class == null ? null : (extensionClassOf(rig.extension_class)?.class ?? null),
    sampleStep_mm: speed === null || rate === null ? null : Math.abs(speed) / 60 / rate,
  });
}

/**
 * Table travel holds the stretch of the rig. Where its compliance was never measured, that stretch lies anywhere between nothing and all
 * of the elastic part of the extension.
 */
function unknownStretch(reading: TraceReading, piece: PulledPiece, rig: MeasuredWith['rig']): Contribution[] {
  const { extensionAtParting_mm: whole, plasticExtension_mm: plastic, travelFrom } = reading;
  if (travelFrom !== 'table' || rig?.compliance_mm_per_kN != null || whole === null || plastic === null) return [];
  return [
    {
      name: 'stretch of the rig, not measured',
      standardUncertainty: (100 * rectangular(whole - plastic)) / piece.gaugeLength_mm,
      source: 'between nothing and all of the elastic part',
    },
  ];
}

interface About {
  readonly k: number;
  readonly isAtLeast: boolean;
  readonly origin: string;
}

function measured(
  value: number,
  unit: string,
  contributions: readonly Contribution[],
  { k, isAtLeast, origin }: About,
): MeasuredValue {
  const u = combine(contributions);
  return {
    value,
    unit,
    expandedUncertainty: u === null ? null : k * u,
    coverageFactor: k,
    isAtLeast,
    origin,
    contributions,
  };
}
