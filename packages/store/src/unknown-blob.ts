import { StoreError } from './errors.ts';

export function unknownBlob(sha256: string): StoreError {
  return new StoreError('store/unknown-blob', `the record holds no file with SHA-256 ${sha256}`, {
    context: { sha256 },
  });
}
