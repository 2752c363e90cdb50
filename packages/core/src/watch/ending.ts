import type { WatchMemory } from './memory.ts';
import type { WatchEnd } from './state.ts';

/** Ends the pull. A piece shown as parted has parted, whoever or whatever ends the watching. */
export function end(memory: WatchMemory, how: WatchEnd, time_s: number): void {
  const parted = memory.stage === 'parted' && memory.loss !== null;
  memory.ended = parted ? 'parted' : how;
  memory.endedAt_s = parted ? (memory.loss?.from_s ?? time_s) : time_s;
  memory.forecast = null;
}

/** The pull goes on after all. */
export function goOn(memory: WatchMemory): void {
  memory.ended = null;
  memory.endedAt_s = null;
  memory.aliveFrom_s = null;
}
