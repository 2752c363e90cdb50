import { execFileSync } from 'node:child_process';
import { mkdtempSync, rmdirSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import type { TestContext } from 'node:test';

/** A file system of that many KiB in memory, gone after the test; or the reason why there is none. */
export function smallDisc(t: TestContext, size_KiB: number): { folder: string } | { reason: string } {
  if (process.platform !== 'linux') return { reason: 'a small file system is only mounted on Linux' };
  if (process.getuid?.() !== 0) return { reason: 'mounting a small file system needs root' };
  const folder = mkdtempSync(join(tmpdir(), 'provinghouse-disc-'));
  try {
    execFileSync('mount', ['-t', 'tmpfs', '-o', `size=${size_KiB}k`, 'tmpfs', folder], { stdio: 'pipe' });
  } catch (error) {
    rmdirSync(folder);
    return { reason: `a small file system may not be mounted here (${String(error).split('\n')[0]})` };
  }
  t.after(() => {
    execFileSync('umount', [folder]);
    rmdirSync(folder);
  });
  return { folder };
}

/** Makes a small disc readable only. */
export function makeReadOnly(folder: string): void {
  execFileSync('mount', ['-o', 'remount,ro', folder], { stdio: 'pipe' });
}
