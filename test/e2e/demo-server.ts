import { mkdtemp, rm } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { serveRecord } from '@provinghouse/server';

export interface DemoServer {
  readonly address: string;
  close(): Promise<void>;
}

/** The code of the demo campaign in examples/. */
export const demoCampaign = 'SALLOW-REACH';

/** Serves the demo campaign out of a record of its own, which goes when it is closed. */
export async function serveDemo(): Promise<DemoServer> {
  const home = await mkdtemp(join(tmpdir(), 'provinghouse-e2e-'));
  process.env.PROVINGHOUSE_HOME = home;
  const served = await serveRecord({
    port: 0,
    host: '127.0.0.1',
    demo: true,
    progress: () => undefined,
    webRoot: process.env.PROVINGHOUSE_SCREENS,
  });
  return {
    address: served.address,
    close: async () => {
      await served.close();
      await rm(home, { recursive: true });
    },
  };
}
