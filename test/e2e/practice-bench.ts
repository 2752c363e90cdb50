import { mkdtemp, rm } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { serveRecord } from '@provinghouse/server';
import type { Page } from 'playwright-core';
import type { DemoServer } from './demo-server.ts';

export const practiceRig = 'PRACTICE-RIG';

/** Serves a bench with a practice rig out of a record of its own, which goes when it is closed; `furnish` may put files into it first. */
export async function servePracticeBench(
  speed: number,
  furnish: (home: string) => Promise<void> = async () => undefined,
): Promise<DemoServer> {
  const home = await mkdtemp(join(tmpdir(), 'provinghouse-bench-'));
  await furnish(home);
  process.env.PROVINGHOUSE_HOME = home;
  const practice = { speed };
  const served = await serveRecord({
    port: 0,
    host: '127.0.0.1',
    demo: false,
    practice,
    progress: () => undefined,
  });
  return {
    address: served.address,
    close: async () => {
      await served.close();
      await rm(home, { recursive: true });
    },
  };
}

/** Goes through the checklist of the rig's screen as a person does, up to the press that arms. */
export async function fillChecklist(page: Page, piece: string, typed = piece): Promise<void> {
  await page.getByLabel('Piece', { exact: true }).selectOption(piece);
  await page.getByLabel('Code on its tag').fill(typed);
  for (const box of await page.getByRole('checkbox').all()) await box.check();
}
