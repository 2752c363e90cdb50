import { readFileSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { startWatch, step, type WatchState } from '@provinghouse/core';
import type { ForecastAxis } from '../packages/core/src/watch/forecast-tables.ts';
import { withoutTable } from './watch-others.ts';
import { type KnownPull, plainOptions, variedPull } from './watch-pulls.ts';
import { shapePull } from './watch-shapes.ts';

/** Seeds that grow the models, and others that fill the table of distances. The back-test uses neither. */
export const GROWN = { practice: { from: 100_001, count: 3000 }, shapes: { from: 200_001, count: 3000 } };
export const MEASURED = { practice: { from: 110_001, count: 3000 }, shapes: { from: 210_001, count: 3000 } };

const EVERY_BLOCKS = 5;

/** Moments of one pull up to its maximum: what `look` sees then, and the rise that is left. */
function momentsOf<Seen>(
  pull: KnownPull,
  number: number,
  look: (state: WatchState) => Seen | null,
): { readonly pull: number; readonly weight: number; readonly seen: Seen; readonly rise: number }[] {
  const state = startWatch(plainOptions);
  const { memory } = state;
  const moments: { readonly pull: number; readonly seen: Seen; readonly rise: number }[] = [];
  let looked = 0;
  for (const sample of pull.samples) {
    if (sample.time_s > pull.timeOfMaximum_s) break;
    step(state, sample);
    if (memory.blocks.closed < looked + EVERY_BLOCKS) continue;
    looked = memory.blocks.closed;
    const isClimbing = (memory.stage === 'plastic' || memory.stage === 'near maximum') && !memory.loss;
    const seen = isClimbing ? look(state) : null;
    if (seen === null) continue;
    const rise = Math.log((pull.maximum_kN - memory.zero_kN) / (memory.envelope_kN - memory.zero_kN));
    moments.push({ pull: number, seen, rise: Math.max(0, rise) });
  }
  return moments.map((moment) => ({ ...moment, weight: 1 / moments.length }));
}

/** Moments of the practice pulls and the invented shapes of these seeds, read with the table or by time alone. */
export function momentsOfAll<Seen>({ practice, shapes }: typeof GROWN, look: (state: WatchState) => Seen | null) {
  const read = (pull: KnownPull) => (axis === 'time' ? withoutTable(pull) : pull);
  const all = ({ from, count }: { from: number; count: number }, draw: (seed: number) => KnownPull) =>
    Array.from({ length: count }, (_, i) => momentsOf(read(draw(from + i)), from + i, look)).flat();
  return [...all(practice, (seed) => variedPull(seed)), ...all(shapes, shapePull)];
}

/** Which of the two tables is made: `node bench/watch-tune.ts time` for pulls without a table. */
export const axis: ForecastAxis = process.argv[2] === 'time' ? 'time' : 'table';
const file = join(import.meta.dirname, `../packages/core/src/watch/tables/forecast-by-${axis}.json`);

/** Puts new parts into the table of the forecast, the others as they were. */
export function changeTable(parts: object): void {
  const table = { ...JSON.parse(readFileSync(file, 'utf8')), ...parts };
  const text = `${JSON.stringify(table)}\n`;
  writeFileSync(file, text);
  console.log(`${text.length} bytes`);
}
