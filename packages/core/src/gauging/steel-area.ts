import { uncertaintiesByInstrument } from './quantity-gauging.ts';
import type { GaugingInput, GaugingInstrument } from './reading.ts';
import type { ReadingUncertainty } from './reading-uncertainty.ts';

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
 * which for two is the same. The readings must be of bare steel, or have the zinc taken off (`takeOffZinc`): an 85 um coat
 * adds 4 % to the area of an 8 mm bar.
 *
 * Uncertainty by the law of propagation (JCGM 100:2008 5.1, 5.2): the calibration of an instrument is common to all its
 * readings and adds up linearly, resolution and repeatability are of each reading and add in squares. The zinc taken
 * off is common to all diameters, on both sides of the bar.
 *
 * @param zincThicknessUncertainty_mm standard uncertainty of the zinc thickness taken off; 0 for bare steel
 *
 * @returns null where no diameter of a plain leg was read
 */
export function steelArea(
  readings: readonly GaugingInput[],
  instruments: readonly GaugingInstrument[],
  zincThicknessUncertainty_mm = 0,
): SteelArea | null {
  const legs = readings.filter(({ quantity, position }) => quantity === 'diameter' && position === 'leg');
  if (legs.length === 0) return null;
  const links = [...Map.groupBy(legs, ({ link }) => link)].map(([link, group]) => linkArea(link, group));
  return {
    mean_mm2: links.reduce((sum, { area_mm2 }) => sum + area_mm2, 0) / links.length,
    least_mm2: Math.min(...links.map(({ area_mm2 }) => area_mm2)),
    uncertainty_mm2: areaUncertainty(links, {
      uncertainties: uncertaintiesByInstrument(legs, instruments),
      zincThicknessUncertainty_mm,
    }),
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

function areaUncertainty(
  links: readonly LinkArea[],
  known: {
    readonly uncertainties: ReadonlyMap<string, ReadingUncertainty>;
    readonly zincThicknessUncertainty_mm: number;
  },
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
  // Zinc lies on both sides: an error in its thickness shifts every diameter by twice as much.
  return Math.hypot(Math.sqrt(variance), 2 * perDiameter_mm * known.zincThicknessUncertainty_mm);
}
