import { createWriteStream, existsSync, statSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { finished } from 'node:stream/promises';

export const ROWS = 1_200_000;

/** Even random numbers in (0, 1) from a seed: mulberry32, public domain. */
function seededRandom(seed: number): () => number {
  let state = seed >>> 0;
  return () => {
    state = (state + 0x6d2b79f5) >>> 0;
    let t = Math.imul(state ^ (state >>> 15), 1 | state);
    t = (t + Math.imul(t ^ (t >>> 7), 61 | t)) ^ t;
    return (((t ^ (t >>> 14)) >>> 0) + 0.5) / 4294967296;
  };
}

/** Force of an invented 60 kN chain at travel x in mm: slack, take-up, elastic, hardening, two dips, parting at 50 mm. */
function forceAt(x: number): number {
  if (x < 8 || x >= 50) return 0;
  const y = x - 8;
  const elastic = y < 1 ? 2.5 * y * y : 5 * (y - 0.5);
  const virgin = elastic < 30 ? elastic : 30 + 28 * (1 - Math.exp(-(elastic - 30) / 28));
  const afterDip = (at: number, level: number): number =>
    x < at ? Number.POSITIVE_INFINITY : level - 2 + 5 * (x - at);
  return Math.min(virgin, afterDip(22, 45), afterDip(30, 53));
}

/** Path of the bench's recording: 1.2 million rows at 10 kHz of time, force, table and extension, about 42 MB; made once, always the same. */
export async function benchFile(): Promise<string> {
  const path = join(tmpdir(), `provinghouse-bench-${ROWS}.csv`);
  if (existsSync(path) && statSync(path).size > 40e6) return path;
  const random = seededRandom(818);
  const out = createWriteStream(path);
  out.write('time_s,force_kN,table_mm,extension_mm\n');
  const lines: string[] = [];
  for (let i = 0; i < ROWS; i++) {
    const t = i / 10_000;
    const x = Math.min(52, 0.44 * t);
    const force = forceAt(x);
    const noise = 0.02 * (random() + random() + random() - 1.5);
    const extension = Math.max(0, x - 8 - force * 0.03);
    lines.push(`${t.toFixed(4)},${(force + noise).toFixed(6)},${x.toFixed(5)},${extension.toFixed(5)}\n`);
    if (lines.length === 20_000) out.write(lines.splice(0).join(''));
  }
  out.end(lines.join(''));
  await finished(out);
  return path;
}
