/** One moment of a tuning pull. */
export interface Moment {
  /** Pull it belongs to: all moments of a pull weigh one together. */
  readonly pull: number;
  readonly weight: number;
  readonly features: readonly number[];
  /** ln(maximum / greatest force so far). */
  readonly rise: number;
}

/** A full binary tree: node k forks to 2k + 1 (feature at most the limit) and 2k + 2; the leaves are numbered from left to right. */
export interface BoostedTree {
  readonly features: readonly number[];
  readonly limits: readonly number[];
  readonly leaves: readonly number[];
}

export interface BoostPlan {
  readonly quantile: number;
  readonly trees: number;
  readonly depth: number;
  readonly pace: number;
  /** Least weight, in pulls, on either side of a fork. */
  readonly leastPulls: number;
}

export interface BoostedQuantile {
  readonly start: number;
  readonly trees: readonly BoostedTree[];
}

const BINS = 64;
/** A fork that leads nowhere sends everything to the left. */
const NO_LIMIT = 1e9;

interface Binned {
  readonly count: number;
  readonly bins: readonly Uint8Array[];
  /** Upper edge of each bin of each feature. */
  readonly edges: readonly (readonly number[])[];
  readonly weight: Float64Array;
  readonly target: Float64Array;
}

function edgesOf(values: Float64Array): number[] {
  const sorted = values.toSorted();
  const edges = Array.from({ length: BINS - 1 }, (_, k) => sorted[Math.floor(((k + 1) * sorted.length) / BINS)] ?? 0);
  return [...new Set(edges.map((edge) => Number(edge.toPrecision(4))))].sort((a, b) => a - b);
}

function binOf(edges: readonly number[], value: number): number {
  let low = 0;
  let high = edges.length;
  while (low < high) {
    const middle = (low + high) >> 1;
    if (value <= (edges[middle] ?? 0)) high = middle;
    else low = middle + 1;
  }
  return low;
}

/** Features cut into bins once, so that every tree only counts. */
export function binned(moments: readonly Moment[], features: number): Binned {
  const columns = Array.from({ length: features }, (_, f) =>
    Float64Array.from(moments, (moment) => moment.features[f] ?? 0),
  );
  const edges = columns.map(edgesOf);
  return {
    count: moments.length,
    edges,
    bins: columns.map((column, f) => Uint8Array.from(column, (value) => binOf(edges[f] ?? [], value))),
    weight: Float64Array.from(moments, ({ weight }) => weight),
    target: Float64Array.from(moments, ({ rise }) => rise),
  };
}

function quantileOf(values: Float64Array, weights: Float64Array, share: number): number {
  const order = Uint32Array.from(values, (_, i) => i).sort((a, b) => (values[a] as number) - (values[b] as number));
  const all = weights.reduce((sum, weight) => sum + weight, 0);
  let sum = 0;
  for (const i of order) {
    sum += weights[i] as number;
    if (sum >= share * all) return values[i] as number;
  }
  return 0;
}

interface Fork {
  readonly feature: number;
  readonly bin: number;
}

/** Sums of slope and weight by bin, for every node of a level. */
function histogram(data: Binned, feature: number, level: Level): Float64Array {
  const sums = new Float64Array(level.nodes * BINS * 2);
  const bins = data.bins[feature] as Uint8Array;
  for (let i = 0; i < data.count; i++) {
    const at = ((level.node[i] as number) * BINS + (bins[i] as number)) * 2;
    sums[at] = (sums[at] as number) + (level.slope[i] as number);
    sums[at + 1] = (sums[at + 1] as number) + (data.weight[i] as number);
  }
  return sums;
}

interface Level {
  readonly nodes: number;
  readonly node: Uint8Array;
  readonly slope: Float64Array;
}

/** Best bin of one feature for one node, by the fall of the squared error of the slopes. */
function bestBin(
  sums: Float64Array,
  node: number,
  leastPulls: number,
): { readonly bin: number; readonly gain: number } {
  let slopes = 0;
  let weight = 0;
  for (let bin = 0; bin < BINS; bin++) {
    slopes += sums[(node * BINS + bin) * 2] as number;
    weight += sums[(node * BINS + bin) * 2 + 1] as number;
  }
  let best = { bin: -1, gain: 0 };
  let s = 0;
  let w = 0;
  for (let bin = 0; bin < BINS - 1; bin++) {
    s += sums[(node * BINS + bin) * 2] as number;
    w += sums[(node * BINS + bin) * 2 + 1] as number;
    if (w < leastPulls || weight - w < leastPulls) continue;
    const gain = (s * s) / w + (slopes - s) ** 2 / (weight - w) - (slopes * slopes) / weight;
    if (gain > best.gain) best = { bin, gain };
  }
  return best;
}

function forksOf(data: Binned, level: Level, leastPulls: number): Fork[] {
  const best = Array.from({ length: level.nodes }, () => ({ feature: 0, bin: -1, gain: 0 }));
  for (let feature = 0; feature < data.bins.length; feature++) {
    const sums = histogram(data, feature, level);
    for (let node = 0; node < level.nodes; node++) {
      const found = bestBin(sums, node, leastPulls);
      if (found.gain > (best[node]?.gain ?? 0)) best[node] = { feature, ...found };
    }
  }
  return best;
}

function leavesOf(data: Binned, residual: Float64Array, node: Uint8Array, plan: BoostPlan): number[] {
  const members = Array.from({ length: 2 ** plan.depth }, (): number[] => []);
  for (let i = 0; i < data.count; i++) members[node[i] as number]?.push(i);
  return members.map((own) => {
    const values = Float64Array.from(own, (i) => residual[i] as number);
    const weights = Float64Array.from(own, (i) => data.weight[i] as number);
    return Number((plan.pace * quantileOf(values, weights, plan.quantile)).toPrecision(3));
  });
}

function growTree(data: Binned, residual: Float64Array, plan: BoostPlan): { tree: BoostedTree; node: Uint8Array } {
  const slope = Float64Array.from(
    residual,
    (value, i) => (data.weight[i] as number) * (plan.quantile - (value < 0 ? 1 : 0)),
  );
  const node = new Uint8Array(data.count);
  const features: number[] = [];
  const limits: number[] = [];
  for (let depth = 0; depth < plan.depth; depth++) {
    const forks = forksOf(data, { nodes: 2 ** depth, node, slope }, plan.leastPulls);
    for (const { feature, bin } of forks) {
      features.push(feature);
      limits.push(bin < 0 ? NO_LIMIT : (data.edges[feature]?.[bin] ?? NO_LIMIT));
    }
    for (let i = 0; i < data.count; i++) {
      const { feature, bin } = forks[node[i] as number] as Fork;
      const isAbove = bin >= 0 && (data.bins[feature]?.[i] ?? 0) > bin;
      node[i] = 2 * (node[i] as number) + Number(isAbove);
    }
  }
  const leaves = leavesOf(data, residual, node, plan);
  return { tree: { features, limits, leaves }, node };
}

/**
 * Quantile of the rise as a sum of small trees (gradient boosting, Friedman 2001, with the loss of Koenker and Bassett 1978): each tree forks by the slope of
 * the loss, and its leaves hold the quantile of what is left over there, times the pace.
 */
export function boostQuantile(data: Binned, plan: BoostPlan): BoostedQuantile {
  const start = Number(quantileOf(data.target, data.weight, plan.quantile).toPrecision(4));
  const residual = data.target.map((value) => value - start);
  const trees = Array.from({ length: plan.trees }, () => {
    const { tree, node } = growTree(data, residual, plan);
    for (let i = 0; i < data.count; i++) {
      residual[i] = (residual[i] as number) - (tree.leaves[node[i] as number] ?? 0);
    }
    return tree;
  });
  return { start, trees };
}
