import { fileURLToPath } from 'node:url';
import { bringIn, type Effects, heldCampaigns, openRecord, type Progress } from '@provinghouse/service';
import { startServer } from './main.ts';
import { recordPorts } from './record-ports.ts';

export interface ServeRecord {
  readonly port: number;
  readonly host: string;
  /** Bring the demo campaign in first when the record holds no campaign. */
  readonly demo: boolean;
  readonly progress: Progress;
}

export interface ServedRecord {
  readonly address: string;
  readonly notes: readonly string[];
  readonly close: () => Promise<void>;
}

const demoPackage = fileURLToPath(new URL('../../../examples/sallow-reach', import.meta.url));

/** Opens the record, with the demo campaign if it is asked for and empty, and serves it. */
export async function serveRecord({ port, host, demo, progress }: ServeRecord): Promise<ServedRecord> {
  const record = await openRecord({ progress });
  try {
    const notes = demo ? await withDemo(record.effects) : [];
    const server = await startServer({ ports: recordPorts(record.effects), port, host });
    const close = async () => {
      await server.close();
      await record.close();
    };
    return { address: server.address, notes: [`The record is in ${record.home}.`, ...notes], close };
  } catch (error) {
    await record.close();
    throw error;
  }
}

async function withDemo(effects: Effects): Promise<string[]> {
  if ((await heldCampaigns(effects)).length > 0) return [];
  const { campaign } = await bringIn(
    { path: demoPackage, who: effects.who, why: 'the demo campaign, invented' },
    effects,
  );
  return [`The record was empty: the demo campaign ${campaign} was brought in. All its figures are invented.`];
}
