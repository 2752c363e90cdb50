import { chiSquaredQuantile } from '../distribution/index.ts';
import { logExposure, type ModeRecord } from './mode-record.ts';
import { type Interval, logLikelihood, type WeibullFit } from './weibull-fit.ts';

export const profileMethod =
  'profile likelihood: all values whose likelihood, the other parameter at its best, lies within half a chi-squared quantile (1 degree) of the greatest (Meeker and Escobar, Statistical Methods for Reliability Data, chapter 8; from memory)';

/** Two-sided profile-likelihood interval of the shape. */
export function shapeProfileInterval(record: ModeRecord, fit: WeibullFit, confidence: number): Interval {
  const drop = chiSquaredQuantile(confidence, 1) / 2;
  const best = shapeProfile(record, fit.shape);
  const away = (logShape: number) => best - shapeProfile(record, Math.exp(logShape)) - drop;
  const middle = Math.log(fit.shape);
  const low = crossing(away, middle, -1);
  const high = crossing(away, middle, 1);
  return { low: low === null ? 0 : Math.exp(low), high: high === null ? null : Math.exp(high) };
}

/** Two-sided profile-likelihood interval of the per-link scale, in kN. */
export function scaleProfileInterval(record: ModeRecord, fit: WeibullFit, confidence: number): Interval {
  return quantileProfileInterval(record, fit, { links: 1, survival: Math.exp(-1), confidence });
}

export interface ChainQuantile {
  readonly links: number;
  /** Share of chains that hold more than the force asked for. */
  readonly survival: number;
  readonly confidence: number;
}

/** Two-sided profile-likelihood interval of the force that a share `survival` of chains of `links` links holds, this mode alone, in kN. */
export function quantileProfileInterval(record: ModeRecord, fit: WeibullFit, asked: ChainQuantile): Interval {
  const drop = chiSquaredQuantile(asked.confidence, 1) / 2;
  // ln of the cumulative hazard of one link at the force asked for.
  const logHazard = Math.log(-Math.log(asked.survival) / asked.links);
  const estimate = Math.log(fit.scale_kN) - record.logReference + logHazard / fit.shape;
  const away = (logForce: number) => fit.logLikelihood - quantileProfile(record, logForce, logHazard, fit.shape) - drop;
  const low = crossing(away, estimate, -1, 1 / fit.shape);
  const high = crossing(away, estimate, 1, 1 / fit.shape);
  const force = (logForce: number) => Math.exp(record.logReference + logForce);
  return { low: low === null ? 0 : force(low), high: high === null ? null : force(high) };
}

/** Log likelihood at the best scale for `shape`, without its constant. */
function shapeProfile(record: ModeRecord, shape: number): number {
  const r = record.breakCount;
  return r * Math.log(shape) + shape * r * record.meanLogBreak - r * logExposure(record, shape);
}

/** Greatest log likelihood of the laws whose per-link hazard at `logForce` is exp(logHazard). Over the shape it has one summit. */
function quantileProfile(record: ModeRecord, logForce: number, logHazard: number, start: number): number {
  const at = (logShape: number) => {
    const shape = Math.exp(logShape);
    return logLikelihood(record, shape, logForce - logHazard / shape);
  };
  return summit(at, Math.log(start));
}

/** Height of the one summit of `height`: the summit is fenced in, then found by golden section. */
function summit(height: (x: number) => number, start: number): number {
  let step = 0.1;
  let a = start - step;
  let b = start;
  let c = start + step;
  for (let k = 0; k < 80 && height(a) >= height(b); k++) {
    step *= 1.6;
    [c, b, a] = [b, a, a - step];
  }
  step = 0.1;
  for (let k = 0; k < 80 && height(c) > height(b); k++) {
    step *= 1.6;
    [a, b, c] = [b, c, c + step];
  }
  const golden = (Math.sqrt(5) - 1) / 2;
  let left = c - golden * (c - a);
  let right = a + golden * (c - a);
  let atLeft = height(left);
  let atRight = height(right);
  while (c - a > 1e-8) {
    if (atLeft > atRight) {
      [c, right, atRight] = [right, left, atLeft];
      left = c - golden * (c - a);
      atLeft = height(left);
    } else {
      [a, left, atLeft] = [left, right, atRight];
      right = a + golden * (c - a);
      atRight = height(right);
    }
  }
  return Math.max(atLeft, atRight, height(b));
}

/** Where `away`, negative at `from`, first reaches zero in `direction`; null when it stays below within any sense. */
function crossing(away: (x: number) => number, from: number, direction: 1 | -1, firstStep = 0.1): number | null {
  let inside = from;
  let step = firstStep;
  let outside = from + direction * step;
  for (let k = 0; away(outside) < 0; k++) {
    if (k === 40) return null;
    inside = outside;
    step *= 1.6;
    outside += direction * step;
    if (Math.abs(outside - from) > 30) return null;
  }
  for (let k = 0; k < 60 && Math.abs(outside - inside) > 1e-12; k++) {
    const middle = (inside + outside) / 2;
    if (away(middle) < 0) inside = middle;
    else outside = middle;
  }
  return (inside + outside) / 2;
}
