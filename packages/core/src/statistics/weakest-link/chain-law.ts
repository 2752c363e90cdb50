/** Weibull law of one break mode, per link: cumulative hazard (F / scale)^shape. */
export interface ModeLaw {
  readonly mode: string;
  readonly shape: number;
  readonly scale_kN: number;
}

export interface ChainUnderLoad {
  readonly links: number;
  readonly force_kN: number;
}

/** Probability that a piece of `links` links holds `force_kN`: each mode in each link must hold (weakest link). 1 without a law. */
export function pieceSurvival(laws: readonly ModeLaw[], load: ChainUnderLoad): number {
  if (load.force_kN <= 0) return 1;
  const logForce = Math.log(load.force_kN);
  const hazard = laws.reduce((sum, law) => sum + Math.exp(law.shape * (logForce - Math.log(law.scale_kN))), 0);
  return Math.exp(-load.links * hazard);
}

/** The force that a share `survival` of pieces of `links` links holds, in kN; null without a law. */
export function pieceQuantile(laws: readonly ModeLaw[], links: number, survival: number): number | null {
  if (laws.length === 0) return null;
  const shapes = Float64Array.from(laws, (law) => law.shape);
  const logRates = Float64Array.from(laws, (law) => -law.shape * Math.log(law.scale_kN));
  const target = Math.log(-Math.log(survival) / links);
  return Math.exp(logForceAt(shapes, logRates, target));
}

/**
 * x with ln sum(exp(logRate + shape x)) = target. The left side is convex and rises: Newton's steps from any start come from the right after
 * the first. With one mode it is a division.
 */
export function logForceAt(
  shapes: Float64Array,
  logRates: Float64Array,
  target: number,
  start = leastAlone(shapes, logRates, target),
): number {
  if (shapes.length === 1) return (target - (logRates[0] ?? 0)) / (shapes[0] ?? 1);
  let x = start;
  for (let step = 0; step < 60; step++) {
    const { value, slope } = logHazard(shapes, logRates, x);
    const move = (value - target) / slope;
    x -= move;
    if (Math.abs(move) < 1e-12 * (1 + Math.abs(x))) break;
  }
  return x;
}

/** The least of the forces the modes would give alone: the true one is just below. */
function leastAlone(shapes: Float64Array, logRates: Float64Array, target: number): number {
  let least = Number.POSITIVE_INFINITY;
  for (let m = 0; m < shapes.length; m++) least = Math.min(least, (target - (logRates[m] ?? 0)) / (shapes[m] ?? 1));
  return least;
}

/** ln of the summed hazard at ln force `x`, and its slope: the shape the modes have together there. */
export function logHazard(shapes: Float64Array, logRates: Float64Array, x: number) {
  let top = Number.NEGATIVE_INFINITY;
  for (let m = 0; m < shapes.length; m++) top = Math.max(top, (logRates[m] ?? 0) + (shapes[m] ?? 0) * x);
  let sum = 0;
  let weighted = 0;
  for (let m = 0; m < shapes.length; m++) {
    const part = Math.exp((logRates[m] ?? 0) + (shapes[m] ?? 0) * x - top);
    sum += part;
    weighted += part * (shapes[m] ?? 0);
  }
  return { value: top + Math.log(sum), slope: weighted / sum };
}

export interface ModeShare {
  readonly mode: string;
  /** Probability that a break of the chain is in this mode. */
  readonly share: number;
}

export interface ChainForces {
  readonly mean_kN: number;
  readonly cov_pct: number;
  /** The likeliest mode first. */
  readonly shares: readonly ModeShare[];
}

const STEP = 0.25;

/**
 * Mean and coefficient of variation of the breaking force of pieces of `links` links, and how their breaks divide among the modes; null
 * without a law. Integrated over the logarithm of the cumulative hazard, whose density exp(t - e^t) makes the trapezium rule exact to rounding.
 */
export function chainForces(laws: readonly ModeLaw[], links: number): ChainForces | null {
  const first = laws[0];
  if (!first) return null;
  const shapes = Float64Array.from(laws, (law) => law.shape);
  // Forces in units of one scale, so that no power overflows.
  const unit = Math.log(first.scale_kN);
  const logRates = Float64Array.from(laws, (law) => law.shape * (unit - Math.log(law.scale_kN)));
  const shares = laws.map(() => 0);
  let mean = 0;
  let square = 0;
  let x = logForceAt(shapes, logRates, 4 - Math.log(links));
  for (let t = 4; t > -36; t -= STEP) {
    x = logForceAt(shapes, logRates, t - Math.log(links), x);
    const weight = STEP * Math.exp(t - Math.exp(t));
    const force = Math.exp(x);
    mean += weight * force;
    square += weight * force * force;
    const { value, slope } = logHazard(shapes, logRates, x);
    for (let m = 0; m < shares.length; m++) {
      const part = Math.exp((logRates[m] ?? 0) + (shapes[m] ?? 0) * x - value) * ((shapes[m] ?? 0) / slope);
      shares[m] = (shares[m] ?? 0) + weight * part;
    }
  }
  const variance = Math.max(0, square - mean * mean);
  return {
    mean_kN: first.scale_kN * mean,
    cov_pct: (100 * Math.sqrt(variance)) / mean,
    shares: laws
      .map((law, m) => ({ mode: law.mode, share: shares[m] ?? 0 }))
      .sort((a, b) => b.share - a.share || a.mode.localeCompare(b.mode, 'en')),
  };
}
