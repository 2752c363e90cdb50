import type { WatchMemory } from './memory.ts';
import { noiseOf } from './noise-track.ts';

/** Share of the lowest force that matters (a rule line, else the range) under which a piece counts as slack. */
const SLACK_SHARE = 0.005;

/** Force above zero at which a piece carries load: out of the noise, the steps of the instrument and half a per cent of what matters. */
export function loadLevel_kN(memory: WatchMemory): number {
  const { options, lines, noise } = memory;
  const matters = lines[0]?.force_kN ?? (options.rangeMaximum_kN ?? options.fixtureLimit_kN ?? 0) / 2;
  return Math.max(SLACK_SHARE * matters, 8 * noiseOf(noise), 4 * noise.resolution_kN * Number(noiseOf(noise) > 0));
}

/** Noise of the mean of the block just closed. */
export function blockNoise_kN(memory: WatchMemory, readings: number): number {
  return noiseOf(memory.noise) / Math.sqrt(Math.max(1, readings));
}
