import { type Effects, heldCampaigns, openRecord, type Progress } from '@provinghouse/service';
import {
  bringInPractice,
  openRigDesks,
  type PracticeRigOptions,
  practiceCampaign,
  practiceRig,
  practiceRigCode,
  readKit,
} from '@provinghouse/service/pull';
import { bringInDemo } from './demo-campaign.ts';
import { entryPorts } from './entry-ports.ts';
import { startServer } from './main.ts';
import { recordPorts } from './record-ports.ts';

export interface ServeRecord {
  readonly port: number;
  readonly host: string;
  /** Bring the demo campaign in first when the record holds no campaign. */
  readonly demo: boolean;
  /** Stand a practice rig beside the rigs of Kit, with its own campaign. */
  readonly practice?: Omit<PracticeRigOptions, 'rig'>;
  readonly progress: Progress;
  /** Folder of the built screens, where they are not those of the web package. */
  readonly webRoot?: string | undefined;
}

export interface ServedRecord {
  readonly address: string;
  readonly notes: readonly string[];
  readonly close: () => Promise<void>;
}

/** Opens the record, with the demo campaign if it is asked for and empty, takes charge of the rigs, and serves both. */
export async function serveRecord({
  port,
  host,
  demo,
  practice,
  progress,
  webRoot,
}: ServeRecord): Promise<ServedRecord> {
  const record = await openRecord({ progress });
  try {
    const notes = demo ? await withDemo(record.effects) : [];
    const rigs = await readKit(record.home);
    if (practice) {
      await bringInPractice(record.effects);
      rigs.push(practiceRig({ rig: practiceRigCode, ...practice }));
    }
    const desks = openRigDesks({ rigs, home: record.home }, record.effects);
    const server = await startServer({
      ports: recordPorts(record.effects),
      entries: entryPorts(record.effects),
      rigs: desks,
      port,
      host,
      ...(webRoot === undefined ? {} : { webRoot }),
    });
    const close = async () => {
      await desks.close();
      await server.close();
      await record.close();
    };
    const rigNotes = rigs.map(({ rig, describe }) => `Rig ${rig} (${describe}): ${server.address}/rig/${rig}`);
    return { address: server.address, notes: [`The record is in ${record.home}.`, ...notes, ...rigNotes], close };
  } catch (error) {
    await record.close();
    throw error;
  }
}

async function withDemo(effects: Effects): Promise<string[]> {
  // The campaign of the practice rig comes by itself and is not what somebody put in.
  if ((await heldCampaigns(effects)).some((code) => code !== practiceCampaign)) return [];
  const campaign = await bringInDemo(effects);
  return [`The record was empty: the demo campaign ${campaign} was brought in. All its figures are invented.`];
}
