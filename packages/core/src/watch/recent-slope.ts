import { type Blocks, blockBack } from './block.ts';

/** Slopes over the last stretch of blocks, by least squares; null where they cannot be told. */
export interface RecentSlopes {
  readonly force_kN_per_s: number | null;
  readonly table_mm_per_s: number | null;
  /** Force against the size of the travel of the table. */
  readonly force_kN_per_mm: number | null;
}

const FEWEST = 4;
/** A source of a reading a second still has slopes, over longer; beyond this many times the stretch asked for, no more. */
const LONGEST = 6;

/** Slopes over the blocks of the last `stretch_s` seconds, and at least four blocks. */
export function recentSlopes(blocks: Blocks, stretch_s: number): RecentSlopes {
  const last = blockBack(blocks, 0);
  let n = 0;
  let t = 0;
  let f = 0;
  let x = 0;
  let tt = 0;
  let tf = 0;
  let tx = 0;
  let xx = 0;
  let xf = 0;
  for (let back = 0; last; back++) {
    const block = blockBack(blocks, back);
    if (!block) break;
    const dt = block.time_s - last.time_s;
    if (-dt > LONGEST * stretch_s || (-dt > stretch_s && n >= FEWEST)) break;
    // Differences from the last block keep the digits where travel and force are large.
    const df = block.force_kN - last.force_kN;
    const dx = block.table_mm - last.table_mm;
    n++;
    t += dt;
    f += df;
    x += dx;
    tt += dt * dt;
    tf += dt * df;
    tx += dt * dx;
    xx += dx * dx;
    xf += dx * df;
  }
  if (n < FEWEST) return { force_kN_per_s: null, table_mm_per_s: null, force_kN_per_mm: null };
  const vt = tt - (t * t) / n;
  const vx = xx - (x * x) / n;
  const speed = vt > 0 ? (tx - (t * x) / n) / vt : Number.NaN;
  const perTravel = vx > 0 ? (xf - (x * f) / n) / vx : Number.NaN;
  return {
    force_kN_per_s: vt > 0 ? (tf - (t * f) / n) / vt : null,
    table_mm_per_s: Number.isNaN(speed) ? null : speed,
    force_kN_per_mm: Number.isNaN(perTravel) ? null : perTravel * Math.sign(speed || 1),
  };
}
