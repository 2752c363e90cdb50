import { invertTail } from './inversion.ts';
import { normalDensity, normalUpper } from './normal.ts';
import { requireNumber, requirePositive, requireProbability } from './probability.ts';
import { meanOverScale } from './scale-integral.ts';
import { studentQuantile } from './student.ts';

function requireArguments(groups: number, nu: number): void {
  if (!Number.isInteger(groups) || groups < 2) {
    throw new RangeError(`the studentized range takes a whole number of groups of 2 or more, not ${groups}`);
  }
  requirePositive('the degrees of freedom of the studentized range', nu);
}

/** The tail of the range of so many standard normal values, w given. */
type RangeTail = (w: number) => number;

/** What does not depend on w, at the places z of the greatest value. */
interface Grid {
  readonly step: number;
  readonly below: Float64Array;
  readonly density: Float64Array;
  /** density times below to the power groups - 1 */
  readonly greatest: Float64Array;
}

const leastZ = -9;
const greatestZ = 30;

function gridFor(groups: number): Grid {
  const step = Math.min(0.25, 0.65 / Math.sqrt(groups));
  const count = Math.ceil((greatestZ - leastZ) / step);
  const below = new Float64Array(count);
  const density = new Float64Array(count);
  const greatest = new Float64Array(count);
  for (let index = 0; index < count; index += 1) {
    const z = leastZ + index * step;
    below[index] = normalUpper(-z);
    density[index] = normalDensity(z);
    greatest[index] = normalDensity(z) * normalUpper(-z) ** (groups - 1);
  }
  return { step, below, density, greatest };
}

/** P(W <= w): the other values lie within w below the greatest. */
function rangeLower(groups: number): RangeTail {
  const grid = gridFor(groups);
  return (w) =>
    sumAbout(0.5 * w, { grid, groups }, (index, z) => {
      const within = z > w ? normalUpper(z - w) - normalUpper(z) : (grid.below[index] ?? 0) - normalUpper(w - z);
      return within > 0 ? (grid.density[index] ?? 0) * within ** (groups - 1) : 0;
    });
}

/** P(W > w): at least one of the other values lies more than w below the greatest; written without a difference from 1. */
function rangeUpper(groups: number): RangeTail {
  const grid = gridFor(groups);
  return (w) =>
    sumAbout(0.5 * w, { grid, groups }, (index, z) => {
      const share = normalUpper(w - z) / (grid.below[index] ?? 1);
      const missing = share >= 1 ? 1 : -Math.expm1((groups - 1) * Math.log1p(-share));
      return (grid.greatest[index] ?? 0) * missing;
    });
}

/** The trapezoidal sum over z, from the centre outwards: for functions which fall like a normal density its error vanishes faster than any power of the step. */
function sumAbout(
  centre: number,
  { grid, groups }: { readonly grid: Grid; readonly groups: number },
  term: (index: number, z: number) => number,
): number {
  const { step, below } = grid;
  const middle = Math.min(below.length - 1, Math.round((centre - leastZ) / step));
  let sum = 0;
  for (let index = middle; index < below.length; index += 1) {
    const next = term(index, leastZ + index * step);
    sum += next;
    if (next < 1e-16 * sum && index > middle + 4 / step) break;
  }
  for (let index = middle - 1; index >= 0; index -= 1) {
    const next = term(index, leastZ + index * step);
    sum += next;
    if (next < 1e-16 * sum && index < middle - 4 / step) break;
  }
  return Math.min(1, groups * step * sum);
}

/** Over the standard deviation s; the start is put where the tail does not vanish in a double. */
function studentized(tail: RangeTail, q: number, nu: number): number {
  if (nu === Infinity) return tail(q);
  const start = Math.min(0, Math.log(20 / q));
  // With few degrees of freedom halving the step gains fewer digits (found on two groups, where Student's t is exact).
  const agreement = nu < 15 ? 1e-9 : 1e-7;
  return Math.min(1, meanOverScale({ logOf: (s) => Math.log(tail(q * s)), start, agreement }, nu));
}

/** P(Q <= q) of the studentized range of `groups` means with `nu` (at least 1, may be infinite) degrees of freedom. */
export function studentizedRangeCdf(q: number, groups: number, nu: number): number {
  requireArguments(groups, nu);
  requireNumber('the studentized range', q);
  if (q <= 0) return 0;
  if (q === Infinity) return 1;
  const lower = studentized(rangeLower(groups), q, nu);
  return lower < 0.5 ? lower : 1 - studentized(rangeUpper(groups), q, nu);
}

/** P(Q > q) of the studentized range, computed directly. */
export function studentizedRangeUpper(q: number, groups: number, nu: number): number {
  requireArguments(groups, nu);
  requireNumber('the studentized range', q);
  if (q <= 0) return 1;
  if (q === Infinity) return 0;
  const upper = studentized(rangeUpper(groups), q, nu);
  return upper < 0.5 ? upper : 1 - studentized(rangeLower(groups), q, nu);
}

/** q with P(Q <= q) = `p` for the studentized range; 0 at p = 0, infinity at p = 1. */
export function studentizedRangeQuantile(p: number, groups: number, nu: number): number {
  requireProbability(p);
  requireArguments(groups, nu);
  if (p === 0) return 0;
  if (p === 1) return Infinity;
  const rising = p <= 0.5;
  const tail = rising ? rangeLower(groups) : rangeUpper(groups);
  const logTail = (y: number) => Math.log(studentized(tail, Math.exp(y), nu));
  const logTarget = Math.log(rising ? p : 1 - p);
  const guess = Math.log(pairwiseBound(p, groups, nu));
  return Math.exp(invertTail({ logTail, logTarget, rising, guess, step: 0.02, tolerance: 1e-12 }));
}

/** Bonferroni's bound over all pairs: close above the quantile when 1 - p is small; a first guess only. */
function pairwiseBound(p: number, groups: number, nu: number): number {
  const pairs = (groups * (groups - 1)) / 2;
  return Math.SQRT2 * studentQuantile(0.5 + 0.5 * Math.max(p, 0.1) ** (1 / pairs), nu);
}
