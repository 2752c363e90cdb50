/** The quantities a trace can hold, each with one bench unit: force kN, length mm, time s. */
export type Dimension = 'force' | 'length' | 'time';

/** A unit of measure. value in the bench unit = value x multiply / divide; both are exact as written. */
export interface Unit {
  readonly symbol: string;
  readonly dimension: Dimension;
  readonly multiply: number;
  readonly divide: number;
  /** True for a clock reading such as 01:02:03.5, which is no single number. */
  readonly clock: boolean;
}

/** Where the factors come from, by unit symbol. */
export const FACTOR_SOURCES: Readonly<Record<string, string>> = {
  kgf: 'standard gravity 9.80665 m/s2 exactly (3rd CGPM 1901; SI Brochure)',
  lbf: 'pound 0.45359237 kg exactly (1959 agreement) x 9.80665 m/s2 = 4.4482216152605 N exactly (NIST SP 811)',
  in: 'inch 25.4 mm exactly (1959 agreement; NIST SP 811)',
  'long tonf': '2240 lbf (NIST SP 811)',
  'short tonf': '2000 lbf (NIST SP 811)',
};

function unit(symbol: string, dimension: Dimension, multiply: number, divide = 1, clock = false): Unit {
  return { symbol, dimension, multiply, divide, clock };
}

const LBF_N = 4.4482216152605;

/** Every unit known, with all the spellings taken for it. A spelling is compared as written, then in lower case. */
export const UNITS: readonly { readonly unit: Unit; readonly spellings: readonly string[] }[] = [
  { unit: unit('N', 'force', 1, 1000), spellings: ['N', 'newton', 'newtons'] },
  { unit: unit('daN', 'force', 1, 100), spellings: ['daN', 'dan', 'decanewton'] },
  { unit: unit('kN', 'force', 1), spellings: ['kN', 'kn', 'kilonewton', 'kilonewtons'] },
  { unit: unit('MN', 'force', 1000), spellings: ['MN', 'meganewton', 'meganewtons'] },
  { unit: unit('kgf', 'force', 9.80665, 1000), spellings: ['kgf', 'kp', 'kilopond', 'kg', 'kilogram-force'] },
  { unit: unit('tf', 'force', 9.80665), spellings: ['tf', 'tonne-force', 'tonnef', 'tonne', 'tonnes', 'metric tonf'] },
  { unit: unit('lbf', 'force', LBF_N, 1000), spellings: ['lbf', 'lb', 'lbs', 'pound-force', 'pounds-force'] },
  { unit: unit('kip', 'force', LBF_N), spellings: ['kip', 'kips', 'klbf', 'kipf'] },
  { unit: unit('long tonf', 'force', LBF_N * 2240, 1000), spellings: ['long tonf', 'uk tonf', 'imperial tonf'] },
  { unit: unit('short tonf', 'force', LBF_N * 2000, 1000), spellings: ['short tonf', 'us tonf'] },
  { unit: unit('um', 'length', 1, 1000), spellings: ['um', 'µm', 'μm', 'micron', 'microns', 'micrometre'] },
  { unit: unit('mm', 'length', 1), spellings: ['mm', 'millimetre', 'millimetres', 'millimeter', 'millimeters'] },
  { unit: unit('cm', 'length', 10), spellings: ['cm', 'centimetre', 'centimetres', 'centimeter', 'centimeters'] },
  { unit: unit('m', 'length', 1000), spellings: ['m', 'metre', 'metres', 'meter', 'meters'] },
  { unit: unit('in', 'length', 25.4), spellings: ['in', 'in.', 'inch', 'inches', '"'] },
  { unit: unit('s', 'time', 1), spellings: ['s', 'sec', 'secs', 'second', 'seconds', 'sek', 'sekunden'] },
  { unit: unit('ms', 'time', 1, 1000), spellings: ['ms', 'msec', 'millisecond', 'milliseconds'] },
  { unit: unit('us', 'time', 1, 1e6), spellings: ['us', 'µs', 'μs', 'microsecond', 'microseconds'] },
  { unit: unit('min', 'time', 60), spellings: ['min', 'mins', 'minute', 'minutes', 'minuten'] },
  { unit: unit('h', 'time', 3600), spellings: ['h', 'hr', 'hrs', 'hour', 'hours'] },
  { unit: unit('hh:mm:ss', 'time', 1, 1, true), spellings: ['hh:mm:ss', 'h:mm:ss', 'h:m:s', 'hh:mm:ss.s', 'hms'] },
];

/** Units that mean several things, with the choices: never taken on a guess. */
export const AMBIGUOUS_UNITS: readonly {
  readonly spellings: readonly string[];
  readonly choices: readonly string[];
}[] = [
  {
    spellings: ['tonf', 't', 'ton', 'tons', 'ton-force', 'tons-force'],
    choices: ['tf (metric, 1000 kgf)', 'long tonf (2240 lbf)', 'short tonf (2000 lbf)'],
  },
  { spellings: ['mn'], choices: ['MN (meganewton)', 'N'] },
];
