import { spawnSync } from 'node:child_process';
import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';

const bin = fileURLToPath(new URL('../bin/provinghouse.js', import.meta.url));

export const examples = fileURLToPath(new URL('../../../examples/', import.meta.url));
export const openTraces = fileURLToPath(new URL('../../core/test/reference/open-traces/', import.meta.url));

export interface Finished {
  readonly code: number | null;
  readonly out: string;
  readonly err: string;
}

/** Runs the real command in a process of its own, with a record of its own. */
export function provinghouse(home: string, ...args: readonly string[]): Finished {
  const run = spawnSync(process.execPath, [bin, ...args], {
    env: { ...process.env, PROVINGHOUSE_HOME: home },
    encoding: 'utf8',
    maxBuffer: 1 << 28,
  });
  return { code: run.status, out: run.stdout, err: run.stderr };
}

/** A folder that is gone after the work. */
export async function withFolder<T>(work: (folder: string) => T | Promise<T>): Promise<T> {
  const folder = mkdtempSync(join(tmpdir(), 'provinghouse-'));
  try {
    return await work(folder);
  } finally {
    rmSync(folder, { recursive: true, force: true });
  }
}
