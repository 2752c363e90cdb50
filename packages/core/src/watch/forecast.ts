import type { WatchMemory } from './memory.ts';
import type { Forecast } from './state.ts';

/** Placeholder until tuned. */
export function forecastOf(_memory: WatchMemory): Forecast | null {
  return null;
}
