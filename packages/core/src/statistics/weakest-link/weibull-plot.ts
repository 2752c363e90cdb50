import { sortedQuantile } from './bootstrap.ts';
import type { BreakMode } from './break-mode.ts';
import { anyMode } from './break-mode.ts';
import { drawnLogForces } from './joint-draws.ts';
import type { PulledPiece } from './piece.ts';
import { type PlottedBreak, plottingPositions } from './plotting-position.ts';

/** A point of the fitted line: the force at which one link's cumulative hazard has a value, with its 90 % band. */
export interface PlottedLine {
  readonly hazardOfOneLink: number;
  readonly force_kN: number;
  readonly low_kN: number;
  readonly high_kN: number;
}

/** One mode on the Weibull plot: by one link, so that pieces of any number of links share it. */
export interface WeibullPlot {
  readonly mode: string;
  readonly breaks: readonly PlottedBreak[];
  readonly line: readonly PlottedLine[];
  readonly method: string;
}

const POINTS = 25;

/** Points and line of one mode, the line from a hazard of 2 down to that of 1 % of chains of `longest` links. */
export function weibullPlot(pieces: readonly PulledPiece[], mode: BreakMode, longest: number): WeibullPlot {
  const { finding, posterior, record } = mode;
  const { breaks, method } = plottingPositions(pieces, finding.mode === anyMode ? null : finding.mode);
  const high = Math.log(2);
  const low = Math.log(0.01 / longest);
  const line = Array.from({ length: POINTS }, (_, k) => {
    const target = low + ((high - low) * k) / (POINTS - 1);
    const forces = drawnLogForces([posterior], target).sort();
    const at = (probability: number) => Math.exp(record.logReference + sortedQuantile(forces, probability));
    return { hazardOfOneLink: Math.exp(target), force_kN: at(0.5), low_kN: at(0.05), high_kN: at(0.95) };
  });
  return { mode: finding.mode, breaks, line, method };
}
