import { spawnSync } from 'node:child_process';
import { mkdirSync, mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { cpus, loadavg, tmpdir } from 'node:os';
import { join } from 'node:path';
import { type DeskTrialResult, type DeskWay, deskTrial } from '../packages/server/test/desk-trial.ts';
import { writePagePart } from './page-part.ts';
import { quantile } from './quantile.ts';
import { smallDisc } from './small-disc.ts';

/** How often each way is tried. */
const PLAN: readonly { readonly way: DeskWay; readonly trials: number }[] = [
  { way: 'kept as it is', trials: 14 },
  { way: 'gone on with', trials: 14 },
  { way: 'gone on with, killed again', trials: 8 },
  { way: 'killed while kept', trials: 8 },
  { way: 'disc full', trials: 6 },
];

const KIB = 1024;

function sum(results: readonly DeskTrialResult[], of: (result: DeskTrialResult) => number): number {
  return results.reduce((total, result) => total + of(result), 0);
}

function row(way: DeskWay, results: readonly DeskTrialResult[]): string {
  const lost = results.flatMap(({ lost_ms }) => lost_ms);
  const isFull = way === 'disc full';
  const cells = [
    way,
    results.length,
    sum(results, ({ rows }) => rows),
    isFull ? 'all since the disc was full' : `${quantile(lost, 0.5).toFixed(1)} / ${Math.max(...lost).toFixed(1)}`,
    sum(results, ({ gapsMarked }) => gapsMarked),
    sum(results, ({ missingInside }) => missingInside),
    sum(results, ({ unmarked }) => unmarked),
    sum(results, ({ corrupt }) => corrupt),
    sum(results, ({ shownNotKept }) => shownNotKept),
    sum(results, ({ isSha256True }) => Number(isSha256True)),
    sum(results, ({ isLedgerWhole }) => Number(isLedgerWhole)),
    isFull ? sum(results, ({ isDiscTroubleSaid }) => Number(isDiscTroubleSaid)) : '',
  ];
  return `| ${cells.join(' | ')} |`;
}

async function trials(way: DeskWay, count: number, seed: number): Promise<DeskTrialResult[]> {
  const results: DeskTrialResult[] = [];
  for (let i = 0; i < count; i++) {
    const home = mkdtempSync(join(tmpdir(), 'desk-kill-'));
    const disc = join(home, 'spool');
    try {
      if (way === 'disc full') {
        mkdirSync(disc);
        if (!smallDisc(disc, 512)) return results;
        writeFileSync(join(disc, 'ballast'), new Uint8Array(472 * KIB));
      }
      results.push(await deskTrial({ seed: seed + i, way, home }));
      console.log(JSON.stringify(results.at(-1)));
    } finally {
      spawnSync('umount', [disc], { stdio: 'ignore' });
      rmSync(home, { recursive: true, force: true });
    }
  }
  return results;
}

const HEADER = `| after the kill | trials | samples in the record | lost at the end, ms: median / worst | breaks marked | missing inside | of those not marked | corrupt | shown but not kept | SHA-256 true | ledger whole | "disc is full" said |
|---|---|---|---|---|---|---|---|---|---|---|---|`;

/** Kills a whole desk at random moments and writes what became of its recordings into docs/reference/signals.md. */
export async function benchDeskKill(): Promise<void> {
  const rows: string[] = [];
  for (const [i, { way, trials: count }] of PLAN.entries()) {
    const results = await trials(way, count, 1000 * (i + 1));
    rows.push(
      results.length === 0
        ? `| ${way} | not tried: this account may not mount a small disc | | | | | | | | | | |`
        : row(way, results),
    );
    console.log(rows.at(-1));
  }
  const load = loadavg()[2]?.toFixed(1);
  const where = `Measured ${new Date().toISOString().slice(0, 10)} with Node ${process.version} on ${cpus().length} cores, Linux, shared with other work (load ${load} over the last quarter of an hour).`;
  writePagePart('reference/signals.md', 'desk trials', `${where}\n\n${HEADER}\n${rows.join('\n')}`);
}

if (import.meta.main) await benchDeskKill();
