import type { Effects } from '../effects.ts';

/** For work that touches no record. */
export type WorkEffects = Pick<Effects, 'progress' | 'signal'>;
