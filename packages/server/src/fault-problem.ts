import { isInputError } from '@provinghouse/core';
import { isStoreError, type StoreErrorCode } from '@provinghouse/service';
import { describeProblem, type Problem, type ProblemCode } from './problem.ts';

/** Which problem a fault of the record is to a client; the others are the server's own. */
const ofStore: Partial<Record<StoreErrorCode, ProblemCode>> = {
  'store/unknown-campaign': 'campaign-unknown',
  'store/unknown-record': 'record-unknown',
  'store/unknown-blob': 'record-unknown',
  'store/revision-conflict': 'record-conflict',
  'store/already-there': 'record-conflict',
  'store/reason-missing': 'entry-refused',
  'store/bad-row': 'entry-refused',
  'store/still-named': 'entry-refused',
  'store/held': 'record-unwritable',
  'store/full': 'record-unwritable',
  'store/read-only': 'record-unwritable',
};

const ofInput: readonly (readonly [RegExp, ProblemCode])[] = [
  [/^(pull|source|spool|record|practice|wires)\//, 'pull-refused'],
  [/^campaign\/unknown$/, 'campaign-unknown'],
  [/^entry\/file-unknown$/, 'record-unknown'],
  [/^((entry|campaign)\/|report\/label)/, 'entry-refused'],
  [/./, 'record-at-fault'],
];

/** What a fault with a code of its own is to a client; null for anything else. */
export function faultProblem(error: unknown): Problem | null {
  const code = isStoreError(error)
    ? ofStore[error.code]
    : isInputError(error)
      ? ofInput.find(([pattern]) => pattern.test(error.code))?.[1]
      : undefined;
  if (code === undefined || !(isStoreError(error) || isInputError(error))) return null;
  return { ...describeProblem(code, error.message), fault: error.code };
}
