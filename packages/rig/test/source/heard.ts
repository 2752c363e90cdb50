import { setTimeout } from 'node:timers/promises';
import type { RawReading, SourceSink } from '../../src/index.ts';

/** A sink that keeps what it is given. */
export function heard() {
  const readings: RawReading[] = [];
  const rejected: { text: string; why: string }[] = [];
  const troubles: string[] = [];
  const ends: string[] = [];
  const state = { practice: 0 };
  const sink: SourceSink = {
    readings: (batch) => void readings.push(...batch),
    rejected: (bytes, why) => void rejected.push({ text: Buffer.from(bytes).toString('latin1'), why }),
    trouble: (words) => void troubles.push(words),
    ended: (why) => void ends.push(why),
    practice: () => void state.practice++,
  };
  const values = (channel: string) => readings.filter((found) => found.channel === channel).map(({ value }) => value);
  return { sink, readings, rejected, troubles, ends, state, values };
}

/** Waits until it is so; gives up, and lets the test fail by what it then finds, after ten seconds. */
export async function until(isSo: () => boolean): Promise<void> {
  for (let i = 0; i < 1000 && !isSo(); i++) await setTimeout(10);
}
