import { spawnSync } from 'node:child_process';

/** Mounts a file system in memory of that many KiB; false where this account may not make one. */
export function smallDisc(folder: string, size_KiB: number): boolean {
  return (
    spawnSync('mount', ['-t', 'tmpfs', '-o', `size=${size_KiB}k`, 'tmpfs', folder], { stdio: 'ignore' }).status === 0
  );
}
