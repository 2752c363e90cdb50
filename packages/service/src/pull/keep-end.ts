import type { Effects } from '../effects.ts';
import type { RecordingHead } from './ports.ts';
import type { RecordingEnd } from './recording.ts';
import { type SealInThreadOptions, sealPullInThread } from './seal-in-thread.ts';
import type { SealedPull } from './seal-pull.ts';

export interface Recorded {
  readonly head: RecordingHead;
  readonly end: RecordingEnd;
  /** It was broken off and gone on with. */
  readonly isBroken: boolean;
  /** Seconds without a reading after which a recording is closed. */
  readonly silence_s: number;
}

const endWords = {
  parted: 'parting',
  'agreed drop': 'the agreed drop of force',
  operator: 'the operator',
  silence: 'silence of the rig',
} as const;

/**
 * Writes a recording that has ended into the record, or says what kept it from that. One that fell silent stays on disc: whether it is over is for
 * a person to say.
 */
export async function keepEnd(
  { head, end: { view, marks, fault }, isBroken, silence_s }: Recorded,
  where: SealInThreadOptions & { readonly folder: string },
  effects: Effects,
): Promise<SealedPull | { readonly fault: string }> {
  if (fault) return { fault: `It could not be closed: ${fault.message} What was written lies on disc.` };
  if (view.ended === 'silence')
    return {
      fault: `Nothing came from the rig for ${silence_s} s. The recording lies on disc and waits: go on with it, or keep it as it is.`,
    };
  const words = [
    ...(isBroken ? ['Gone on with after it was broken off.'] : []),
    ...(view.ended === 'parted' ? [] : [`Ended by ${endWords[view.ended ?? 'operator']}.`]),
  ];
  const { folder, home, signal, progress } = where;
  try {
    return await sealPullInThread({ head, folder, words, marks, isBroken }, { home, signal, progress }, effects);
  } catch (error) {
    const why = error instanceof Error ? error.message : String(error);
    return { fault: `It could not be kept: ${why} The recording lies on disc as it was; try again.` };
  }
}
