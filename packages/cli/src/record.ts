import { type Effects, openRecord } from '@provinghouse/service';
import type { Terminal } from './command.ts';
import { progressBar } from './progress.ts';

/** Opens the record for one piece of work and closes it again, whatever comes of the work. */
export async function withRecord<T>(terminal: Terminal, work: (effects: Effects) => Promise<T>): Promise<T> {
  const record = await openRecord({ progress: progressBar(terminal) });
  try {
    return await work(record.effects);
  } finally {
    await record.close();
  }
}
