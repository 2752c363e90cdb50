import { mkdtemp, rm } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import {
  assembleFinding,
  assembleInWorker,
  bringIn,
  type Evidence,
  gatherEvidence,
  openRecord,
} from '@provinghouse/service';

const PRODUCTS = 13;
const TURNS = 5;
const demo = fileURLToPath(new URL('../examples/sallow-reach', import.meta.url));

/** The demo campaign grown to thirteen products of five pieces: further products are copies of the six under other codes. */
function grown(evidence: Evidence): Evidence {
  const { rows } = evidence;
  const copies = Array.from({ length: PRODUCTS }, (_, index) => ({
    suffix: `-${index}`,
    product: rows.products[index % rows.products.length]?.product ?? '',
  }));
  const renamed = <T extends object>(
    table: readonly T[],
    isOf: (row: T, product: string) => boolean,
    keys: readonly (keyof T)[],
  ) =>
    copies.flatMap(({ suffix, product }) =>
      table
        .filter((row) => isOf(row, product))
        .map((row) => ({ ...row, ...Object.fromEntries(keys.map((key) => [key, `${String(row[key])}${suffix}`])) })),
    );
  const pieceOf = (name: string, product: string) => name.startsWith(`${product}-`);
  const productOf = new Map(rows.pulls.map((pull) => [pull.pull, pull.piece]));
  return {
    ...evidence,
    rows: {
      ...rows,
      products: renamed(rows.products, (row, product) => row.product === product, ['product']),
      samples: renamed(rows.samples, (row, product) => row.product === product, ['sample', 'product']),
      pieces: renamed(rows.pieces, (row, product) => pieceOf(row.piece, product), ['piece', 'sample']),
      gauging: renamed(rows.gauging, (row, product) => pieceOf(row.piece, product), ['piece']),
      pulls: renamed(rows.pulls, (row, product) => pieceOf(row.piece, product), ['pull', 'piece']),
      breaks: renamed(rows.breaks, (row, product) => pieceOf(productOf.get(row.pull) ?? '', product), ['pull']),
      zinc: renamed(rows.zinc, (row, product) => pieceOf(row.piece, product), ['piece']),
    },
  };
}

/** Seconds of the quickest of some turns, and of the first one, which pays for the start. */
async function timed(work: () => unknown): Promise<{ readonly first: number; readonly best: number }> {
  const seconds: number[] = [];
  for (let turn = 0; turn < TURNS; turn++) {
    const begun = performance.now();
    await work();
    seconds.push((performance.now() - begun) / 1000);
  }
  return { first: seconds[0] ?? Number.NaN, best: Math.min(...seconds) };
}

/** Judges thirteen products of five pieces with everything: traces read, budgets, bounds, comparison, long chains. Prints one line. */
export async function benchJudge(): Promise<void> {
  const home = await mkdtemp(join(tmpdir(), 'provinghouse-'));
  const record = await openRecord({ home });
  try {
    const { campaign } = await bringIn({ path: demo, who: 'bench', why: 'to be timed' }, record.effects);
    const evidence = grown(await gatherEvidence(campaign, record.effects));
    const { pieces, products } = assembleFinding(evidence);
    const here = await timed(() => assembleFinding(evidence));
    const beside = await timed(() => assembleInWorker(evidence, { progress: () => undefined }));
    console.log(
      `judging ${products.length} products, ${pieces.length} pieces, everything included: ${here.best.toFixed(2)} s (${here.first.toFixed(2)} s the first time); ` +
        `in a thread of its own, start included, ${beside.best.toFixed(2)} s`,
    );
  } finally {
    await record.close();
    await rm(home, { recursive: true, force: true });
  }
}
