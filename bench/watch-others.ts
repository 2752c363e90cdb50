import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { parseTrace, type TraceSignals, type WatchSample } from '@provinghouse/core';
import { practicePull } from '@provinghouse/rig/practice';
import {
  noisy,
  type PullPlan,
  seededRandom,
  simulatePull,
  stepped,
} from '../packages/core/test/trace/pull-simulator.ts';
import { type KnownPull, knownPull } from './watch-pulls.ts';

const folder = join(import.meta.dirname, '../packages/core/test/reference/open-traces');

/** The samples of a parsed record, in the order in which they came. */
export function samplesOf(signals: TraceSignals): WatchSample[] {
  const read = (values: Float64Array | null, i: number): number | null => {
    const value = values?.[i];
    return value === undefined || Number.isNaN(value) ? null : value;
  };
  return Array.from(signals.force_kN, (force_kN, i) => ({
    time_s: signals.time_s?.[i] ?? 0,
    force_kN,
    table_mm: read(signals.table_mm, i),
    extension_mm: read(signals.extension_mm, i),
  }));
}

/** The 24 open tensile records of round steel bars: real machine, real noise, no parting (the records end while the bars neck). */
export function openTraces(): KnownPull[] {
  const [, ...lines] = readFileSync(join(folder, 'published-results.csv'), 'utf8').trim().split(/\r?\n/);
  return lines.map((line) => {
    const name = line.split(',')[0] ?? '';
    const samples = samplesOf(parseTrace(readFileSync(join(folder, name))));
    const top = samples.reduce((best, sample) => (sample.force_kN > best.force_kN ? sample : best));
    return {
      name,
      rate_Hz: 5,
      samples,
      maximum_kN: top.force_kN,
      timeOfMaximum_s: top.time_s,
      timeOfParting_s: null,
    };
  });
}

/**
 * Pulls of another shape than the practice rig's: Ramberg and Osgood's curve, which never flattens, cut off at a travel drawn at random, with or without
 * softening before. The forecast was not tuned on them.
 */
export function powerLawPull(seed: number): KnownPull {
  const random = seededRandom(seed);
  const between = (low: number, high: number): number => low + (high - low) * random();
  const parting_mm = between(10, 40);
  const plan: PullPlan = {
    rate_Hz: 50,
    speed_mm_per_s: between(0.3, 0.8),
    slack_mm: between(2, 8),
    stiffness_kN_per_mm: between(3, 9),
    yield_kN: between(12, 30),
    parting_mm,
    after_s: 2,
    ...(random() < 0.5 ? { softening_mm: parting_mm * between(0.8, 0.97) } : {}),
    dips: random() < 0.5 ? [{ at_mm: between(2, 9), drop_kN: between(0.5, 3) }] : [],
  };
  const pull = simulatePull(plan);
  const force = pull.signals.force_kN;
  const signals = stepped(noisy(pull.signals, between(0.0001, 0.001), seed), 0.01);
  return {
    name: `power law ${seed}`,
    rate_Hz: 50,
    samples: samplesOf(signals),
    maximum_kN: pull.maximum_kN,
    timeOfMaximum_s: force.indexOf(pull.maximum_kN) / 50,
    timeOfParting_s: pull.parting_s,
  };
}

/** The same pull from a rig that does not read its table. */
export function withoutTable(pull: KnownPull): KnownPull {
  return { ...pull, samples: pull.samples.map((sample) => ({ ...sample, table_mm: null })) };
}

/** A single link pulled briskly, its elastic part over in a second or two. */
function briskPull(seed: number): KnownPull {
  const brisk = {
    chain: { links: 1 },
    valve: { approach_mm_per_min: 150, takeUp_mm_per_min: 14, main_mm_per_min: 28, idle_s: 0.5 },
  };
  return knownPull(`brisk ${seed}`, 100, practicePull({ ...brisk, seed, rate_Hz: 100 }));
}

/** A brisk pull from a source that is read three to ten times a second, at uneven times. */
export function slowlyReadPull(seed: number): KnownPull {
  const pull = briskPull(seed);
  const random = seededRandom(seed);
  const every_s = 0.1 + 0.2 * random();
  let next_s = 0;
  const samples = pull.samples.filter(({ time_s }) => {
    if (time_s < next_s) return false;
    next_s = time_s + every_s * (0.5 + random());
    return true;
  });
  return { ...pull, rate_Hz: 1 / every_s, samples };
}
