import { homedir, userInfo } from 'node:os';
import { join } from 'node:path';
import { openStore } from '@provinghouse/store';
import type { Effects, Progress } from './effects.ts';

export interface OpenRecord {
  readonly effects: Effects;
  readonly home: string;
  readonly close: () => Promise<void>;
}

export interface OpenRecordOptions {
  readonly progress?: Progress;
  /** Folder of the record; see {@link recordHome} when left out. */
  readonly home?: string;
}

/** Opens the record with the real clock and the name of this machine's user. */
export async function openRecord(options: OpenRecordOptions = {}): Promise<OpenRecord> {
  const home = options.home ?? recordHome(process.env);
  const store = await openStore(home);
  return {
    home,
    effects: {
      store: store.db,
      now: () => new Date(),
      who: userName(),
      progress: options.progress ?? (() => undefined),
    },
    close: () => store.close(),
  };
}

/** The folder of the record: PROVINGHOUSE_HOME, else the data folder of this system's custom. */
export function recordHome(environment: Readonly<Record<string, string | undefined>>): string {
  const chosen = environment.PROVINGHOUSE_HOME;
  if (chosen) return chosen;
  if (process.platform === 'win32') return join(environment.LOCALAPPDATA ?? homedir(), 'Provinghouse');
  if (process.platform === 'darwin') return join(homedir(), 'Library', 'Application Support', 'Provinghouse');
  return join(environment.XDG_DATA_HOME ?? join(homedir(), '.local', 'share'), 'provinghouse');
}

/** A machine may know no user for a process (containers); the ledger then says so. */
function userName(): string {
  try {
    return userInfo().username;
  } catch {
    return 'unnamed user';
  }
}
