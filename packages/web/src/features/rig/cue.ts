import type { WatchView } from '@provinghouse/core';
import type { Cue } from './sound.ts';

/** What is to be heard when one view follows another. The first view of a viewer who comes late sounds nothing. */
export function cuesBetween(before: WatchView | null, now: WatchView | null): Cue[] {
  if (before === null || now === null) return [];
  const heard: Cue[] = [];
  if (now.passed.length > before.passed.length) heard.push('rule');
  if (now.stage === 'near maximum' && before.stage !== 'near maximum') heard.push('near');
  if (now.stage === 'parted' && before.stage !== 'parted') heard.push('parted');
  return heard;
}
