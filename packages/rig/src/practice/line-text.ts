import type { WatchSample } from '@provinghouse/core';
import { type LineOptions, lineWriter } from './line-writer.ts';
import { practiceLine } from './mark.ts';
import type { PracticeOptions } from './practice-options.ts';
import type { PracticeTruth } from './practice-truth.ts';

/** Simulated seconds between two marks in a stream of lines. */
const markEvery_s = 5;

/** Text of a stream of lines, with the marks among them. */
export interface LineText {
  /** What a reader is sent first. */
  readonly opening: string;
  readonly lines: (samples: readonly WatchSample[]) => string;
  readonly closing: (truth: PracticeTruth) => string;
}

export function lineText(options: PracticeOptions & LineOptions): LineText {
  const write = lineWriter(options);
  const end = options.lineEnd ?? '\n';
  let nextMark_s = markEvery_s;
  const mark = practiceLine(options.seed) + end;
  return {
    opening: mark,
    lines: (samples) => {
      const isDue = (samples.at(-1)?.time_s ?? 0) >= nextMark_s;
      if (isDue) nextMark_s = (samples.at(-1)?.time_s ?? 0) + markEvery_s;
      return (isDue ? mark : '') + write(samples);
    },
    closing: (truth) => practiceLine(options.seed, `ended, parted (${truth.mode ?? 'not parted'})`) + end,
  };
}
