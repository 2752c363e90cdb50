/** What can go wrong with the record itself. The codes are stable. */
export type StoreErrorCode =
  | 'store/held'
  | 'store/full'
  | 'store/not-a-record'
  | 'store/newer'
  | 'store/read-only'
  | 'store/unreachable'
  | 'store/damaged'
  | 'store/refused'
  | 'store/campaign-differs'
  | 'store/unknown-campaign'
  | 'store/unknown-record'
  | 'store/unknown-blob'
  | 'store/revision-conflict'
  | 'store/reason-missing'
  | 'store/bad-row'
  | 'store/already-there'
  | 'store/still-named';

export interface StoreErrorOptions {
  readonly context?: Readonly<Record<string, unknown>>;
  readonly cause?: unknown;
}

/** The record could not be read or written; what was asked for was not kept, not even in part. */
export class StoreError extends Error {
  readonly code: StoreErrorCode;
  readonly context: Readonly<Record<string, unknown>>;

  constructor(code: StoreErrorCode, message: string, { context = {}, cause }: StoreErrorOptions = {}) {
    super(message, cause === undefined ? {} : { cause });
    this.name = 'StoreError';
    this.code = code;
    this.context = context;
  }
}

export function isStoreError(error: unknown): error is StoreError {
  return error instanceof StoreError;
}
