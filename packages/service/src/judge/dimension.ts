import type { CampaignRows, Row } from '@provinghouse/contract';
import {
  type GaugingInput,
  type GaugingInstrument,
  type GaugingReading,
  type Limit,
  type MeasuredValue,
  type QuantityGauging,
  takeOffZinc,
  type ZincSurvey,
} from '@provinghouse/core';
import { certificateOn } from './evidence.ts';

interface GaugedOver {
  readonly readings: readonly Row<'gauging'>[];
  readonly zinc: ZincSurvey | null;
  readonly instruments: CampaignRows;
}

export interface SteelReadings {
  readonly readings: readonly GaugingInput[];
  readonly instruments: readonly GaugingInstrument[];
  /** True when diameters were read over zinc whose thickness nobody recorded. */
  readonly unknownZinc: boolean;
  /** Standard uncertainty of the zinc taken off each side. */
  readonly zincThicknessUncertainty_mm?: number;
}

/** The readings of a piece with the zinc taken off the diameters where they were read over it. */
export function bareSteel(piece: Row<'pieces'>, gauged: GaugedOver): SteelReadings {
  const readings = gauged.readings.map(toInput);
  const instruments = [...new Set(readings.map((reading) => reading.instrument))].flatMap((name) =>
    instrumentOf(name, gauged.instruments),
  );
  if (piece.gauged_over !== 'zinc') return { readings, instruments, unknownZinc: false };
  const thickness_um = gauged.zinc?.mean_um ?? null;
  if (thickness_um === null) return { readings, instruments, unknownZinc: true };
  const scatter_um = gauged.zinc?.standardUncertainty_um ?? null;
  return {
    readings: takeOffZinc(readings, thickness_um / 1000),
    instruments,
    unknownZinc: false,
    ...(scatter_um === null ? {} : { zincThicknessUncertainty_mm: scatter_um / 1000 }),
  };
}

function toInput(row: Row<'gauging'>): GaugingInput {
  return {
    link: row.link,
    position: row.position as GaugingInput['position'], // the table allows these words only
    quantity: row.quantity as GaugingInput['quantity'],
    direction: row.direction,
    value_mm: row.value_mm,
    overLinks: row.over_links,
    instrument: row.instrument,
    by: row.by,
  };
}

function instrumentOf(name: string, rows: CampaignRows): GaugingInstrument[] {
  const instrument = rows.instruments.find((row) => row.instrument === name);
  if (!instrument) return [];
  const certificate = certificateOn(rows, name, null);
  const perMm = instrument.unit === 'um' ? 0.001 : 1;
  return [
    {
      instrument: name,
      resolution_mm: instrument.resolution * perMm,
      calibrationUncertainty_mm:
        certificate?.expanded_uncertainty == null ? null : certificate.expanded_uncertainty * perMm,
      coverageFactor: certificate?.coverage_factor ?? 2,
    },
  ];
}

/** The reading of a quantity that stands worst to its limit; null when it was not read. */
export function dimensionOf(limit: Limit, gauging: GaugingReading, k: number): MeasuredValue | null {
  const found = gauging.quantities.find(
    (quantity) => quantity.quantity === limit.quantity && (limit.links === null || quantity.overLinks === limit.links),
  );
  if (!found) return null;
  const worst = worstOf(limit, found);
  const u = found.standardUncertainty_mm;
  return {
    value: worst.value,
    unit: 'mm',
    expandedUncertainty: u === null ? null : k * u,
    coverageFactor: k,
    isAtLeast: false,
    origin: `worst of ${found.readings} readings${worst.link === null ? '' : `, link ${worst.link}`}; mean ${found.mean_mm.toFixed(2)} mm`,
    contributions:
      u === null
        ? []
        : [
            {
              name: 'one reading of the instrument',
              standardUncertainty: u,
              source: 'calibration, resolution and repeat readings',
            },
          ],
  };
}

function worstOf(limit: Limit, found: QuantityGauging): { value: number; link: number | null } {
  const low = { value: found.least_mm, link: found.leastLink };
  const high = { value: found.greatest_mm, link: found.greatestLink };
  const roomBelow = limit.lower === null ? Number.POSITIVE_INFINITY : low.value - limit.lower;
  const roomAbove = limit.upper === null ? Number.POSITIVE_INFINITY : limit.upper - high.value;
  return roomBelow < roomAbove ? low : high;
}
