/** What the shape equation needs of one product or one resample; the arrays may be longer than `count`. */
export interface ShapeData {
  readonly logForce: Float64Array;
  readonly links: Float64Array;
  readonly count: number;
  readonly breakCount: number;
  readonly meanLogBreak: number;
}

export interface ShapeRoot {
  /** Infinity when every break lies at the greatest force: the likelihood then rises for ever. */
  readonly shape: number;
  readonly steps: number;
  readonly converged: boolean;
}

const GREATEST_STEPS = 60;
const CLOSE = 1e-14;

/**
 * The shape b at which the likelihood, its scales already eliminated, is greatest: the root of
 * 1/b + mean(ln F of breaks) - sum(n F^b ln F) / sum(n F^b) = 0, pooled over `data` with a scale for each
 * (Lawless, Statistical Models and Methods for Lifetime Data, section 5.2; from memory). The left side falls steadily with b, so there is one root
 * at most. Newton's steps on 1/b, halved into a bracket when they leave it. `start` is a first guess of the shape;
 * `lead` stands before 1/b and is 1 but for bias corrections.
 */
export function shapeRoot(data: readonly ShapeData[], start: number, lead = 1): ShapeRoot {
  let breaks = 0;
  let room = 0;
  for (const one of data) {
    breaks += one.breakCount;
    room += one.breakCount * (greatest(one) - one.meanLogBreak);
  }
  if (breaks <= 0) return { shape: Number.NaN, steps: 0, converged: false };
  // 1/b lies between 0 and the mean distance of the breaks from the greatest force: there the left side is not below zero.
  let high = room / breaks / lead;
  if (high < 1e-12) return { shape: Number.POSITIVE_INFINITY, steps: 0, converged: true };
  let low = 0;
  let inverse = 1 / start < high ? 1 / start : high / 2;
  for (let step = 1; step <= GREATEST_STEPS; step++) {
    let value = lead * inverse;
    let slope = lead;
    for (const one of data) {
      const share = one.breakCount / breaks;
      const { mean, variance } = tilted(one, 1 / inverse);
      value += share * (one.meanLogBreak - mean);
      slope += (share * variance) / (inverse * inverse);
    }
    if (value > 0) high = inverse;
    else low = inverse;
    let next = inverse - value / slope;
    if (!(next > low && next < high)) next = (low + high) / 2;
    if (Math.abs(next - inverse) <= CLOSE * inverse) return { shape: 1 / next, steps: step, converged: true };
    inverse = next;
  }
  return { shape: 1 / inverse, steps: GREATEST_STEPS, converged: high - low < 1e-9 * high };
}

function greatest(data: ShapeData): number {
  let most = Number.NEGATIVE_INFINITY;
  for (let i = 0; i < data.count; i++) most = Math.max(most, data.logForce[i] ?? 0);
  return most;
}

/** Mean and variance of ln F under the weights n F^b. */
function tilted(data: ShapeData, shape: number): { readonly mean: number; readonly variance: number } {
  const { logForce, links, count } = data;
  // Counted from the greatest force, so that no power overflows and not all vanish.
  const top = greatest(data);
  let s0 = 0;
  let s1 = 0;
  let s2 = 0;
  for (let i = 0; i < count; i++) {
    const y = (logForce[i] ?? 0) - top;
    const weight = (links[i] ?? 0) * Math.exp(shape * y);
    s0 += weight;
    s1 += weight * y;
    s2 += weight * y * y;
  }
  const mean = s1 / s0;
  return { mean: top + mean, variance: Math.max(0, s2 / s0 - mean * mean) };
}
