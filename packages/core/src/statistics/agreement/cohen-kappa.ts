import { normalUpper } from '../distribution/index.ts';
import { type Kappa, kappaLimits, kappaSentence, noKappa, normalFactor } from './kappa.ts';

/** One thing as two readers saw it; null where a reader gave none. */
export interface ReadingPair {
  readonly first: string | null;
  readonly second: string | null;
}

const method = "Cohen's kappa (1960), standard error by Fleiss, Cohen and Everitt (1969)";

/**
 * Agreement of two readers beyond chance (Cohen 1960, Educational and Psychological Measurement 20, 37-46; errors:
 * Fleiss, Cohen, Everitt 1969, Psychological Bulletin 72, 323-327).
 * Things that one reader only has read are left out and counted.
 */
export function cohenKappa(pairs: readonly ReadingPair[], options: { readonly confidence?: number } = {}): Kappa {
  const both = pairs.flatMap(({ first, second }) => (first === null || second === null ? [] : [{ first, second }]));
  const categories = [...new Set(both.flatMap(({ first, second }) => [first, second]))].sort();
  const place = new Map(categories.map((category, index) => [category, index]));
  const table = categories.map(() => categories.map(() => 0));
  for (const { first, second } of both) {
    const row = table[place.get(first) ?? 0];
    const column = place.get(second) ?? 0;
    if (row) row[column] = (row[column] ?? 0) + 1;
  }
  const kappa = cohenKappaOfTable(table, { ...options, categories });
  const missing = pairs.length - both.length;
  return missing === 0
    ? kappa
    : { ...kappa, doubts: [`${missing} read by one reader only, left out`, ...kappa.doubts] };
}

/**
 * The same from a square table of counts: rows by the first reader, columns by the second.
 * A table that is not square, or counts that are not whole and at least 0, throw a RangeError.
 */
export function cohenKappaOfTable(
  table: readonly (readonly number[])[],
  options: { readonly confidence?: number; readonly categories?: readonly string[] } = {},
): Kappa {
  refuseTable(table);
  const confidence = options.confidence ?? 0.95;
  const factor = normalFactor(confidence);
  const categories = options.categories ?? table.map((_, index) => `${index + 1}`);
  const n = table.flat().reduce((sum, count) => sum + count, 0);
  const known = { method, confidence, n, categories };
  if (n === 0)
    return noKappa({ ...known, observed: null, expected: null, reason: 'no thing was read by both readers' });
  const shares = sharesOf(table, n);
  const { observed, expected } = shares;
  if (expected === 1) {
    const reason = 'both readers used one and the same category throughout, so chance explains all agreement';
    return noKappa({ ...known, observed, expected, reason });
  }
  const kappa = (observed - expected) / (1 - expected);
  const standardError = observed === 1 ? 0 : errorOf(shares, { kappa, n });
  const nullError = nullErrorOf(shares, n);
  const z = nullError > 0 ? kappa / nullError : null;
  const p = z === null ? null : Math.min(1, 2 * normalUpper(Math.abs(z)));
  // Disagreement without scatter (one reader uses one category): the large-sample error says nothing.
  const still = standardError === 0 && observed < 1;
  const limits = still
    ? { lower: null, upper: null, doubts: ['a reader used one category throughout: kappa has no limits'] }
    : kappaLimits({ kappa, expected, standardError, factor, n, confidence });
  return {
    ...known,
    kappa,
    standardError: still ? null : standardError,
    ...limits,
    observed,
    expected,
    z,
    p,
    sentence: kappaSentence({
      readers: 'The two readers',
      kappa,
      lower: limits.lower,
      upper: limits.upper,
      observed,
      expected,
      n,
    }),
  };
}

interface Shares {
  readonly cells: readonly (readonly number[])[];
  readonly rows: readonly number[];
  readonly columns: readonly number[];
  readonly observed: number;
  readonly expected: number;
}

function sharesOf(table: readonly (readonly number[])[], n: number): Shares {
  const sum = (values: readonly number[]) => values.reduce((total, value) => total + value, 0);
  const rows = table.map((row) => sum(row) / n);
  const columns = table.map((_, place) => sum(table.map((row) => row[place] ?? 0)) / n);
  return {
    cells: table.map((row) => row.map((count) => count / n)),
    rows,
    columns,
    observed: sum(table.map((row, place) => row[place] ?? 0)) / n,
    expected: sum(rows.map((share, place) => share * (columns[place] ?? 0))),
  };
}

/** Fleiss, Cohen and Everitt (1969), equation 13. */
function errorOf(shares: Shares, { kappa, n }: { readonly kappa: number; readonly n: number }): number {
  const { cells, rows, columns, observed, expected } = shares;
  let squares = 0;
  cells.forEach((row, i) => {
    row.forEach((share, j) => {
      const margin = (columns[i] ?? 0) + (rows[j] ?? 0);
      const weight = i === j ? 1 - margin * (1 - kappa) : -(1 - kappa) * margin;
      squares += share * weight ** 2;
    });
  });
  const centre = kappa - expected * (1 - kappa);
  const variance = (squares - centre ** 2) / (n * (1 - expected) ** 2);
  return observed === 1 || variance < 1e-15 / n ? 0 : Math.sqrt(variance);
}

/** The same were the readers independent: equation 14. */
function nullErrorOf({ rows, columns, expected }: Shares, n: number): number {
  const cubes = rows.reduce((sum, row, place) => sum + row * (columns[place] ?? 0) * (row + (columns[place] ?? 0)), 0);
  const variance = (expected + expected ** 2 - cubes) / (n * (1 - expected) ** 2);
  return variance < 1e-15 / n ? 0 : Math.sqrt(variance);
}

function refuseTable(table: readonly (readonly number[])[]): void {
  const square = table.every((row) => row.length === table.length);
  if (!square) throw new RangeError('the table of two readers is square');
  if (!table.flat().every((count) => Number.isInteger(count) && count >= 0)) {
    throw new RangeError('counts are whole numbers of at least 0');
  }
}
