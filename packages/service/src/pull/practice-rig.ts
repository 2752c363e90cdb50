import { openSource, sourceConfiguration } from '@provinghouse/rig';
import { type PracticeWire, servePractice, usualPattern } from '@provinghouse/rig/practice';
import type { OpenedWires, WiredRig } from './wired-rig.ts';

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
    open: async ({ piece, nominalSize_mm, links }, from_s) => {
      const wire = await servePractice({
        over: 'tcp',
        seed: numberOf(piece) + seed,
        chain: { links, size_mm: nominalSize_mm },
        rate_Hz,
        speed,
        startWhen: 'told',
        ...(from_s === undefined ? {} : { from_s: from_s + away_s }),
        after_s: Math.min(600, Math.max(4, 3 * speed)),
      });
      return { ...readOver(wire), begin: wire.start };
    },
    // A rig at rest: the valve is shut, and its transducers show their zero and their noise.
    openForTest: async () => readOver(await servePractice({ over: 'tcp', seed, rate_Hz, valve: 'closed' })),
  };
}

function readOver(wire: PracticeWire): OpenedWires {
  const source = openSource(
    sourceConfiguration({
      kind: 'tcp lines',
      host: '127.0.0.1',
      port: wire.port,
      pattern: usualPattern(true),
      isClockFree: true,
    }),
  );
  return { sources: [source], close: wire.stop };
}

/** A simulated pull that is gone on with is taken up so much later, s: it was not watched meanwhile. */
const away_s = 1;

/** A number that stands for a code (FNV-1a, 32 bit, by G. Fowler, L. Noll and P. Vo). */
function numberOf(code: string): number {
  let hash = 0x811c9dc5;
  for (const byte of new TextEncoder().encode(code)) hash = Math.imul(hash ^ byte, 0x01000193) >>> 0;
  return hash;
}
