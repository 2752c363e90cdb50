import { mkdtemp, rm } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { entryPorts, recordPorts, startServer } from '@provinghouse/server';
import { type Effects, openRecord } from '@provinghouse/service';

export interface EmptyBench {
  readonly address: string;
  readonly effects: Effects;
  close(): Promise<void>;
}

/** Serves an empty record of its own, as a newcomer finds it; it goes when it is closed. */
export async function serveEmpty(): Promise<EmptyBench> {
  const home = await mkdtemp(join(tmpdir(), 'provinghouse-e2e-'));
  const record = await openRecord({ home });
  const webRoot = process.env.PROVINGHOUSE_SCREENS;
  const server = await startServer({
    ports: recordPorts(record.effects),
    entries: entryPorts(record.effects),
    port: 0,
    ...(webRoot === undefined ? {} : { webRoot }),
  });
  return {
    address: server.address,
    effects: record.effects,
    close: async () => {
      await server.close();
      await record.close();
      await rm(home, { recursive: true });
    },
  };
}
