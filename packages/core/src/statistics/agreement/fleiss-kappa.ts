import { normalUpper, studentQuantile } from '../distribution/index.ts';
import { type Kappa, kappaLimits, kappaSentence, noKappa, normalFactor } from './kappa.ts';

const method = "Fleiss' kappa (1971), large-sample standard error by Gwet (2021), Student limits";

/**
 * Agreement of any number of readers beyond chance (Fleiss 1971, Psychological Bulletin 76, 378-382; standard error:
 * Gwet 2021, Educational and Psychological Measurement 81, 781-790, which also serves when readers differ in number).
 *
 * @param readings one row a thing, one entry a reader; null where that reader gave none. Who read does not matter.
 */
export function fleissKappa(
  readings: readonly (readonly (string | null)[])[],
  options: { readonly confidence?: number } = {},
): Kappa {
  const categories = [...new Set(readings.flatMap((row) => row.filter((entry) => entry !== null)))].sort();
  const counts = readings.map((row) => categories.map((category) => row.filter((entry) => entry === category).length));
  return fleissKappaOfCounts(counts, { ...options, categories });
}

/**
 * The same from counts: one row a thing, one column a category, each cell how many readers chose it.
 * Things nobody read are left out; those read once weigh in the use of categories only.
 */
export function fleissKappaOfCounts(
  counts: readonly (readonly number[])[],
  options: { readonly confidence?: number; readonly categories?: readonly string[] } = {},
): Kappa {
  if (!counts.flat().every((count) => Number.isInteger(count) && count >= 0)) {
    throw new RangeError('counts are whole numbers of at least 0');
  }
  const confidence = options.confidence ?? 0.95;
  normalFactor(confidence);
  const things = counts.map(thingOf).filter((thing) => thing.readers > 0);
  const n = things.filter((thing) => thing.readers > 1).length;
  const categories = options.categories ?? (counts[0] ?? []).map((_, index) => `${index + 1}`);
  const known = { method, confidence, n, categories };
  if (n === 0) {
    const reason = things.length === 0 ? 'nothing was read' : 'nothing was read by two readers or more';
    return noKappa({ ...known, observed: null, expected: null, reason });
  }
  const use = categories.map((_, k) => meanOf(things.map((thing) => thing.shares[k] ?? 0)));
  const observed = things.reduce((sum, thing) => sum + thing.agreement, 0) / n;
  const expected = use.reduce((sum, share) => sum + share ** 2, 0);
  if (use.some((share) => share >= 1 - 1e-12)) {
    const reason = 'all readers used one and the same category throughout, so chance explains all agreement';
    return noKappa({ ...known, observed, expected, reason });
  }
  const kappa = (observed - expected) / (1 - expected);
  const standardError =
    observed === 1 || things.length < 2 ? 0 : errorOf(things, { kappa, observed, expected, use, n });
  return told({ ...known, kappa, standardError, observed, expected, use, things });
}

interface Thing {
  readonly readers: number;
  readonly shares: readonly number[];
  /** Share of pairs of readers who agree; 0 with one reader. */
  readonly agreement: number;
}

function thingOf(counts: readonly number[]): Thing {
  const readers = counts.reduce((sum, count) => sum + count, 0);
  const agreeing = counts.reduce((sum, count) => sum + count * (count - 1), 0);
  return {
    readers,
    shares: counts.map((count) => (readers === 0 ? 0 : count / readers)),
    agreement: readers > 1 ? agreeing / (readers * (readers - 1)) : 0,
  };
}

/** Kappa as a mean over things, each with what its use of categories does to the chance term. */
function errorOf(
  things: readonly Thing[],
  of: {
    readonly kappa: number;
    readonly observed: number;
    readonly expected: number;
    readonly use: readonly number[];
    readonly n: number;
  },
): number {
  const { kappa, expected, use, n } = of;
  const weight = things.length / n;
  const squares = things.reduce((sum, thing) => {
    const own = thing.readers > 1 ? (weight * (thing.agreement - expected)) / (1 - expected) : 0;
    const chance = thing.shares.reduce((total, share, k) => total + share * (use[k] ?? 0), 0);
    return sum + (own - (2 * (1 - kappa) * (chance - expected)) / (1 - expected) - kappa) ** 2;
  }, 0);
  const variance = squares / (things.length * (things.length - 1));
  return variance < 1e-20 ? 0 : Math.sqrt(variance);
}

function told(found: {
  readonly method: string;
  readonly confidence: number;
  readonly n: number;
  readonly categories: readonly string[];
  readonly kappa: number;
  readonly standardError: number;
  readonly observed: number;
  readonly expected: number;
  readonly use: readonly number[];
  readonly things: readonly Thing[];
}): Kappa {
  const { use, things, ...known } = found;
  const { kappa, standardError, observed, expected, n, confidence } = known;
  const still = standardError === 0 && observed < 1;
  const factor = things.length < 2 ? 0 : studentQuantile(0.5 + confidence / 2, things.length - 1);
  const limits = still
    ? { lower: null, upper: null, doubts: ['agreement was the same on every thing read: kappa has no limits'] }
    : kappaLimits({ kappa, expected, standardError, factor, n, confidence });
  const z = nullZ({ kappa, use, things });
  const single = things.length - n;
  return {
    ...known,
    ...limits,
    standardError: still ? null : standardError,
    z,
    p: z === null ? null : Math.min(1, 2 * normalUpper(Math.abs(z))),
    doubts: [...(single === 0 ? [] : [`${single} read once only`]), ...limits.doubts],
    sentence: kappaSentence({
      readers: 'Any two readers',
      kappa,
      lower: limits.lower,
      upper: limits.upper,
      observed,
      expected,
      n,
    }),
  };
}

/** Fleiss, Nee and Landis (1979), Psychological Bulletin 86, 974-977; null unless all things had as many readers. */
function nullZ(of: {
  readonly kappa: number;
  readonly use: readonly number[];
  readonly things: readonly Thing[];
}): number | null {
  const readers = of.things[0]?.readers ?? 0;
  if (of.things.some((thing) => thing.readers !== readers)) return null;
  const spread = of.use.reduce((sum, p) => sum + p * (1 - p), 0);
  const skew = of.use.reduce((sum, p) => sum + p * (1 - p) * (1 - 2 * p), 0);
  const error =
    (Math.SQRT2 * Math.sqrt(Math.max(spread ** 2 - skew, 0))) /
    (spread * Math.sqrt(of.things.length * readers * (readers - 1)));
  return error > 0 ? of.kappa / error : null;
}

function meanOf(values: readonly number[]): number {
  return values.reduce((sum, value) => sum + value, 0) / values.length;
}
