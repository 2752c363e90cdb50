/** A reading of an instrument against something known: how far it was off, in the instrument's unit. */
export interface CheckDeviation {
  /** When, ISO 8601. */
  readonly at: string;
  /** Reading less reference value. */
  readonly deviation: number;
}

export type ChartSignal = 'beyond the limits' | 'eight on one side' | 'off by more than allowed';

export interface ChartPoint extends CheckDeviation {
  /** Largest deviation allowed then; null where nothing says. */
  readonly allowed: number | null;
  readonly signals: readonly ChartSignal[];
}

export interface ControlChart {
  /** In order of time. */
  readonly points: readonly ChartPoint[];
  /** Mean of the readings that set the limits; null without any. */
  readonly centre: number | null;
  /** Mean of the ranges between neighbours; null below two readings. */
  readonly meanRange: number | null;
  readonly lower: number | null;
  readonly upper: number | null;
  /** How many readings set centre and limits. */
  readonly settingReadings: number;
}

/** The first so many readings set the limits, so that a later drift does not widen them. Common practice: twenty to twenty-five. */
const readingsThatSet = 20;

/** A run this long on one side of the centre is a signal (Western Electric, 1956; common practice). */
const runLength = 8;

/** Mean range of two values of a normal distribution with standard deviation one: 2 / sqrt(pi), tabled as d2 = 1.128. */
export const meanRangeOfTwo = 2 / Math.sqrt(Math.PI);

/**
 * Chart of individual readings with limits from the moving ranges: centre ± 3 MR / d2 (NIST/SEMATECH e-Handbook 6.3.2.2; ISO 7870-2).
 * Below two readings there are no limits. `allowed` gives the largest deviation the instrument may show, or null where nothing says; it
 * must have the length of the readings.
 */
export function controlChart(readings: readonly CheckDeviation[], allowed: readonly (number | null)[]): ControlChart {
  const order = readings
    .map((_, at) => at)
    .sort((a, b) => ((readings[a]?.at ?? '') < (readings[b]?.at ?? '') ? -1 : 1));
  const sorted = order.flatMap((at) => {
    const reading = readings[at];
    return reading ? [{ ...reading, allowed: allowed[at] ?? null }] : [];
  });
  const setting = sorted.slice(0, readingsThatSet).map(({ deviation }) => deviation);
  const centre = setting.length === 0 ? null : mean(setting);
  const ranges = setting.slice(1).map((value, at) => Math.abs(value - (setting[at] ?? value)));
  const meanRange = ranges.length === 0 ? null : mean(ranges);
  const reach = meanRange === null ? null : (3 * meanRange) / meanRangeOfTwo;
  const lower = centre === null || reach === null ? null : centre - reach;
  const upper = centre === null || reach === null ? null : centre + reach;
  return {
    points: sorted.map((point, at) => ({ ...point, signals: signalsAt(sorted, at, { centre, lower, upper }) })),
    centre,
    meanRange,
    lower,
    upper,
    settingReadings: setting.length,
  };
}

interface Lines {
  readonly centre: number | null;
  readonly lower: number | null;
  readonly upper: number | null;
}

type Unsignalled = Omit<ChartPoint, 'signals'>;

function signalsAt(points: readonly Unsignalled[], at: number, { centre, lower, upper }: Lines): ChartSignal[] {
  const point = points[at];
  if (!point) return [];
  const { deviation, allowed } = point;
  const isBeyond = (lower !== null && deviation < lower) || (upper !== null && deviation > upper);
  const run = points.slice(Math.max(0, at - runLength + 1), at + 1);
  const isRun =
    centre !== null &&
    run.length === runLength &&
    (run.every((one) => one.deviation > centre) || run.every((one) => one.deviation < centre));
  return [
    ...(allowed !== null && Math.abs(deviation) > allowed ? (['off by more than allowed'] as const) : []),
    ...(isBeyond ? (['beyond the limits'] as const) : []),
    ...(isRun ? (['eight on one side'] as const) : []),
  ];
}

function mean(values: readonly number[]): number {
  return values.reduce((sum, value) => sum + value, 0) / values.length;
}
