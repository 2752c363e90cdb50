import { spawnSync } from 'node:child_process';
import { mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { cpus, tmpdir } from 'node:os';
import { join } from 'node:path';
import { killTrial, type TrialResult } from '../packages/rig/test/spool/kill-trial.ts';
import type { Mishap } from '../packages/rig/test/spool/trial-rig.ts';
import { readPagePart, writePagePart } from './page-part.ts';
import { quantile } from './quantile.ts';
import { smallDisc } from './small-disc.ts';

/** How often each mishap is tried. Two hundred kills of a healthy pull, a hundred more after something else went wrong. */
const PLAN: readonly { readonly mishap: Mishap; readonly trials: number }[] = [
  { mishap: 'none', trials: 200 },
  { mishap: 'stall', trials: 20 },
  { mishap: 'garbled', trials: 20 },
  { mishap: 'clock jump', trials: 20 },
  { mishap: 'disconnect', trials: 20 },
  { mishap: 'disc full', trials: 10 },
  { mishap: 'disc full, then freed', trials: 10 },
];

const KIB = 1024;

function sum(
  results: readonly TrialResult[],
  key: 'sent' | 'missingInside' | 'unmarked' | 'corrupt' | 'shownNotKept',
): number {
  return results.reduce((total, result) => total + result[key], 0);
}

function row(mishap: Mishap, results: readonly TrialResult[]): string {
  const ends = results.map(({ lostAtEnd_ms }) => lostAtEnd_ms);
  const isSilent = mishap === 'stall' || mishap === 'disconnect';
  const isFull = mishap === 'disc full';
  const end = isFull
    ? 'all since the disc was full'
    : `${quantile(ends, 0.5).toFixed(1)} / ${quantile(ends, 0.99).toFixed(1)} / ${Math.max(...ends).toFixed(1)}${isSilent ? ' *' : ''}`;
  const torn = results.filter(({ tornBytes }) => tornBytes > 0).length;
  const said = mishap.startsWith('disc full') ? `${results.filter((result) => result.isDiscTroubleSaid).length}` : '';
  const cells = [
    mishap,
    results.length,
    sum(results, 'sent'),
    end,
    sum(results, 'missingInside'),
    sum(results, 'unmarked'),
    sum(results, 'corrupt'),
    sum(results, 'shownNotKept'),
    torn,
    said,
  ];
  return `| ${cells.join(' | ')} |`;
}

async function trials(mishap: Mishap, count: number, seed: number): Promise<TrialResult[]> {
  const results: TrialResult[] = [];
  const folder = mkdtempSync(join(tmpdir(), 'kill-'));
  const isDisc = mishap.startsWith('disc full');
  try {
    for (let i = 0; i < count; i++) {
      if (isDisc && !smallDisc(folder, 256)) return results;
      // All but 40 KiB of it is taken by a file that can be removed.
      if (isDisc) writeFileSync(join(folder, 'ballast'), new Uint8Array(216 * KIB));
      results.push(await killTrial({ seed: seed + i, mishap, folder }));
      if (isDisc) spawnSync('umount', [folder]);
    }
  } finally {
    if (isDisc) spawnSync('umount', [folder], { stdio: 'ignore' });
    rmSync(folder, { recursive: true, force: true });
  }
  return results;
}

const HEADER = `| before the kill | trials | lines sent | lost at the end, ms: median / 99 % / worst | missing inside | of those not marked | corrupt | shown but not kept | torn tails | "disc is full" said |
|---|---|---|---|---|---|---|---|---|---|`;

const PAGE = 'reference/signals.md';

/** The row of an earlier run, for mishaps that are not tried in this one. */
function earlierRow(mishap: Mishap): string {
  const found = readPagePart(PAGE, 'kill trials')
    .split('\n')
    .find((line) => line.startsWith(`| ${mishap} |`));
  return found ?? `| ${mishap} | not tried | | | | | | | | |`;
}

/**
 * Kills a recorder at random moments and writes what was lost into docs/reference/signals.md.
 * @param only mishaps to try; all when empty. Rows of the others stay as they are.
 */
export async function benchSpoolKill(only: readonly string[] = []): Promise<void> {
  const rows: string[] = [];
  for (const [i, { mishap, trials: count }] of PLAN.entries()) {
    if (only.length > 0 && !only.includes(mishap)) {
      rows.push(earlierRow(mishap));
      continue;
    }
    const results = await trials(mishap, count, 1000 * (i + 1));
    if (results.length === 0)
      rows.push(`| ${mishap} | not tried: this account may not mount a small disc | | | | | | | | |`);
    else rows.push(row(mishap, results));
    console.log(rows.at(-1));
  }
  const where = `Measured ${new Date().toISOString().slice(0, 10)} with Node ${process.version} on ${cpus().length} cores, Linux, shared with other work.`;
  writePagePart(PAGE, 'kill trials', `${where}\n\n${HEADER}\n${rows.join('\n')}`);
}

if (import.meta.main) await benchSpoolKill(process.argv.slice(2));
