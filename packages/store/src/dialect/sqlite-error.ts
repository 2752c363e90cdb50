import { StoreError, type StoreErrorCode } from '../errors.ts';

/** Primary result codes (sqlite.org/rescode.html) that have a meaning of their own for the person at the bench. */
const meanings: Readonly<Record<number, { readonly code: StoreErrorCode; readonly message: string }>> = {
  5: {
    code: 'store/held',
    message: 'another process is writing to the record; wait until it is done, or end it, and try again',
  },
  6: {
    code: 'store/held',
    message: 'another process is writing to the record; wait until it is done, or end it, and try again',
  },
  8: {
    code: 'store/read-only',
    message: 'the record may only be read here; give write permission to its folder and files',
  },
  10: { code: 'store/unreachable', message: 'the disc that holds the record failed to read or write; check the disc' },
  11: { code: 'store/damaged', message: 'the record is damaged; restore the file from a copy' },
  13: { code: 'store/full', message: 'the disc that holds the record is full; make room and try again' },
  14: {
    code: 'store/unreachable',
    message: 'the record could not be opened; check that its folder exists and may be written',
  },
  19: { code: 'store/refused', message: 'the record refused the change' },
  26: { code: 'store/not-a-record', message: 'the file is not a record' },
};

interface SqliteError extends Error {
  readonly errcode: number;
}

function isSqliteError(error: unknown): error is SqliteError {
  return error instanceof Error && 'errcode' in error && typeof error.errcode === 'number';
}

/** Turns an error of `node:sqlite` into a {@link StoreError}; any other error passes through unchanged. */
export function translateSqliteError(error: unknown, path: string): unknown {
  if (!isSqliteError(error)) return error;
  // Extended codes keep the primary code in the low byte. SQLITE_IOERR_SHMSIZE (4874) is a full disc, too.
  const meaning = meanings[error.errcode === 4874 ? 13 : error.errcode & 0xff];
  if (!meaning) return error;
  const detail = meaning.code === 'store/refused' ? `${meaning.message}: ${error.message}` : meaning.message;
  return new StoreError(meaning.code, `${path}: ${detail}`, { context: { path, sqlite: error.errcode }, cause: error });
}
