import { spawnSync } from 'node:child_process';
import { statSync } from 'node:fs';
import { availableParallelism, loadavg } from 'node:os';
import { join } from 'node:path';
import { benchFile, ROWS } from './trace-file.ts';

const REPETITIONS = 7;
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

interface Turn {
  readonly ours: Run;
  readonly theirs: Run | null;
}

function takeTurn(file: string, peer: boolean): Turn {
  const ours = run(process.execPath, [join(import.meta.dirname, 'trace-run.ts'), file]);
  if (!ours) throw new Error('The reader could not be run.');
  return { ours, theirs: peer ? run(PYTHON, [join(import.meta.dirname, 'trace-peer.py'), file]) : null };
}

/** One line: the median times, and the median of the ratios of runs that followed each other, which a busy machine disturbs least. */
function lineOf(what: string, turns: readonly Turn[], time: (each: Run) => number): string {
  const own = `  ${what}: ${median(turns.map(({ ours }) => time(ours))).toFixed(2)} s`;
  const pairs = turns.flatMap(({ ours, theirs }) => (theirs ? [{ peer: time(theirs), own: time(ours) }] : []));
  if (pairs.length === 0) return own;
  const peer = median(pairs.map((pair) => pair.peer)).toFixed(2);
  const ratios = pairs.map((pair) => pair.peer / pair.own);
  const range = `${Math.min(...ratios).toFixed(1)} to ${Math.max(...ratios).toFixed(1)}`;
  return `${own}; pandas + SciPy ${peer} s: ${median(ratios).toFixed(1)} times as fast (${range})`;
}

/**
 * Reads one recording of 1.2 million rows (about 42 MB) by this project and by pandas with NumPy and SciPy, each time in a fresh process, in turns.
 * Prints the times and their ratios for the whole process and for the read alone (file, parsing and analysis, after imports), whether both
 * found the same, and how busy the machine was.
 */
export async function benchTrace(): Promise<void> {
  const file = await benchFile();
  const peer = peerIsThere();
  const turns = Array.from({ length: REPETITIONS }, () => takeTurn(file, peer));
  const compared = turns.flatMap(({ ours, theirs }) => (theirs ? [difference(ours, theirs)] : []));
  const fault = compared.find((each) => each !== '');
  if (fault !== undefined) process.exitCode = 1;
  const found =
    compared.length === 0
      ? `no comparison: ${PYTHON} with pandas and SciPy is not installed`
      : fault === undefined
        ? 'same maximum, slope and energy'
        : `DIFFERENT: ${fault}`;
  const size = `${(statSync(file).size / 1e6).toFixed(0)} MB, ${ROWS / 1e6} million rows`;
  const busy = `load ${(loadavg()[0] ?? 0).toFixed(1)} on ${availableParallelism()} cores`;
  console.log(`trace ${size}, ${REPETITIONS} turns, ${busy}; ${found}`);
  console.log(lineOf('whole process', turns, (each) => each.wall));
  console.log(lineOf('read alone', turns, (each) => each.seconds));
}
