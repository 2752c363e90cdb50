import { logForceAt, type ModeShare } from './chain-law.ts';
import { latticePoints } from './lattice.ts';
import type { ModePosterior } from './posterior.ts';

/** ln(force / reference) at which one link's cumulative hazard is exp(target), for each of the equally likely laws, in their order. */
export function drawnLogForces(modes: readonly ModePosterior[], target: number): Float64Array {
  const shapes = new Float64Array(modes.length);
  const logRates = new Float64Array(modes.length);
  const forces = new Float64Array(latticePoints);
  for (let k = 0; k < latticePoints; k++) {
    takeLaw(modes, k, shapes, logRates);
    forces[k] = logForceAt(shapes, logRates, target);
  }
  return forces;
}

function takeLaw(modes: readonly ModePosterior[], k: number, shapes: Float64Array, logRates: Float64Array): void {
  for (let m = 0; m < modes.length; m++) {
    shapes[m] = modes[m]?.shapes[k] ?? 1;
    logRates[m] = modes[m]?.logRates[k] ?? 0;
  }
}

/** Probability that each of the laws lets a piece of `links` links hold ln(force / reference). */
export function drawnSurvivals(modes: readonly ModePosterior[], links: number, logForce: number): Float64Array {
  const survivals = new Float64Array(latticePoints);
  for (let k = 0; k < latticePoints; k++) {
    let hazard = 0;
    for (const mode of modes) hazard += Math.exp((mode.logRates[k] ?? 0) + (mode.shapes[k] ?? 0) * logForce);
    survivals[k] = Math.exp(-links * hazard);
  }
  return survivals;
}

/** How breaks at the drawn forces divide among the modes, averaged over the laws; the likeliest first. */
export function drawnShares(modes: readonly ModePosterior[], logForces: Float64Array): ModeShare[] {
  const sums = modes.map(() => 0);
  for (let k = 0; k < latticePoints; k++) {
    const x = logForces[k] ?? 0;
    // The chance of a mode at a force goes as its hazard rate: shape x hazard / force.
    const logs = modes.map(({ shapes, logRates }) => {
      const shape = shapes[k] ?? 1;
      return Math.log(shape) + (logRates[k] ?? 0) + shape * x;
    });
    const top = Math.max(...logs);
    const parts = logs.map((log) => Math.exp(log - top));
    const total = parts.reduce((sum, part) => sum + part, 0);
    for (let m = 0; m < sums.length; m++) sums[m] = (sums[m] ?? 0) + (parts[m] ?? 0) / total / latticePoints;
  }
  return modes
    .map(({ mode }, m) => ({ mode, share: sums[m] ?? 0 }))
    .sort((a, b) => b.share - a.share || a.mode.localeCompare(b.mode, 'en'));
}
