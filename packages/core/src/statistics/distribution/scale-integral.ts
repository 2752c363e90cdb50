import { stirlingRemainder } from './log-gamma.ts';

/** A probability given the standard deviation s of the sample. */
export interface ScaleCondition {
  /** Its natural logarithm. It must be concave in s, as that of every probability of the kind P(Z <= t s - delta) is. */
  readonly logOf: (s: number) => number;
  /** A logarithm of s at which it is not zero; 0 unless told. */
  readonly start?: number;
  /** Two sums that agree to this part of themselves end the halving of the step; 1e-9 unless told. */
  readonly agreement?: number;
}

/**
 * The mean of a probability over s, the standard deviation of a normal sample with `nu` degrees of freedom (at least 1) and sigma = 1
 * (s squared is chi-squared over nu). All terms are positive, so that the sum keeps its relative accuracy however small it is.
 * Trapezoidal rule in v with ln s = peak + width sinh(v): for analytic peaks of this form its error falls faster than any power of the step.
 */
export function meanOverScale({ logOf, start = 0, agreement = 1e-9 }: ScaleCondition, nu: number): number {
  const constant = 0.5 * Math.log(nu / Math.PI) - stirlingRemainder(nu / 2);
  const logIntegrand = (u: number) => constant + logOf(Math.exp(u)) - 0.5 * nu * (Math.expm1(2 * u) - 2 * u);
  const peak = peakOf(logIntegrand, start, Math.min(0.5, 1 / Math.sqrt(2 * nu)));
  if (peak.height < -740) return 0;
  const scaled = (v: number) =>
    peak.width * Math.cosh(v) * Math.exp(logIntegrand(peak.at + peak.width * Math.sinh(v)) - peak.height);
  return Math.exp(peak.height) * trapezoid(scaled, agreement);
}

interface Peak {
  readonly at: number;
  readonly height: number;
  /** About one standard deviation of the peak. */
  readonly width: number;
}

/** Parabolas through three points, each move held within a reach; the place only guides the sum and need not be exact. */
function peakOf(f: (u: number) => number, start: number, firstStep: number): Peak {
  let { at, height, reach } = climb(f, start, firstStep);
  let step = firstStep;
  for (let round = 0; round < 100 && height > -Infinity; round += 1) {
    const left = f(at - step);
    const right = f(at + step);
    const curvature = (left - 2 * height + right) / (step * step);
    const bent = curvature < 0 && curvature > -Infinity;
    const width = bent ? 1 / Math.sqrt(-curvature) : Infinity;
    const move = bent ? (right - left) / (2 * step * -curvature) : right > left ? reach : -reach;
    if (bent && Math.abs(move) < 0.3 * width && step < 2 * width) return { at, height, width };
    step = Math.min(step, width);
    const next = at + Math.max(-reach, Math.min(reach, move));
    const nextHeight = f(next);
    if (nextHeight >= height) {
      at = next;
      height = nextHeight;
    } else {
      reach = 0.4 * Math.min(reach, Math.abs(move));
      step = Math.min(step, reach);
    }
  }
  return { at, height, width: step };
}

/** Uphill in doubling steps until the next one would lead down. */
function climb(f: (u: number) => number, start: number, firstStep: number) {
  let at = start;
  let height = f(at);
  let reach = f(at + firstStep) > height ? firstStep : -firstStep;
  for (let next = f(at + reach); next > height; next = f(at + reach)) {
    at += reach;
    height = next;
    reach *= 2;
  }
  return { at, height, reach: Math.abs(reach) };
}

/** The step is halved until two sums agree; each halving about squares the error, so that the last sum is better than the agreement by far. */
function trapezoid(f: (v: number) => number, agreement: number): number {
  let step = 0.3;
  let total = step * sumOutwards(f, 0, step);
  for (let halving = 0; halving < 9; halving += 1) {
    const finer = 0.5 * (total + step * sumOutwards(f, 0.5, step));
    const settled = Math.abs(finer - total) <= agreement * finer;
    total = finer;
    step *= 0.5;
    if (settled) break;
  }
  return total;
}

/** f at all places (k + offset) step, from the peak outwards on both sides until the terms vanish. */
function sumOutwards(f: (v: number) => number, offset: number, step: number): number {
  let sum = offset === 0 ? f(0) : 0;
  for (const direction of [-step, step]) {
    for (let k = offset === 0 ? 1 : offset; k * step < 9; k += 1) {
      const term = f(k * direction);
      sum += term;
      if (term < 1e-17 * sum) break;
    }
  }
  return sum;
}
