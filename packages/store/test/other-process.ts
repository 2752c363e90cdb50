import { type ChildProcess, spawn } from 'node:child_process';
import { once } from 'node:events';
import type { TestContext } from 'node:test';
import { fileURLToPath } from 'node:url';

/** Runs a script of the folder process/ with this same Node and waits for its first word. */
export async function otherProcess(t: TestContext, script: string, argument: string): Promise<ChildProcess> {
  const file = fileURLToPath(new URL(`process/${script}`, import.meta.url));
  const child = spawn(process.execPath, [...process.execArgv.filter((a) => !a.startsWith('--test')), file, argument], {
    stdio: ['ignore', 'pipe', 'inherit'],
  });
  t.after(() => kill(child));
  await Promise.race([
    once(child.stdout, 'data'),
    once(child, 'exit').then(([code]) => {
      throw new Error(`${script} ended with ${code} before it was ready`);
    }),
  ]);
  return child;
}

/** Ends a process as a power cut would, and waits until it is gone. */
export async function kill(child: ChildProcess): Promise<void> {
  if (child.exitCode !== null || child.signalCode !== null) return;
  const gone = once(child, 'exit');
  child.kill('SIGKILL');
  await gone;
}
