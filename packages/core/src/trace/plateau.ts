/** A stretch at the very top that is the rig's and not the piece's. */
export interface Plateau {
  readonly from: number;
  readonly count: number;
}

export interface PlateauInput {
  readonly force_kN: Float64Array;
  readonly from: number;
  readonly to: number;
  /** First sample of the largest force on [from, to]. */
  readonly top: number;
  readonly resolution_kN: number | null;
  /** Range maximum of the rig less the zero offset taken off the forces. */
  readonly rangeMaximum_kN: number | undefined;
  readonly rate_Hz: number | null;
  /** Travel of the table: a force that stands still because the machine does is a hold, not a limit. */
  readonly table_mm: Float64Array | null;
}

interface Run {
  readonly from: number;
  readonly count: number;
}

/** Longest run of readings at or above `level` on [from, to]. */
function longestRun(force: Float64Array, level: number, { from, to }: { from: number; to: number }): Run {
  let longest = 0;
  let at = from;
  let start = from;
  for (let i = from; i <= to + 1; i++) {
    if (i <= to && (force[i] as number) >= level) continue;
    if (i - start > longest) {
      longest = i - start;
      at = start;
    }
    start = i + 1;
  }
  return { from: at, count: longest };
}

/** Median length of runs of one value just before the plateau: long when the logger repeats slow readings. */
function usualRun(force: Float64Array, before: number, from: number): number {
  let runs = 1;
  const start = Math.max(from + 1, before - 2000);
  for (let i = start; i < before; i++) if (force[i] !== force[i - 1]) runs++;
  return Math.max(1, (before - start) / runs);
}

/** Whether the table went on, at a tenth of its mean speed or more, while the force stood still; taken as true without a table. */
function tableWentOn(input: PlateauInput, run: Run): boolean {
  const { table_mm: table, from, to } = input;
  if (!table || run.count < 2) return true;
  const moved = Math.abs((table[run.from + run.count - 1] as number) - (table[run.from] as number));
  const whole = Math.abs((table[to] as number) - (table[from] as number));
  return !(moved < (0.1 * whole * (run.count - 1)) / Math.max(1, to - from));
}

/**
 * Clipping: readings that stand at exactly the largest value, or at the stated range maximum, as no piece does. Either the force reaches the range maximum of the
 * rig (within two steps of resolution); or at least 8 readings (0.1 s) in one run equal the largest, five times the usual run of equal readings and
 * eight times the stay at the level one step below. Null when the top is the piece's own. Common practice.
 */
export function findPlateau(input: PlateauInput): Plateau | null {
  const { force_kN: force, from, to, rangeMaximum_kN } = input;
  const top = force[input.top] as number;
  const step = input.resolution_kN ?? 0;
  if (rangeMaximum_kN !== undefined && top >= rangeMaximum_kN - 2 * Math.min(step, rangeMaximum_kN / 1000)) {
    return longestRun(force, rangeMaximum_kN - 2 * Math.min(step, rangeMaximum_kN / 1000), { from, to });
  }
  const run = longestRun(force, top, { from: input.top, to });
  const least = Math.max(8, Math.round(0.1 * (input.rate_Hz ?? 80)));
  if (run.count < least || run.count < 5 * usualRun(force, run.from, from)) return null;
  let nextLower = Number.NEGATIVE_INFINITY;
  for (let i = from; i <= to; i++) {
    const value = force[i] as number;
    if (value < top && value > nextLower) nextLower = value;
  }
  let beside = 0;
  for (let i = from; i <= to; i++) if (force[i] === nextLower) beside++;
  return run.count >= 8 * beside && tableWentOn(input, run) ? run : null;
}
