import { InputError } from '../errors.ts';
import { uncertaintiesByInstrument } from './quantity-gauging.ts';
import type { GaugingInput, GaugingInstrument } from './reading.ts';
import type { ReadingUncertainty } from './reading-uncertainty.ts';

/** Zinc on the bar: mean thickness of the coat, and its standard uncertainty where known. */
export interface Coating {
  readonly thickness_um: number;
  readonly standardUncertainty_um: number | null;
}

/** Steel area of both legs, from the diameters of the plain legs. */
export interface SteelArea {
  /** Mean over the links gauged, and the least of them, mm2. */
  readonly mean_mm2: number;
  readonly least_mm2: number;
  /**
   * Standard uncertainty of the mean as the area of the links gauged; it does not speak for links that were not.
   * Null where an instrument is unknown or not calibrated.
   */
  readonly uncertainty_mm2: number | null;
  /** Links of which the bar was read in one direction only, and taken as round. */
  readonly oneDirectionLinks: readonly (number | null)[];
}

interface LinkArea {
  readonly link: number | null;
  readonly area_mm2: number;
  readonly directions: number;
  /** Change of this link's area per change of each reading, mm2/mm. */
  readonly sensitivities: readonly { readonly instrument: string; readonly perReading_mm: number }[];
}

/**
 * Steel area of both legs, 2 pi/4 d1 d2, with d1 and d2 the diameters of the plain leg at right angles (repeat readings
 * averaged); both legs are taken alike. With more directions it is 2 pi/4 times the square of their geometric mean,
 * which for two is the same. Zinc is taken off both sides of the bar only where its thickness is given: an 85 um coat adds
 * 4 % to the area of an 8 mm bar, so on galvanised chain either gauge bared steel or give the thickness.
 *
 * Uncertainty by the law of propagation (JCGM 100:2008 5.1, 5.2): the calibration of an instrument is common to all its
 * readings and adds up linearly, resolution and repeatability are of each reading and add in squares.
 *
 * @returns null where no diameter of a plain leg was read
 * @throws InputError `gauging.coating` for a coat that is not thinner than the bar
 */
export function steelArea(
  readings: readonly GaugingInput[],
  instruments: readonly GaugingInstrument[],
  coating: Coating | null = null,
): SteelArea | null {
  const legs = bared(
    readings.filter(({ quantity, position }) => quantity === 'diameter' && position === 'leg'),
    coating,
  );
  if (legs.length === 0) return null;
  const links = [...Map.groupBy(legs, ({ link }) => link)].map(([link, group]) => linkArea(link, group));
  return {
    mean_mm2: links.reduce((sum, { area_mm2 }) => sum + area_mm2, 0) / links.length,
    least_mm2: Math.min(...links.map(({ area_mm2 }) => area_mm2)),
    uncertainty_mm2: areaUncertainty(links, { uncertainties: uncertaintiesByInstrument(legs, instruments), coating }),
    oneDirectionLinks: links.filter(({ directions }) => directions === 1).map(({ link }) => link),
  };
}

function linkArea(link: number | null, readings: readonly GaugingInput[]): LinkArea {
  const directions = [...Map.groupBy(readings, ({ direction }) => direction).values()].map((group) => ({
    group,
    mean_mm: group.reduce((sum, { value_mm }) => sum + value_mm, 0) / group.length,
  }));
  const logarithms = directions.reduce((sum, { mean_mm }) => sum + Math.log(mean_mm), 0);
  const area_mm2 = (Math.PI / 2) * Math.exp((2 * logarithms) / directions.length);
  const sensitivities = directions.flatMap(({ group, mean_mm }) =>
    group.map(({ instrument }) => ({
      instrument,
      perReading_mm: (2 * area_mm2) / (directions.length * mean_mm * group.length),
    })),
  );
  return { link, area_mm2, directions: directions.length, sensitivities };
}

/** The readings with the coat taken off both sides. */
function bared(readings: readonly GaugingInput[], coating: Coating | null): readonly GaugingInput[] {
  if (coating === null) return readings;
  const { thickness_um } = coating;
  const least_mm = Math.min(...readings.map(({ value_mm }) => value_mm));
  if (!Number.isFinite(thickness_um) || thickness_um < 0 || thickness_um / 500 >= least_mm) {
    throw new InputError(
      'gauging.coating',
      `A coating of ${thickness_um} um cannot be taken off a bar of ${least_mm} mm: give its mean thickness in um.`,
      { thickness_um },
    );
  }
  return readings.map((reading) => ({ ...reading, value_mm: reading.value_mm - thickness_um / 500 }));
}

function areaUncertainty(
  links: readonly LinkArea[],
  known: { readonly uncertainties: ReadonlyMap<string, ReadingUncertainty>; readonly coating: Coating | null },
): number | null {
  const common = new Map<string, number>();
  let variance = 0;
  let perDiameter_mm = 0;
  for (const { instrument, perReading_mm } of links.flatMap(({ sensitivities }) => sensitivities)) {
    const uncertainty = known.uncertainties.get(instrument);
    if (uncertainty === undefined) return null;
    const sensitivity = perReading_mm / links.length;
    perDiameter_mm += sensitivity;
    common.set(instrument, (common.get(instrument) ?? 0) + sensitivity * uncertainty.calibration_mm);
    variance += (sensitivity * uncertainty.random_mm) ** 2;
  }
  for (const part of common.values()) variance += part ** 2;
  const coating = known.coating;
  if (coating === null) return Math.sqrt(variance);
  if (coating.standardUncertainty_um === null) return null;
  // The coat is on both sides: an error in its thickness shifts every diameter by twice as much.
  return Math.hypot(Math.sqrt(variance), (perDiameter_mm * coating.standardUncertainty_um) / 500);
}
