import { readFileSync, writeFileSync } from 'node:fs';
import { availableParallelism, loadavg } from 'node:os';
import { join } from 'node:path';
import { startWatch, step, viewOf, type WatchOptions, type WatchSample } from '@provinghouse/core';
import { openTraces, powerLawPull, slowlyReadPull, withoutTable } from './watch-others.ts';
import { type KnownPull, plainOptions, variedPull } from './watch-pulls.ts';
import { replay } from './watch-replay.ts';
import { shapePull } from './watch-shapes.ts';
import { coverageTable, forecastTable, type Group, stageTable, warningTable } from './watch-table.ts';

// None of these seeds was looked at when the watch was made and tuned.
const PRACTICE = { from: 5001, count: 500 };
const SHAPES = { from: 405_001, count: 200 };
const POWER_LAWS = { from: 1001, count: 100 };
const FAST = { from: 6001, count: 8 };
const VERY_FAST = { from: 6101, count: 3 };
const BRISK = { from: 7001, count: 200 };

/** As for a piece of 8 mm grade 30; a rig at a bench always knows what it pulls. */
const briskLines = [
  { name: 'proof force', force_kN: 20.1 },
  { name: 'minimum breaking force', force_kN: 40.2 },
];

function group(
  name: string,
  { from, count }: typeof PRACTICE,
  draw: (seed: number) => KnownPull,
  options?: WatchOptions,
): Group {
  return { name, replays: Array.from({ length: count }, (_, i) => replay(draw(from + i), options)) };
}

function groups(): Group[] {
  return [
    group('practice, 10 to 100 Hz', PRACTICE, (seed) => variedPull(seed)),
    group('practice, 1 kHz', FAST, (seed) => variedPull(seed, 1000)),
    group('practice, 10 kHz', VERY_FAST, (seed) => variedPull(seed, 10_000)),
    group('practice, no table', PRACTICE, (seed) => withoutTable(variedPull(seed))),
    group('brisk, read 3 to 10 times a second', BRISK, slowlyReadPull, { ...plainOptions, ruleLines: briskLines }),
    group('invented shapes', SHAPES, shapePull),
    { name: 'open traces', replays: openTraces().map((pull) => replay(pull)) },
    group('power laws cut off', POWER_LAWS, powerLawPull),
  ];
}

/** Nanoseconds a sample of a 10 kHz pull, of one step and of a step with its share of 20 views a second: the median of seven runs. */
function nanoseconds(samples: readonly WatchSample[], viewEvery: number): number {
  const runs = Array.from({ length: 7 }, () => {
    const state = startWatch(plainOptions);
    const from = process.hrtime.bigint();
    samples.forEach((sample, i) => {
      step(state, sample);
      if (i % viewEvery === 0) viewOf(state);
    });
    return Number(process.hrtime.bigint() - from) / samples.length;
  });
  return runs.sort((a, b) => a - b)[3] ?? Number.NaN;
}

function speedLine(): string {
  const { samples } = variedPull(VERY_FAST.from, 10_000);
  const alone = nanoseconds(samples, Number.POSITIVE_INFINITY);
  const viewed = nanoseconds(samples, 500);
  const share = ((viewed * 10_000) / 1e7).toFixed(2);
  const busy = `${availableParallelism()} cores, load ${(loadavg()[0] ?? 0).toFixed(1)}`;
  return `${alone.toFixed(0)} ns a sample at 10 kHz (${samples.length} samples), ${viewed.toFixed(0)} ns with 20 views a second: ${share} % of a core; ${busy}, Node ${process.versions.node}.`;
}

/** Back-tests the watch, prints the tables and writes them into docs/reference/live-watch.md between its marks. */
export function benchWatch(): void {
  const all = groups();
  const practice = all[0];
  const blind = all.find(({ name }) => name === 'practice, no table');
  const tables = [
    '### Stages and ends',
    stageTable(all),
    '### Forecast',
    practice ? forecastTable(practice) : '',
    blind ? forecastTable(blind) : '',
    coverageTable(all),
    '### Warning near the maximum, practice pulls',
    practice ? warningTable(practice) : '',
    '### Speed',
    speedLine(),
  ].join('\n\n');
  console.log(tables);
  const page = join(import.meta.dirname, '../docs/reference/live-watch.md');
  const [before = '', rest = ''] = readFileSync(page, 'utf8').split('<!-- back-test -->\n');
  const after = rest.split('<!-- end -->')[1] ?? '';
  writeFileSync(page, `${before}<!-- back-test -->\n\n${tables}\n\n<!-- end -->${after}`);
}

if (import.meta.main) benchWatch();
