import { InputError, type WatchSample } from '@provinghouse/core';
import { checkPracticeOptions, type PracticeOptions } from './practice-options.ts';
import { startPractice } from './practice-session.ts';
import type { PracticeTruth } from './practice-truth.ts';

export interface PracticePullOptions extends PracticeOptions {
  /** How long the record runs on after parting; 2. */
  readonly after_s?: number;
  /** The pull is given up when nothing has parted by then; 3600. */
  readonly longest_s?: number;
}

/** A whole simulated pull: what the recorder saw and what truly happened. */
export interface PracticePull {
  readonly isPractice: true;
  readonly samples: readonly WatchSample[];
  readonly truth: PracticeTruth;
}

const stride_s = 0.25;

/**
 * Pulls a practice chain to destruction in one go. The same options give the same samples, digit for digit. Throws
 * `InputError` on options out of range, on a closed valve, and when nothing parts in the time allowed.
 */
export function practicePull(options: PracticePullOptions): PracticePull {
  checkPracticeOptions(options);
  const { after_s = 2, longest_s = 3600 } = options;
  if (options.valve === 'closed') {
    throw new InputError('practice/closed', 'practice rig: with the valve closed nothing moves; give an operator');
  }
  const session = startPractice(options);
  const samples: WatchSample[] = [];
  const pass = (seconds: number) => {
    for (const sample of session.advance(seconds)) samples.push(sample);
  };
  while (!session.hasParted()) {
    if (session.time_s() > longest_s) throw unparted(longest_s);
    pass(stride_s);
  }
  pass(Math.max(0, (session.truth().timeAtParting_s ?? 0) + after_s - session.time_s()));
  return { isPractice: true, samples, truth: session.truth() };
}

function unparted(longest_s: number): InputError {
  return new InputError(
    'practice/unparted',
    `practice rig: nothing parted in ${longest_s} s; pull faster or a shorter chain`,
    {
      longest_s,
    },
  );
}
