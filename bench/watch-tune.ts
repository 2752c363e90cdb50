// Makes packages/core/src/watch/tables/forecast.json from simulated pulls: node bench/watch-tune.ts (about two minutes)
import { writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { startWatch, step } from '@provinghouse/core';
import { FEATURES, forecastFeatures } from '../packages/core/src/watch/forecast-features.ts';
import { type KnownPull, plainOptions, variedPull } from './watch-pulls.ts';
import { shapePull } from './watch-shapes.ts';
import { growTree, type Moment } from './watch-tree.ts';

/** Seeds of the tuning; the back-test uses others. */
const PRACTICE = { from: 100_001, count: 1200 };
const SHAPES = { from: 200_001, count: 1200 };
const EVERY_BLOCKS = 5;

/** Moments of one pull up to its maximum. */
function momentsOf(pull: KnownPull, number: number): Moment[] {
  const state = startWatch(plainOptions);
  const { memory } = state;
  const seen: Omit<Moment, 'weight'>[] = [];
  let looked = 0;
  for (const sample of pull.samples) {
    if (sample.time_s > pull.timeOfMaximum_s) break;
    step(state, sample);
    if (memory.blocks.closed < looked + EVERY_BLOCKS) continue;
    looked = memory.blocks.closed;
    const features = memory.stage === 'plastic' || memory.stage === 'near maximum' ? forecastFeatures(memory) : null;
    if (!features) continue;
    const rise = Math.log((pull.maximum_kN - memory.zero_kN) / (memory.envelope_kN - memory.zero_kN));
    seen.push({ pull: number, features, rise: Math.max(0, rise) });
  }
  return seen.map((moment) => ({ ...moment, weight: 1 / seen.length }));
}

function momentsOfAll({ from, count }: typeof PRACTICE, draw: (seed: number) => KnownPull): Moment[][] {
  return Array.from({ length: count }, (_, i) => momentsOf(draw(from + i), from + i));
}

const pulls = [...momentsOfAll(PRACTICE, (seed) => variedPull(seed)), ...momentsOfAll(SHAPES, shapePull)];
const grow = pulls.filter((_, i) => i % 2 === 0).flat();
const measure = pulls.filter((_, i) => i % 2 === 1).flat();
const table = {
  about:
    'Tuned on simulated pulls only (practice rig, and invented shapes); made by bench/watch-tune.ts, explained in docs/reference/live-watch.md.',
  seeds: { practice: PRACTICE, shapes: SHAPES },
  moments: grow.length + measure.length,
  features: FEATURES,
  nodes: growTree(grow, measure, FEATURES.length),
};
const file = join(import.meta.dirname, '../packages/core/src/watch/tables/forecast.json');
writeFileSync(file, `${JSON.stringify(table, null, 1)}\n`);
const leaves = table.nodes.filter((node) => node.rise !== undefined);
console.log(
  `${table.moments} moments, ${leaves.length} rows, ${leaves.filter((each) => each.rise === null).length} withheld`,
);
