import { benchNow_s } from '../clock/bench-clock.ts';
import { type SpoolFile, writeFault } from './spool-file.ts';
import { workLoop } from './work-loop.ts';

/** A sync at most every 40 ms: well inside the promised 100 ms. */
const SYNC_S = 0.04;
const SLOW_SYNC_S = 0.1;

/** Syncs what was written, one sync at a time; says so once when the disc is slow. */
export function spoolSync(file: SpoolFile, trouble: (words: string) => void) {
  let dirtySince_s: number | null = null;
  let last_s = 0;
  let saidSlow = false;
  const seen = { syncs: 0, longest_s: 0 };

  async function run(): Promise<void> {
    const since_s = dirtySince_s;
    if (since_s === null) return;
    dirtySince_s = null;
    last_s = benchNow_s();
    try {
      await file.sync();
      seen.syncs++;
    } catch (error) {
      trouble(`${writeFault(error)}: what was written in the last moments may not outlive a power cut.`);
    }
    const took_s = benchNow_s() - since_s;
    seen.longest_s = Math.max(seen.longest_s, took_s);
    if (took_s > SLOW_SYNC_S && !saidSlow)
      trouble(`The disc took ${took_s.toFixed(2)} s to keep readings for good: a power cut may cost as much.`);
    saidSlow ||= took_s > SLOW_SYNC_S;
  }
  const loop = workLoop(
    run,
    () => Math.max(0, last_s + SYNC_S - benchNow_s()),
    () => dirtySince_s !== null,
  );
  return {
    seen,
    /** Bytes are written whose oldest reading came at the given time. */
    dirty(since_s: number) {
      dirtySince_s = Math.min(dirtySince_s ?? since_s, since_s);
      loop.arrange();
    },
    async finish() {
      await loop.end();
      await run();
    },
  };
}
