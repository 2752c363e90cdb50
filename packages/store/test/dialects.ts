import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import type { TestContext } from 'node:test';
import { openStore, type Store } from '../src/index.ts';

export interface TestDialect {
  readonly name: string;
  /** Opens an empty record that is gone after the test. */
  open(t: TestContext): Promise<Store>;
}

/** Every database the record can live in; each law of the store is tested on each of them. */
export const dialects: readonly TestDialect[] = [
  {
    name: 'SQLite',
    open: async (t) => {
      const store = await openStore(temporaryFolder(t));
      t.after(() => store.close());
      return store;
    },
  },
];

/** A folder that is gone after the test. */
export function temporaryFolder(t: TestContext): string {
  const folder = mkdtempSync(join(tmpdir(), 'provinghouse-store-'));
  t.after(() => rmSync(folder, { recursive: true, force: true }));
  return folder;
}
