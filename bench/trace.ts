import { spawnSync } from 'node:child_process';
import { statSync } from 'node:fs';
import { join } from 'node:path';
import { benchFile, ROWS } from './trace-file.ts';

const REPETITIONS = 5;
/** Debian's Python, whose packages python3-pandas and python3-scipy are the peer. */
const PYTHON = '/usr/bin/python3';

interface Run {
  readonly seconds: number;
  readonly wall: number;
  readonly maximum: number;
  readonly slope: number;
  readonly energy: number;
  readonly rows: number;
}

/** Runs one reader in a fresh process; null when it could not be run. */
function run(command: string, args: readonly string[]): Run | null {
  const started = performance.now();
  const done = spawnSync(command, args, { encoding: 'utf8' });
  const wall = (performance.now() - started) / 1000;
  return done.status === 0 ? { ...JSON.parse(done.stdout), wall } : null;
}

function median(values: readonly number[]): number {
  const sorted = [...values].sort((a, b) => a - b);
  return sorted[sorted.length >> 1] ?? Number.NaN;
}

function peerIsThere(): boolean {
  return spawnSync(PYTHON, ['-c', 'import pandas, scipy']).status === 0;
}

function away(a: number, b: number): number {
  return Math.abs(a / b - 1);
}

/** What differs between the two readers, or an empty text. The slope is a choice among stretches: within 0.1 %. */
function difference(ours: Run, theirs: Run): string {
  const faults = [
    ours.rows === theirs.rows && ours.rows === ROWS ? '' : 'rows',
    away(ours.maximum, theirs.maximum) < 1e-9 ? '' : `maximum ${ours.maximum} / ${theirs.maximum} kN`,
    away(ours.slope, theirs.slope) < 1e-3 ? '' : `slope ${ours.slope} / ${theirs.slope} kN/mm`,
    away(ours.energy, theirs.energy) < 1e-9 ? '' : `energy ${ours.energy} / ${theirs.energy} J`,
  ];
  return faults.filter((fault) => fault !== '').join(', ');
}

/**
 * Reads one recording of 1.2 million rows (about 42 MB) whole, by this project and by pandas with NumPy and SciPy, each time in a fresh process, in turns.
 * Prints one line: medians of the whole process and of the reading alone (after imports), their ratios, and whether both found the same.
 */
export async function benchTrace(): Promise<void> {
  const file = await benchFile();
  const size = `${(statSync(file).size / 1e6).toFixed(0)} MB, ${ROWS / 1e6} million rows`;
  const here = import.meta.dirname;
  const ours: Run[] = [];
  const theirs: Run[] = [];
  const peer = peerIsThere();
  for (let k = 0; k < REPETITIONS; k++) {
    const own = run(process.execPath, [join(here, 'trace-run.ts'), file]);
    const other = peer ? run(PYTHON, [join(here, 'trace-peer.py'), file]) : null;
    if (own) ours.push(own);
    if (other) theirs.push(other);
  }
  const first = ours[0];
  if (!first) throw new Error('The reader could not be run.');
  const wall = median(ours.map((each) => each.wall));
  const seconds = median(ours.map((each) => each.seconds));
  const own = `trace ${size}: read whole in ${wall.toFixed(2)} s (reading alone ${seconds.toFixed(2)} s)`;
  const other = theirs[0];
  if (!other) {
    console.log(`${own}; no comparison: ${PYTHON} with pandas and SciPy is not installed`);
    return;
  }
  const peerWall = median(theirs.map((each) => each.wall));
  const peerSeconds = median(theirs.map((each) => each.seconds));
  const fault = difference(first, other);
  const same = fault === '' ? 'same maximum, slope and energy' : `DIFFERENT: ${fault}`;
  if (fault !== '') process.exitCode = 1;
  console.log(
    `${own}; pandas + SciPy ${peerWall.toFixed(2)} s (alone ${peerSeconds.toFixed(2)} s): ` +
      `${(peerWall / wall).toFixed(1)} times as fast (alone ${(peerSeconds / seconds).toFixed(1)}); ${same}`,
  );
}
