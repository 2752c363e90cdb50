import type { Verdict } from '@provinghouse/core';

/** The verdicts in the order in which they are listed. */
export const verdicts: readonly Verdict[] = ['conforms', 'does not conform', 'inconclusive', 'not judged'];
