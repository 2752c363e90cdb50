import { nominalArea_mm2 } from '../chain/grade-formula.ts';
import { gaugeQuantities } from './quantity-gauging.ts';
import type { GaugingInput, GaugingInstrument, GaugingReading } from './reading.ts';
import { requireReadings } from './reading-check.ts';
import { readingDoubts } from './reading-doubt.ts';
import { type SteelArea, steelArea } from './steel-area.ts';

/** What {@link gaugePiece} works from. */
export interface PieceReadings {
  readonly readings: readonly GaugingInput[];
  readonly instruments: readonly GaugingInstrument[];
  readonly nominalSize_mm: number;
  /** Standard uncertainty of the zinc thickness that was taken off the diameters (`takeOffZinc`); left out for bare steel. */
  readonly zincThicknessUncertainty_mm?: number | undefined;
}

/**
 * What the gauging of one piece says: each quantity with mean, worst readings and their links; the true steel area of
 * both legs with its uncertainty; out-of-round; and notes in words. Implausible readings are noted, never dropped.
 *
 * Uncertainties follow JCGM 100:2008 (see `readingUncertainty` and `steelArea`) and are null where an instrument is not
 * known or not calibrated. No readings at all give an empty gauging with a note.
 *
 * @throws InputError `gauging/readings` naming every row at fault, or `gauging/size`
 */
export function gaugePiece({
  readings,
  instruments,
  nominalSize_mm,
  zincThicknessUncertainty_mm,
}: PieceReadings): GaugingReading {
  requireReadings(readings, nominalSize_mm);
  const quantities = gaugeQuantities(readings, instruments);
  const area = steelArea(readings, instruments, zincThicknessUncertainty_mm);
  return {
    quantities,
    meanDiameter_mm: quantities.find(({ quantity }) => quantity === 'diameter')?.mean_mm ?? null,
    steelArea_mm2: area?.mean_mm2 ?? null,
    steelAreaUncertainty_mm2: area?.uncertainty_mm2 ?? null,
    leastSteelArea_mm2: area?.least_mm2 ?? null,
    nominalArea_mm2: nominalArea_mm2(nominalSize_mm),
    outOfRound_mm: outOfRound(readings),
    notes: [
      ...readingDoubts(readings, nominalSize_mm),
      ...areaNotes(readings, area),
      ...instrumentNotes(readings, instruments),
    ],
  };
}

/** Greatest difference of the diameters read in different directions at one place; null where no place has two. */
function outOfRound(readings: readonly GaugingInput[]): number | null {
  const diameters = readings.filter(({ quantity }) => quantity === 'diameter');
  const places = Map.groupBy(diameters, ({ link, position }) => JSON.stringify([link, position]));
  let greatest: number | null = null;
  for (const place of places.values()) {
    const means = [...Map.groupBy(place, ({ direction }) => direction).values()].map(
      (group) => group.reduce((sum, { value_mm }) => sum + value_mm, 0) / group.length,
    );
    if (means.length < 2) continue;
    greatest = Math.max(greatest ?? 0, Math.max(...means) - Math.min(...means));
  }
  return greatest;
}

function areaNotes(readings: readonly GaugingInput[], area: SteelArea | null): readonly string[] {
  if (readings.length === 0) return ['Nothing was gauged on this piece.'];
  if (area === null) return ['No diameter of a plain leg was read: the steel area is not known.'];
  if (area.oneDirectionLinks.length === 0) return [];
  const links = area.oneDirectionLinks.map((link) => link ?? 'not numbered').join(', ');
  return [
    `The bar was read in one direction only on link ${links}: it was taken as round, and an oval bar would not show.`,
  ];
}

function instrumentNotes(
  readings: readonly GaugingInput[],
  instruments: readonly GaugingInstrument[],
): readonly string[] {
  const used = [...new Set(readings.map(({ instrument }) => instrument))];
  return used.flatMap((name) => {
    const known = instruments.find(({ instrument }) => instrument === name);
    if (known === undefined) return [`Nothing is known of instrument ${name}: its readings have no uncertainty.`];
    if (known.calibrationUncertainty_mm !== null) return [];
    return [`Instrument ${name} has no calibration uncertainty: its readings have no uncertainty.`];
  });
}
