import { benchNow_s } from '../clock/bench-clock.ts';
import type { SpoolContent, SpoolEntry } from './spool-entry.ts';
import { LONGEST_PAYLOAD } from './spool-frame.ts';

const READINGS_A_FRAME = 20_000;

/** An entry and when it came. */
export interface Pending {
  readonly entry: SpoolEntry;
  readonly since_s: number;
}

/** Readings in an entry. */
export function countOf(content: SpoolContent): number {
  return content.kind === 'readings' ? content.readings.length : 0;
}

/** Parts of an entry that fit a frame each. */
function fitting(content: SpoolContent): readonly SpoolContent[] {
  if (content.kind === 'readings' && content.readings.length > READINGS_A_FRAME) {
    const { readings } = content;
    const count = Math.ceil(readings.length / READINGS_A_FRAME);
    return Array.from({ length: count }, (_, i) => ({
      ...content,
      readings: readings.slice(i * READINGS_A_FRAME, (i + 1) * READINGS_A_FRAME),
    }));
  }
  if (content.kind === 'rejected' && content.bytes.length > LONGEST_PAYLOAD / 2) {
    const half = LONGEST_PAYLOAD / 2;
    return Array.from({ length: Math.ceil(content.bytes.length / half) }, (_, i) => ({
      ...content,
      bytes: content.bytes.subarray(i * half, (i + 1) * half),
    }));
  }
  return [content];
}

/** Readings of one source that follow one another go into one frame. */
export function merged(pending: readonly Pending[]): readonly SpoolEntry[] {
  const entries: SpoolEntry[] = [];
  for (const { entry } of pending) {
    const last = entries.at(-1);
    const canJoin =
      entry.kind === 'readings' &&
      last?.kind === 'readings' &&
      last.source === entry.source &&
      last.readings.length + entry.readings.length <= READINGS_A_FRAME;
    if (canJoin) entries[entries.length - 1] = { ...last, readings: last.readings.concat(entry.readings) };
    else entries.push(entry);
  }
  return entries;
}

/** Entries that wait to be written. */
export function waitingRoom() {
  let waiting: readonly Pending[] = [];
  let readings = 0;
  return {
    readings: () => readings,
    isEmpty: () => waiting.length === 0,
    add(pending: readonly Pending[]) {
      waiting = waiting.length === 0 ? pending : waiting.concat(pending);
      readings += pending.reduce((sum, { entry }) => sum + countOf(entry), 0);
    },
    takeAll(): readonly Pending[] {
      const taken = waiting;
      waiting = [];
      readings = 0;
      return taken;
    },
    putBack(taken: readonly Pending[]) {
      waiting = taken.concat(waiting);
      readings = waiting.reduce((sum, { entry }) => sum + countOf(entry), 0);
    },
  };
}

/** An entry as it comes in, in parts that fit a frame. */
export function pendingOf(content: SpoolContent, zero_s: number): readonly Pending[] {
  const since_s = benchNow_s();
  return fitting(content).map((part) => ({ entry: { ...part, time_s: since_s - zero_s }, since_s }));
}
