/** A stretch at the very top that is the rig's and not the piece's. */
export interface Plateau {
  readonly from: number;
  readonly count: number;
}

export interface PlateauInput {
  readonly force_kN: Float64Array;
  readonly from: number;
  readonly to: number;
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

/** Longest run of readings at or above `level`, and how many lie there in all. */
function longestRun(input: PlateauInput, level: number): Run {
  let best: Run = { from: input.from, count: 0 };
  let start = input.from;
  for (let i = input.from; i <= input.to + 1; i++) {
    if (i <= input.to && (input.force_kN[i] as number) >= level) continue;
    if (i - start > best.count) best = { from: start, count: i - start };
    start = i + 1;
  }
  return best;
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
  let top = Number.NEGATIVE_INFINITY;
  for (let i = from; i <= to; i++) top = Math.max(top, force[i] as number);
  const step = input.resolution_kN ?? 0;
  if (rangeMaximum_kN !== undefined && top >= rangeMaximum_kN - 2 * Math.min(step, rangeMaximum_kN / 1000)) {
    return longestRun(input, rangeMaximum_kN - 2 * Math.min(step, rangeMaximum_kN / 1000));
  }
  const run = longestRun(input, top);
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
