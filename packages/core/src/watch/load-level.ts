import type { WatchMemory } from './memory.ts';
import { noiseOf } from './noise-track.ts';

/** Share of the lowest force that matters under which a piece counts as slack. */
const SLACK_SHARE = 0.005;

/** The lowest force that matters: the lowest rule line, else half of the range; 0 where neither is known. */
function leastThatMatters_kN({ options, lines }: WatchMemory): number {
  return lines[0]?.force_kN ?? (options.rangeMaximum_kN ?? options.fixtureLimit_kN ?? 0) / 2;
}

/** Share of the lowest force that matters which no link bears that snags while slack is taken up. */
const NO_SNAG_SHARE = 0.3;

/** Whether the piece itself has carried this force above zero, whatever stage is shown; false where nothing tells what matters. */
export function isBeyondSnags(memory: WatchMemory, above_kN: number): boolean {
  const matters = leastThatMatters_kN(memory);
  return matters > 0 && above_kN > NO_SNAG_SHARE * matters;
}

/** Force above zero at which a piece carries load: out of the noise, the steps of the instrument and half a per cent of what matters. */
export function loadLevel_kN(memory: WatchMemory): number {
  const { noise } = memory;
  return Math.max(
    SLACK_SHARE * leastThatMatters_kN(memory),
    8 * noiseOf(noise),
    4 * noise.resolution_kN * Number(noiseOf(noise) > 0),
  );
}

/** Noise of the mean of the block just closed. */
export function blockNoise_kN(memory: WatchMemory, readings: number): number {
  return noiseOf(memory.noise) / Math.sqrt(Math.max(1, readings));
}
