import { openSource, sourceConfiguration } from '@provinghouse/rig';
import { servePractice, usualPattern } from '@provinghouse/rig/practice';
import type { WiredRig } from './wired-rig.ts';

export interface PracticeRigOptions {
  readonly rig: string;
  /** Samples a second; 100. */
  readonly rate_Hz?: number;
  /** Simulated seconds for each real one; 1. */
  readonly speed?: number;
  /** Added to the number drawn from the code of the piece, for other breaks of the same pieces; 0. */
  readonly seed?: number;
}

/**
 * A rig that is simulated: each pull lays a line of its own on this machine and reads it as a real one is read, lines over TCP. The same piece
 * always parts the same way.
 */
export function practiceRig({ rig, rate_Hz = 100, speed = 1, seed = 0 }: PracticeRigOptions): WiredRig {
  return {
    rig,
    describe: 'practice rig, simulated',
    isPractice: true,
    open: async ({ piece, nominalSize_mm, links }) => {
      const wire = await servePractice({
        over: 'tcp',
        seed: numberOf(piece) + seed,
        chain: { links, size_mm: nominalSize_mm },
        rate_Hz,
        speed,
        startWhen: 'told',
        after_s: Math.min(600, Math.max(4, 3 * speed)),
      });
      const source = openSource(
        sourceConfiguration({
          kind: 'tcp lines',
          host: '127.0.0.1',
          port: wire.port,
          pattern: usualPattern(true),
          isClockFree: true,
        }),
      );
      return { sources: [source], begin: wire.start, close: wire.stop };
    },
  };
}

/** A number that stands for a code (FNV-1a, 32 bit, by G. Fowler, L. Noll and P. Vo). */
function numberOf(code: string): number {
  let hash = 0x811c9dc5;
  for (const byte of new TextEncoder().encode(code)) hash = Math.imul(hash ^ byte, 0x01000193) >>> 0;
  return hash;
}
