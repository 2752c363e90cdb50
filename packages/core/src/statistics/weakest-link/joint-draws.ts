import { logForceAt, type ModeShare } from './chain-law.ts';
import { latticePoints } from './lattice.ts';
import type { ModePosterior } from './posterior.ts';

/** ln(force / reference) at which one link's cumulative hazard is exp(target), for each of the equally likely laws, in their order. */
export function drawnLogForces(modes: readonly ModePosterior[], target: number): Float64Array {
  const forces = leastAlone(modes, target);
  if (modes.length < 2) return forces;
  const [first, second, third] = modes;
  if (first && second && !third) return solvePairs(forces, first, second, target);
  return solveMany(forces, modes, target);
}

/** The least of the forces that the modes would give one by one: the exact answer for one mode, and just above it for several. */
function leastAlone(modes: readonly ModePosterior[], target: number): Float64Array {
  const forces = new Float64Array(latticePoints).fill(Number.POSITIVE_INFINITY);
  for (const { shapes, logRates } of modes) {
    for (let k = 0; k < latticePoints; k++) {
      const alone = (target - (logRates[k] ?? 0)) / (shapes[k] ?? 1);
      if (alone < (forces[k] ?? 0)) forces[k] = alone;
    }
  }
  return forces;
}

/** Two modes are the usual case: Newton's steps on ln(hazard) without an array inside the loop. */
function solvePairs(forces: Float64Array, one: ModePosterior, other: ModePosterior, target: number): Float64Array {
  for (let k = 0; k < latticePoints; k++) {
    let x = forces[k] ?? 0;
    let a = one.shapes[k] ?? 1;
    let b = other.shapes[k] ?? 1;
    let la = one.logRates[k] ?? 0;
    let lb = other.logRates[k] ?? 0;
    // The greater hazard in front, so that the ratio of the two does not overflow.
    if (lb + b * x > la + a * x) [a, b, la, lb] = [b, a, lb, la];
    for (let step = 0; step < 30; step++) {
      const first = la + a * x;
      const ratio = Math.exp(lb + b * x - first);
      const move = ((first + Math.log1p(ratio) - target) * (1 + ratio)) / (a + b * ratio);
      x -= move;
      if (Math.abs(move) < 1e-9) break;
    }
    forces[k] = x;
  }
  return forces;
}

function solveMany(forces: Float64Array, modes: readonly ModePosterior[], target: number): Float64Array {
  const shapes = new Float64Array(modes.length);
  const logRates = new Float64Array(modes.length);
  for (let k = 0; k < latticePoints; k++) {
    for (let m = 0; m < modes.length; m++) {
      shapes[m] = modes[m]?.shapes[k] ?? 1;
      logRates[m] = modes[m]?.logRates[k] ?? 0;
    }
    forces[k] = logForceAt(shapes, logRates, target, forces[k]);
  }
  return forces;
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
  const totals = new Float64Array(latticePoints);
  const rates = modes.map((mode) => relativeRates(mode, logForces));
  // Against the first mode's rate the others are at most some e^700 greater, which a sum still holds.
  const first = rates[0] ?? totals;
  const parts = rates.map((rate) => rate.map((value, k) => Math.exp(Math.min(700, value - (first[k] ?? 0)))));
  for (const part of parts) for (let k = 0; k < latticePoints; k++) totals[k] = (totals[k] ?? 0) + (part[k] ?? 0);
  return modes
    .map(({ mode }, m) => {
      let sum = 0;
      for (let k = 0; k < latticePoints; k++) sum += (parts[m]?.[k] ?? 0) / (totals[k] ?? 1);
      return { mode, share: sum / latticePoints };
    })
    .sort((a, b) => b.share - a.share || a.mode.localeCompare(b.mode, 'en'));
}

/** ln of the hazard rate times force: the chance of a mode at a force goes as shape x hazard / force. */
function relativeRates({ shapes, logRates }: ModePosterior, logForces: Float64Array): Float64Array {
  return logForces.map((x, k) => {
    const shape = shapes[k] ?? 1;
    return Math.log(shape) + (logRates[k] ?? 0) + shape * x;
  });
}
