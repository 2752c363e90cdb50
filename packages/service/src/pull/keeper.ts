import { existsSync } from 'node:fs';
import { mkdir, readFile, rename, rm, writeFile } from 'node:fs/promises';
import { join } from 'node:path';
import { type Source, sealSpool, startRecord } from '@provinghouse/rig';
import type { Progress } from '../effects.ts';
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
  readonly head: RecordingHead;
  readonly sources: readonly Source[];
  readonly folder: string;
  /** Goes on with the recording of this head that lies there; the wall clock of now, ISO 8601. */
  readonly resumeAt?: string | null;
}

/** Keeps a pull on disc; see startRecord for what is promised of it. */
export function keepPull({ head, sources, folder, resumeAt = null }: KeepOptions): OpenKeeper {
  return async (news: KeeperNews): Promise<Keeper> => {
    const paths = spoolPaths(folder, spoolName(head));
    if (resumeAt === null) await writeHead(folder, head);
    const { pull, piece, rig, isPractice, startedAt } = head;
    const record = await startRecord({
      path: paths.spool,
      header: { pull, piece, rig, isPractice, startedAt },
      sources,
      listener: {
        samples: news.kept,
        earlier: news.earlier,
        trouble: news.trouble,
        gap: news.gap,
      },
      ...(resumeAt === null ? {} : { resumeAt }),
    }).catch(async (error: unknown) => {
      if (resumeAt === null) await rm(paths.head, { force: true });
      throw error;
    });
    return {
      mark: record.mark,
      close: async (why) => void (await record.stop(why)),
      before: resumeAt === null ? null : record.account(),
    };
  };
}

/** The head comes first, so that no recording lies here without it. */
async function writeHead(folder: string, head: RecordingHead): Promise<void> {
  await mkdir(folder, { recursive: true });
  await writeFile(spoolPaths(folder, spoolName(head)).head, `${JSON.stringify(head, null, 2)}\n`, { flush: true });
}

export interface SealOptions {
  readonly folder: string;
  readonly head: RecordingHead;
  /** Those on disc when left out. */
  readonly marks?: readonly TimedMark[] | null;
  readonly progress?: Progress;
}

/**
 * Makes the trace of a recording that is no longer written to. The recording itself stays as it is, so that what fails can be tried again.
 * @throws InputError `spool/nothing-recorded`, `spool/unreadable`, `spool/unwritable`
 */
export async function sealed({ folder, head, marks = null, progress }: SealOptions): Promise<SealedRecording> {
  const paths = spoolPaths(folder, spoolName(head));
  const trace = await sealSpool(paths.spool, paths.trace, (done, total) => progress?.('sealing', done, total));
  const readings = await readFile(paths.trace);
  const notes = [...trace.notes, ...trace.troubles.map(({ time_s, words }) => `At ${time_s.toFixed(1)} s: ${words}`)];
  const isPractice = head.isPractice || trace.isPractice;
  const said = { marks: marks ?? trace.marks, notes };
  const file = withPreamble(readings, { head: { ...head, isPractice }, ...said, readingsSha256: trace.sha256 });
  const part = `${paths.trace}.part`;
  await writeFile(part, file.bytes, { flush: true, mode: 0o400 });
  await rename(part, paths.trace);
  return { ...file, ...said, isPractice, samples: trace.samples, rejected: trace.rejected };
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
