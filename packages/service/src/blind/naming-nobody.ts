import { InputError, isInputError } from '@provinghouse/core';
import { isStoreError, StoreError } from '@provinghouse/store';
import type { Masks } from './blind.ts';
import { inId } from './meant.ts';

/** Does work on a campaign; where it is blind and the work is refused, the refusal names its samples as a blind screen does. */
export async function namingNobody<R>(masks: Masks | null, work: () => Promise<R>): Promise<R> {
  try {
    return await work();
  } catch (error) {
    if (masks !== null && isStoreError(error)) throw new StoreError(error.code, messageShown(error.message, masks));
    if (masks !== null && isInputError(error)) throw new InputError(error.code, messageShown(error.message, masks));
    throw error;
  }
}

/** A message names a sample in quotation marks, or within the id of a custody row. */
function messageShown(message: string, { samples }: Masks): string {
  let shown = message;
  for (const [sample, mask] of samples) {
    for (const name of [sample, inId(sample)])
      for (const before of ['custody ', 'custody "'])
        shown = shown.replaceAll(`${before}${name}/`, `${before}${mask}/`);
    shown = shown.replaceAll(`"${sample}"`, `"${mask}"`);
  }
  return shown;
}
