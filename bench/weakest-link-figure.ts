// Draws the figures of docs/reference/weakest-link.md and prints its tables: predictions of the weakest-link law against published data.
// `node bench/weakest-link-figure.ts` writes docs/reference/figures/weakest-link-*.svg.
import { mkdirSync, readFileSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { studentQuantile } from '../packages/core/src/statistics/distribution/index.ts';
import { summarise } from '../packages/core/src/statistics/summary.ts';
import {
  chainForces,
  fitWeibull,
  type ModeLaw,
  modeRecord,
  pieceQuantile,
} from '../packages/core/src/statistics/weakest-link/index.ts';
import { type Line, type Mark, plot } from './figure-plot.ts';

const root = join(import.meta.dirname, '..');
const figures = join(root, 'docs/reference/figures');

interface Check {
  readonly id: string;
  readonly inputs: Readonly<Record<string, unknown>>;
}

const checks: readonly Check[] = JSON.parse(
  readFileSync(join(root, 'packages/core/test/reference/stats-checks.json'), 'utf8'),
);

function inputsOf(id: string): Readonly<Record<string, unknown>> {
  const found = checks.find((check) => check.id === id);
  if (!found) throw new Error(`no reference check ${id}`);
  return found.inputs;
}

function lawOf(strengths: readonly number[], length: number): ModeLaw {
  const pieces = strengths.map((force_kN) => ({ links: length, force_kN, mode: 'any', isAtLeast: false }));
  const { fit, reason } = fitWeibull(modeRecord(pieces, 'any'));
  if (!fit) throw new Error(reason);
  return { mode: 'any', shape: fit.shape, scale_kN: fit.scale_kN };
}

function meanOf(law: ModeLaw, length: number): number {
  return chainForces([law], length)?.mean_kN ?? Number.NaN;
}

/** Mean with its 95 % interval by Student. */
function markOf(x: number, values: readonly number[]): Mark {
  const { n, mean, sd } = summarise(values);
  const half = (studentQuantile(0.975, n - 1) * (sd ?? 0)) / Math.sqrt(n);
  return { x, y: mean ?? 0, low: (mean ?? 0) - half, high: (mean ?? 0) + half };
}

/** Values evenly spaced in the logarithm. */
function logSpaced(from: number, to: number, count: number): number[] {
  return Array.from({ length: count }, (_, k) => from * (to / from) ** (k / (count - 1)));
}

function percent(predicted: number, seen: number): string {
  const off = 100 * (predicted / seen - 1);
  return `${off >= 0 ? '+' : ''}${off.toFixed(1)}`;
}

/** The value below which a share of a sorted sample lies, interpolated at (i - 0.3)/(n + 0.4). */
function sampleQuantile(values: readonly number[], probability: number): number {
  const sorted = [...values].sort((a, b) => a - b);
  const place = probability * (sorted.length + 0.4) + 0.3 - 1;
  const below = Math.max(0, Math.min(sorted.length - 2, Math.floor(place)));
  const low = sorted[below] ?? 0;
  return low + (place - below) * ((sorted[below + 1] ?? low) - low);
}

function drawFibres(): void {
  const strengths = inputsOf('carbon-fibre-gauge-lengths').strength_by_gauge_length_mm as Record<string, number[]>; // told in reference/README.md
  const groups = Object.entries(strengths).map(([length, values]) => ({ length: Number(length), values }));
  const dashes = ['', '7 3', '2 3', '9 3 2 3'];
  const lines: Line[] = groups.map(({ length, values }, k) => {
    const law = lawOf(values, length);
    return {
      label: `from ${length} mm alone`,
      dash: dashes[k] ?? '',
      points: logSpaced(0.8, 65, 40).map((x) => ({ x, y: meanOf(law, x) })),
    };
  });
  const svg = plot({
    title: 'Carbon fibres: what each gauge length alone predicts of the others',
    xLabel: 'gauge length, mm',
    yLabel: 'mean strength, GPa',
    xTicks: [1, 2, 5, 10, 20, 50],
    yTicks: [2, 2.5, 3, 3.5, 4, 4.5, 5, 5.5],
    lines,
    marks: groups.map(({ length, values }) => markOf(length, values)),
    markLabel: 'measured mean, 95 % interval',
  });
  writeFileSync(join(figures, 'weakest-link-carbon-fibres.svg'), svg);
  console.log(`| fitted at | ${groups.map(({ length }) => `mean at ${length} mm | 5 % point`).join(' | ')} |`);
  console.log(`|---|${groups.map(() => '---:|---:|').join('')}`);
  for (const from of groups) {
    const law = lawOf(from.values, from.length);
    const cells = groups.map(({ length, values }) => {
      const mean = percent(meanOf(law, length), summarise(values).mean ?? 0);
      return `${mean} | ${percent(pieceQuantile([law], length, 0.95) ?? 0, sampleQuantile(values, 0.05))}`;
    });
    console.log(`| ${from.length} mm | ${cells.join(' | ')} |`);
  }
}

/** Mean of the least of `count` of the `sorted` values, over all ways to choose them. */
function meanOfLeast(sorted: readonly number[], count: number): number {
  let mean = 0;
  // Chance that the least chosen is the k-th: the others come from those above it.
  let chance = count / sorted.length;
  for (let k = 0; k <= sorted.length - count; k++) {
    mean += chance * (sorted[k] ?? 0);
    chance *= (sorted.length - k - count) / (sorted.length - k - 1);
  }
  return mean;
}

function drawLinks(): void {
  const values = [...(inputsOf('chain-link-strength-20').x as number[])].sort((a, b) => a - b); // told in reference/README.md
  const law = lawOf(values, 1);
  const counts = [1, 2, 3, 4, 5, 6, 8, 10];
  const lengths = logSpaced(1, 100, 40);
  const quantileLine = (survival: number) => lengths.map((x) => ({ x, y: pieceQuantile([law], x, survival) ?? 0 }));
  const svg = plot({
    title: 'Twenty chain links: the fit to single links carried to chains of N links',
    xLabel: 'links in the chain',
    yLabel: 'strength, kg',
    xTicks: [1, 2, 5, 10, 20, 50, 100],
    yTicks: [20, 40, 60, 80, 100],
    lines: [
      { label: 'mean, predicted', dash: '', points: lengths.map((x) => ({ x, y: meanOf(law, x) })) },
      { label: '95 % of chains hold', dash: '7 3', points: quantileLine(0.95) },
      { label: '5 % of chains hold', dash: '2 3', points: quantileLine(0.05) },
    ],
    marks: counts.map((count) => ({ x: count, y: meanOfLeast(values, count), low: null, high: null })),
    markLabel: 'mean least of N of the 20',
  });
  writeFileSync(join(figures, 'weakest-link-chain-links.svg'), svg);
  console.log('\n| links | mean predicted | least of N of the 20, mean | difference % |\n|---:|---:|---:|---:|');
  for (const count of counts) {
    const seen = meanOfLeast(values, count);
    console.log(
      `| ${count} | ${meanOf(law, count).toFixed(1)} | ${seen.toFixed(1)} | ${percent(meanOf(law, count), seen)} |`,
    );
  }
}

mkdirSync(figures, { recursive: true });
drawFibres();
drawLinks();
