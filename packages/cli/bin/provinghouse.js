#!/usr/bin/env node
import { spawnSync } from 'node:child_process';
import { existsSync } from 'node:fs';
import { createRequire } from 'node:module';
import { dirname, join } from 'node:path';
import { fileURLToPath } from 'node:url';

const needed = 24;

if (Number(process.versions.node.split('.')[0]) >= needed) {
  // node:sqlite still announces itself as experimental on stderr; the pinned runtime is what we test with.
  const emitWarning = process.emitWarning.bind(process);
  process.emitWarning = (warning, ...rest) =>
    String(warning).includes('SQLite') ? undefined : emitWarning(warning, ...rest);
  await import('../src/main.ts');
} else {
  const runtime = pinnedRuntime();
  if (!runtime) {
    process.stderr.write(
      `provinghouse needs Node ${needed} or newer. Run "npm ci" in its folder, which installs one beside it.\n`,
    );
    process.exit(2);
  }
  const script = fileURLToPath(import.meta.url);
  const run = spawnSync(runtime, [script, ...process.argv.slice(2)], { stdio: 'inherit' });
  process.exit(run.status ?? 3);
}

/** The runtime that the package `node` installed in this workspace. */
function pinnedRuntime() {
  try {
    const folder = dirname(createRequire(import.meta.url).resolve('node/package.json'));
    const runtime = join(folder, 'bin', process.platform === 'win32' ? 'node.exe' : 'node');
    return existsSync(runtime) ? runtime : null;
  } catch {
    return null;
  }
}
