import { existsSync } from 'node:fs';
import { mkdir, readFile, rename, rm, writeFile } from 'node:fs/promises';
import { join } from 'node:path';
import { type Source, sealSpool, startRecord } from '@provinghouse/rig';
import type { Keeper, KeeperNews, OpenKeeper, RecordingHead, SealedRecording, TimedMark } from './ports.ts';
import { withPreamble } from './trace-preamble.ts';

/** Name of a recording on disc; a campaign's code and a pull's are both short and plain. */
export function spoolName({ campaign, pull }: Pick<RecordingHead, 'campaign' | 'pull'>): string {
  return `${encodeURIComponent(campaign)}.${encodeURIComponent(pull)}`;
}

/** Where the parts of a recording lie. */
export function spoolPaths(folder: string, name: string) {
  return {
    spool: join(folder, `${name}.spool`),
    head: join(folder, `${name}.json`),
    trace: join(folder, `${name}.csv`),
  } as const;
}

export interface KeepOptions {
  /** Asked again when the recording is sealed: only then is it known whether what came was simulated. */
  readonly head: () => RecordingHead;
  readonly sources: readonly Source[];
  readonly folder: string;
}

/** Keeps a pull on disc; see startRecord for what is promised of it. */
export function keepPull({ head, sources, folder }: KeepOptions): OpenKeeper {
  return async (news: KeeperNews): Promise<Keeper> => {
    const first = head();
    const paths = spoolPaths(folder, spoolName(first));
    await mkdir(folder, { recursive: true });
    const { pull, piece, rig, isPractice, startedAt } = first;
    // The head comes first, so that no recording lies here without it.
    await writeFile(paths.head, `${JSON.stringify(first, null, 2)}\n`, { flush: true });
    const record = await startRecord({
      path: paths.spool,
      header: { pull, piece, rig, isPractice, startedAt },
      sources,
      listener: { samples: news.kept, trouble: news.trouble },
    }).catch(async (error: unknown) => {
      await rm(paths.head, { force: true });
      throw error;
    });
    return {
      mark: record.mark,
      seal: async (why, marks) => {
        await record.stop(why);
        return sealed(folder, head(), marks);
      },
      abandon: async () => {
        await record.stop('the program was stopped while the pull ran');
      },
    };
  };
}

/** Makes the trace of a recording that is no longer written to. Without marks those on disc are taken. */
export async function sealed(
  folder: string,
  head: RecordingHead,
  marks: readonly TimedMark[] | null = null,
): Promise<SealedRecording> {
  const paths = spoolPaths(folder, spoolName(head));
  const trace = await sealSpool(paths.spool, paths.trace);
  const readings = await readFile(paths.trace);
  const notes = [...trace.notes, ...trace.troubles.map(({ time_s, words }) => `At ${time_s.toFixed(1)} s: ${words}`)];
  const file = withPreamble(readings, { head, marks: marks ?? trace.marks, notes, readingsSha256: trace.sha256 });
  const part = `${paths.trace}.part`;
  await writeFile(part, file.bytes, { flush: true, mode: 0o400 });
  await rename(part, paths.trace);
  return { ...file, samples: trace.samples, rejected: trace.rejected, notes };
}

/** Puts a recording aside once the record holds it; nothing is thrown away. */
export async function putAside(folder: string, head: RecordingHead): Promise<void> {
  const name = spoolName(head);
  const aside = join(folder, 'sealed');
  await mkdir(aside, { recursive: true });
  const from = spoolPaths(folder, name);
  const to = spoolPaths(aside, name);
  for (const part of ['trace', 'spool'] as const) if (existsSync(from[part])) await rename(from[part], to[part]);
  // Last, for as long as the head lies here the recording counts as unfinished.
  await rename(from.head, to.head);
}
