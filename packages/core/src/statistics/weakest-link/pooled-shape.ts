import { logExposure, type ModeRecord } from './mode-record.ts';
import type { ShapePrior } from './shape-prior.ts';
import { shapeRoot } from './shape-root.ts';
import { logLikelihood, startingShape } from './weibull-fit.ts';

/** One shape for several products, a scale for each. */
export interface PooledShape {
  /** null when no product has a break, or no break scatters. */
  readonly shape: number | null;
  readonly shapeStandardError: number | null;
  /** Per product in the order given; null where nothing broke. */
  readonly scales_kN: readonly (number | null)[];
  readonly logLikelihood: number | null;
  readonly breaks: number;
  readonly reason: string | null;
  readonly converged: boolean;
  readonly method: string;
}

const method =
  'maximum likelihood of one Weibull shape with a scale for each product, scales eliminated; standard error from the observed information of the profile';

/** Fits one shape to the records of the same mode of several products. */
export function fitPooledShape(records: readonly ModeRecord[]): PooledShape {
  const broken = records.filter((record) => record.breakCount > 0);
  const breaks = broken.reduce((sum, record) => sum + record.breakCount, 0);
  const nothing = { shape: null, shapeStandardError: null, logLikelihood: null, breaks, converged: false, method };
  const first = broken[0];
  if (!first) return { ...nothing, scales_kN: records.map(() => null), reason: 'nothing broke in this mode' };
  const root = shapeRoot(broken, startingShape(first));
  if (!Number.isFinite(root.shape)) {
    return {
      ...nothing,
      scales_kN: records.map(() => null),
      reason: 'every break lies at the greatest force of its product: no shape',
    };
  }
  const { shape } = root;
  const logScales = records.map((record) =>
    record.breakCount > 0 ? (logExposure(record, shape) - Math.log(record.breakCount)) / shape : null,
  );
  return {
    shape,
    shapeStandardError: 1 / Math.sqrt(profileInformation(broken, shape)),
    scales_kN: records.map((record, k) => {
      const logScale = logScales[k];
      return logScale === null || logScale === undefined ? null : Math.exp(record.logReference + logScale);
    }),
    logLikelihood: records.reduce((sum, record, k) => {
      const logScale = logScales[k];
      return logScale === null || logScale === undefined ? sum : sum + logLikelihood(record, shape, logScale);
    }, 0),
    breaks,
    reason: null,
    converged: root.converged,
    method,
  };
}

/** Second derivative of the profile in the shape, its sign turned. */
function profileInformation(records: readonly ModeRecord[], shape: number): number {
  let information = 0;
  for (const { logForce, links, count, breakCount } of records) {
    let s0 = 0;
    let s1 = 0;
    let s2 = 0;
    for (let i = 0; i < count; i++) {
      const y = logForce[i] ?? 0;
      const weight = (links[i] ?? 0) * Math.exp(shape * y);
      s0 += weight;
      s1 += weight * y;
      s2 += weight * y * y;
    }
    information += breakCount * (1 / shape ** 2 + s2 / s0 - (s1 / s0) ** 2);
  }
  return information;
}

/**
 * A prior for one more product out of a pooled shape: its median, and a spread that holds the error of the pooled shape and what products
 * may differ by, `betweenProducts` being the standard deviation of ln(shape) from product to product (assumed 0.2 unless told). Use it for a
 * product that is not in the pool: no piece may be counted twice. null without a pooled shape.
 */
export function priorFromPooledShape(pooled: PooledShape, betweenProducts = 0.2): ShapePrior | null {
  if (pooled.shape === null || pooled.shapeStandardError === null) return null;
  return {
    medianShape: pooled.shape,
    logSd: Math.hypot(pooled.shapeStandardError / pooled.shape, betweenProducts),
    source: `from ${pooled.breaks} breaks of other products with one shape and a scale each; products are taken to differ by ${betweenProducts} in ln(shape)`,
  };
}
