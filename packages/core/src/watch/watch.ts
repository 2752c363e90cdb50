import { InputError } from '../errors.ts';
import { addToBlock, BLOCK_S, closeBlock } from './block.ts';
import { followBlock } from './block-step.ts';
import { end, goOn } from './ending.ts';
import { believe, hasStayed, isJump, isSpike, rejectHeld } from './jump-hold.ts';
import { loadLevel_kN } from './load-level.ts';
import { startMemory, type WatchMemory } from './memory.ts';
import { noiseOf, observeNoise } from './noise-track.ts';
import { checkOptions } from './options-check.ts';
import { followLoss, hasComeBack } from './parting-watch.ts';
import { noteGap, noteJump, noteLimits, noteStuck } from './sample-doubts.ts';
import type { WatchOptions, WatchSample, WatchState } from './state.ts';

/**
 * Starts watching a pull. The state belongs to `step`, `tick` and `operatorStop`, which change it in place and return it: at 10 kHz a new
 * state a sample would be mostly garbage. Keep no old state to look back on; keep views, or a `structuredClone`.
 * Throws `watch/option-out-of-range`.
 */
export function startWatch(options: WatchOptions): WatchState {
  checkOptions(options);
  return { memory: startMemory(options) };
}

function passLines(memory: WatchMemory, sample: WatchSample): void {
  for (let line = memory.lines[memory.passed.length]; line && sample.force_kN >= line.force_kN; ) {
    memory.passed.push({ name: line.name, force_kN: line.force_kN, time_s: sample.time_s });
    line = memory.lines[memory.passed.length];
  }
}

/** A dip is counted when it is regained: it must pass eight times the noise, four steps and 0.2 % of the maximum. */
function countDip(memory: WatchMemory, maximum_kN: number): void {
  const depth = maximum_kN - memory.valley_kN;
  const level = Math.max(8 * noiseOf(memory.noise), 4 * memory.noise.resolution_kN, 0.002 * maximum_kN);
  if (depth > level && memory.stage !== 'slack') memory.dips++;
}

function followMaximum(memory: WatchMemory, sample: WatchSample): void {
  const { force_kN } = sample;
  if (memory.maximum_kN !== null && force_kN <= memory.maximum_kN) {
    if (force_kN < memory.valley_kN) memory.valley_kN = force_kN;
    return;
  }
  if (memory.maximum_kN !== null) countDip(memory, memory.maximum_kN);
  memory.maximum_kN = force_kN;
  memory.maximumAt_s = sample.time_s;
  memory.valley_kN = force_kN;
  passLines(memory, sample);
}

/** The force came back after a parting was called: the pull goes on. */
function withdrawParting(memory: WatchMemory): void {
  memory.doubts.withdrawnParting_s ??= memory.endedAt_s;
  memory.stage = memory.loss?.stage ?? 'plastic';
  memory.loss = null;
  goOn(memory);
}

/** One reading that is believed. */
function take(memory: WatchMemory, sample: WatchSample, wasHeld = false): void {
  believe(memory.hold, sample, wasHeld);
  if (memory.ended !== null) {
    if (memory.ended === 'parted' && hasComeBack(memory, sample.time_s, sample.force_kN)) withdrawParting(memory);
    else {
      if (sample.force_kN > (memory.maximum_kN ?? Number.POSITIVE_INFINITY))
        memory.doubts.roseAfterEnd_s ??= sample.time_s;
      return;
    }
  }
  followMaximum(memory, sample);
  noteLimits(memory, sample);
  if (closeBlock(memory.blocks, Math.floor(sample.time_s / BLOCK_S))) followBlock(memory);
  addToBlock(memory.blocks, sample);
  if (memory.ended === null) followLoss(memory, sample.time_s, sample.force_kN);
}

/** Decides on what was held back when a reading comes that is near the last one believed, or that jumps as well. */
function settleHeld(memory: WatchMemory, sample: WatchSample, jumps: boolean): void {
  const { hold } = memory;
  if (hold.held.length === 0) return;
  if (jumps && !hasStayed(hold, sample)) return;
  if (!jumps && isSpike(hold, sample)) {
    rejectHeld(hold);
    return;
  }
  noteJump(memory, hold.held[hold.held.length - 1]);
  for (const held of hold.held) take(memory, held, true);
  hold.held.length = 0;
}

/** No force in kN and no time in s of a pull is as large; larger ones would overflow when squared. */
const LARGEST = 1e12;

function refuseNumbers(sample: WatchSample): void {
  for (const [name, value] of [
    ['time_s', sample.time_s],
    ['force_kN', sample.force_kN],
  ] as const) {
    if (Math.abs(value) < LARGEST) continue;
    throw new InputError(
      'watch/reading-not-a-number',
      `The reading's ${name} is ${value}. Send only readings that were understood, and null for a table that was not read.`,
      { name, value },
    );
  }
}

/** Readings come again: a silence is over, and a pull that it had ended goes on. */
function noteArrival(memory: WatchMemory, sample: WatchSample): void {
  const { last } = memory;
  if (!last) return;
  const gap_s = sample.time_s - last.time_s;
  if (gap_s > memory.options.silence_s) noteGap(memory, last.time_s, gap_s);
  else if (gap_s > 0) memory.step_s += (gap_s - memory.step_s) * (memory.step_s === 0 ? 1 : 0.02);
  if (memory.ended === 'silence') goOn(memory);
}

/**
 * Takes one sample in: constant time and memory whatever came before. Changes the state in place and returns it.
 * Time or force that is no number below 1e12: throws `watch/reading-not-a-number`, the state as it was. Time before the last sample: the
 * sample is left out and a doubt says so. A table or extension that is null or NaN was not read. After an operator's stop or an agreed
 * drop samples no longer change the maximum. A silence is over with the next sample; a parting is withdrawn, with a doubt, when
 * over a fifth of the maximum comes back for a second.
 */
export function step(state: WatchState, sample: WatchSample): WatchState {
  const { memory } = state;
  refuseNumbers(sample);
  if (memory.last && sample.time_s < memory.last.time_s) {
    if (memory.doubts.backwards++ === 0) memory.doubts.firstBackwards_s = sample.time_s;
    return state;
  }
  noteArrival(memory, sample);
  noteStuck(memory, sample);
  memory.last = sample;
  memory.time_s = Math.max(memory.time_s, sample.time_s);
  observeNoise(memory.noise, sample.time_s, sample.force_kN);
  const level_kN = Math.max(8 * noiseOf(memory.noise), loadLevel_kN(memory));
  const jumps = isJump(memory.hold, sample, level_kN);
  settleHeld(memory, sample, jumps);
  if (jumps && isJump(memory.hold, sample, level_kN)) memory.hold.held.push(sample);
  else take(memory, sample);
  return state;
}

/** Tells the watch that time has passed; without a sample for longer than `silence_s` the pull ends by silence. The clock is that of the samples. */
export function tick(state: WatchState, time_s: number): WatchState {
  const { memory } = state;
  if (!Number.isFinite(time_s) || memory.last === null) return state;
  memory.time_s = Math.max(memory.time_s, time_s);
  if (memory.ended === null && time_s - memory.last.time_s > memory.options.silence_s) {
    end(memory, 'silence', memory.last.time_s);
  }
  return state;
}

/** The operator ends the pull. An end that came before stays, but a silence gives way. */
export function operatorStop(state: WatchState, time_s: number): WatchState {
  const { memory } = state;
  if (memory.ended !== null && memory.ended !== 'silence') return state;
  memory.time_s = Math.max(memory.time_s, time_s);
  end(memory, 'operator', time_s);
  return state;
}
