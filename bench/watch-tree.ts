/** One moment of a tuning pull. */
export interface Moment {
  /** Pull it belongs to: all moments of a pull weigh one together. */
  readonly pull: number;
  readonly weight: number;
  readonly features: readonly number[];
  /** ln(maximum / greatest force so far). */
  readonly rise: number;
}

/** A fork (feature, limit, where to go) or a leaf (rise, or null when it means nothing). */
export interface TreeNode {
  feature?: number;
  limit?: number;
  below?: number;
  above?: number;
  rise?: { readonly low: number; readonly middle: number; readonly high: number } | null;
  pulls?: number;
}

const DEEPEST = 8;
/** A node with fewer moments is not split. */
const FEWEST_MOMENTS = 700;
const FEWEST_PULLS = 25;
const CANDIDATES = 40;
/** No side of a split holds less than this share. */
const LEAST_SIDE = 0.08;
const TAIL = 0.05;
/** A row whose 90 % interval is wider than this, over its middle, is withheld. */
const WIDEST = 0.4;
/** Keeps the logarithm of a rise finite, and small rises alike. */
const FLOOR = 0.03;

interface Split {
  readonly feature: number;
  readonly limit: number;
  readonly gain: number;
}

function target(moment: Moment): number {
  return Math.log(moment.rise + FLOOR);
}

/** Best limit of one feature by the fall of the weighted squared error. */
function bestLimit(moments: readonly Moment[], feature: number): Split | null {
  const value = (moment: Moment): number => moment.features[feature] ?? 0;
  const sorted = [...moments].sort((a, b) => value(a) - value(b));
  const n = sorted.length;
  const weights = new Float64Array(n + 1);
  const sums = new Float64Array(n + 1);
  sorted.forEach((moment, i) => {
    weights[i + 1] = (weights[i] ?? 0) + moment.weight;
    sums[i + 1] = (sums[i] ?? 0) + moment.weight * target(moment);
  });
  const all = sums[n] ?? 0;
  const weight = weights[n] ?? 1;
  let best: Split | null = null;
  const from = Math.ceil(LEAST_SIDE * n);
  const step = Math.max(1, Math.floor(n / CANDIDATES));
  for (let i = from; i < n - from; i += step) {
    const [left, right] = [sorted[i - 1], sorted[i]];
    if (!left || !right || value(left) === value(right)) continue;
    const s = sums[i] ?? 0;
    const w = weights[i] ?? 1;
    const gain = (s * s) / w + (all - s) ** 2 / (weight - w) - (all * all) / weight;
    const limit = Number(((value(left) + value(right)) / 2).toPrecision(4));
    if (!best || gain > best.gain) best = { feature, limit, gain };
  }
  return best;
}

function weightedQuantile(moments: readonly Moment[], share: number): number {
  const sorted = [...moments].sort((a, b) => a.rise - b.rise);
  const all = sorted.reduce((sum, { weight }) => sum + weight, 0);
  let sum = 0;
  for (const { weight, rise } of sorted) {
    sum += weight;
    if (sum >= share * all) return Number(rise.toPrecision(4));
  }
  return 0;
}

function leaf(held: readonly Moment[]): TreeNode {
  const pulls = new Set(held.map(({ pull }) => pull)).size;
  const low = weightedQuantile(held, TAIL);
  const middle = weightedQuantile(held, 0.5);
  const high = weightedQuantile(held, 1 - TAIL);
  const means = pulls >= FEWEST_PULLS && Math.exp(high - middle) - Math.exp(low - middle) <= WIDEST;
  return { rise: means ? { low, middle, high } : null, pulls };
}

/**
 * Regression tree (Breiman and others 1984) grown on one half of the pulls; the quantiles in its leaves are those of the other half, so that what was
 * chosen to fit does not also measure the fit.
 */
export function growTree(grow: readonly Moment[], measure: readonly Moment[], features: number): TreeNode[] {
  const nodes: TreeNode[] = [];
  const add = (own: readonly Moment[], held: readonly Moment[], depth: number): number => {
    const at = nodes.push({}) - 1;
    const splits =
      depth < DEEPEST && own.length > FEWEST_MOMENTS
        ? Array.from({ length: features }, (_, feature) => bestLimit(own, feature)).filter((each) => each !== null)
        : [];
    const best = splits.reduce<Split | null>((a, b) => (a && a.gain >= b.gain ? a : b), null);
    if (!best) {
      nodes[at] = leaf(held);
      return at;
    }
    const { feature, limit } = best;
    const isBelow = (moment: Moment): boolean => (moment.features[feature] ?? 0) <= limit;
    const below = add(own.filter(isBelow), held.filter(isBelow), depth + 1);
    const above = add(
      own.filter((each) => !isBelow(each)),
      held.filter((each) => !isBelow(each)),
      depth + 1,
    );
    nodes[at] = { feature, limit, below, above };
    return at;
  };
  add(grow, measure, 0);
  return nodes;
}
