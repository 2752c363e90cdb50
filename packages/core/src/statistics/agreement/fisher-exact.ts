import { logGamma } from '../distribution/index.ts';
import { seededRandom } from '../random.ts';
import { type CountTable, countTable, sumOf, tableReason, wide } from './count-table.ts';
import { fisherSentence } from './fisher-exact-two-by-two.ts';

export interface FisherExact {
  readonly method: string;
  readonly p: number | null;
  /** False when the tables were too many to walk through and p was found by seeded draws. */
  readonly exact: boolean;
  /** Standard error of a p found by draws. */
  readonly simulationError: number | null;
  readonly n: number;
  readonly doubts: readonly string[];
  readonly sentence: string;
}

interface FisherOptions {
  /** Of the draws, should they be needed. */
  readonly seed: number;
  readonly draws?: number;
  /** Steps after which the exact walk gives up; the default takes about a second. */
  readonly steps?: number;
}

/**
 * Exact test of a table of any size: rows products, columns break modes, both margins held (Freeman and Halton 1951,
 * Biometrika 38, 141-149). All tables no likelier than the one seen are summed by walking column by column through what
 * is left of the row sums, ways of equal likelihood joined (the network of Mehta and Patel 1983, JASA 78, 427-434).
 * Empty rows and columns are dropped. A table too large to walk is answered by seeded draws, and says so.
 */
export function fisherExact(table: readonly (readonly number[])[], options: FisherOptions): FisherExact {
  const counts = wide(countTable(table));
  const reason = tableReason(counts);
  const method = 'Exact test of a table of counts (Fisher 1935, Freeman and Halton 1951)';
  const { n } = counts;
  if (reason !== null) {
    const sentence = `The counts cannot be compared: ${reason}.`;
    return { method, p: null, exact: true, simulationError: null, n, doubts: [reason], sentence };
  }
  const walked = walk(counts, options.steps ?? 3_000_000);
  if (walked !== null) {
    const sentence = fisherSentence(walked);
    return { method, p: walked, exact: true, simulationError: null, n, doubts: [], sentence };
  }
  const draws = options.draws ?? 20_000;
  const p = drawn(counts, { seed: options.seed, draws });
  return {
    method: `${method}, by ${draws} seeded draws`,
    p,
    exact: false,
    simulationError: Math.sqrt((p * (1 - p)) / draws),
    n,
    doubts: ['the table is too large to go through all its kind: p is from seeded draws'],
    sentence: fisherSentence(p),
  };
}

/** Tables this much likelier than the one seen still count as no likelier (rounding), as logarithm. */
const tie = 1e-7;

/** What is left of the row sums, and the ways that lead there. */
interface Node {
  readonly left: readonly number[];
  /** By rounded logarithm of likelihood: the logarithm and how many ways, weighted. */
  readonly ways: Map<number, Way>;
}

/** Ways of one likelihood: its logarithm, and how many they are. */
interface Way {
  readonly log: number;
  weight: number;
}

/** Logarithms of factorials up to n. */
function logFactorials(n: number): readonly number[] {
  return Array.from({ length: n + 1 }, (_, k) => logGamma(k + 1));
}

/** ln of the product of 1 / x! over all cells. */
function logOf(table: CountTable, factorial: readonly number[]): number {
  return -sumOf(table.rows.flat().map((count) => factorial[count] ?? 0));
}

function walk(table: CountTable, steps: number): number | null {
  const factorial = logFactorials(table.n);
  const logs = (values: readonly number[]) => sumOf(values.map((value) => factorial[value] ?? 0));
  const limit = logOf(table, factorial) + tie;
  const scale = logs(table.rowSums) + logs(table.columnSums) - (factorial[table.n] ?? 0);
  const columns = [...table.columnSums].sort((a, b) => b - a);
  let nodes: Map<string, Node> = new Map([
    ['', { left: [...table.rowSums].sort(descending), ways: new Map([[0, { log: 0, weight: 1 }]]) }],
  ]);
  let p = 0;
  let work = 0;
  for (const [stage, column] of columns.entries()) {
    const later = columns.slice(stage + 1);
    const next = new Map<string, Node>();
    for (const node of nodes.values()) {
      for (const share of sharings(column, node.left)) {
        const left = node.left.map((sum, row) => sum - (share[row] ?? 0)).sort(descending);
        const step = -logs(share);
        const bounds = boundsOf({ left, later, factorial });
        const whole = (factorial[sumOf(left)] ?? 0) - logs(left) - logs(later);
        work += node.ways.size;
        if (work > steps) return null;
        const onward = open(next, left);
        for (const way of node.ways.values()) {
          const log = way.log + step;
          if (log + bounds.most <= limit) p += way.weight * Math.exp(scale + log + whole);
          else if (log + bounds.least <= limit) join(onward, { log, weight: way.weight });
        }
      }
    }
    nodes = next;
  }
  return Math.min(1, p);
}

/** The node for what is left, made when it is first met. */
function open(nodes: Map<string, Node>, left: readonly number[]): Node {
  const name = left.join(',');
  const met = nodes.get(name);
  if (met) return met;
  const node = { left, ways: new Map() };
  nodes.set(name, node);
  return node;
}

/** Ways alike to nine places of the logarithm are one: far closer than the tie allowed. */
function join({ ways }: Node, { log, weight }: Way): void {
  const place = Math.round(log * 1e9);
  const met = ways.get(place);
  if (met) met.weight += weight;
  else ways.set(place, { log, weight });
}

/** Bounds of ln of the product of 1 / x! over what is left: cells as even as can be, and all of a column in one cell. */
function boundsOf(rest: {
  readonly left: readonly number[];
  readonly later: readonly number[];
  readonly factorial: readonly number[];
}): { readonly most: number; readonly least: number } {
  const { left, later, factorial } = rest;
  const whole = (sums: readonly number[]) => -sumOf(sums.map((sum) => factorial[sum] ?? 0));
  return {
    most: Math.min(evenly(later, left.length, factorial), evenly(left, later.length, factorial)),
    least: Math.max(whole(later), whole(left)),
  };
}

function evenly(sums: readonly number[], cells: number, factorial: readonly number[]): number {
  if (cells === 0) return 0;
  return -sumOf(
    sums.map((sum) => {
      const each = Math.floor(sum / cells);
      const over = sum - each * cells;
      return over * (factorial[each + 1] ?? 0) + (cells - over) * (factorial[each] ?? 0);
    }),
  );
}

/** Every way to share `amount` over rows that hold no more than `most`. */
function sharings(amount: number, most: readonly number[]): number[][] {
  const [first, ...rest] = most;
  if (first === undefined) return amount === 0 ? [[]] : [];
  const room = sumOf(rest);
  const from = Math.max(0, amount - room);
  const to = Math.min(first, amount);
  return Array.from({ length: Math.max(to - from + 1, 0) }, (_, index) => from + index).flatMap((own) =>
    sharings(amount - own, rest).map((others) => [own, ...others]),
  );
}

function descending(a: number, b: number): number {
  return b - a;
}

/** Share of shuffled tables no likelier than the one seen, the one seen counted in (Davison and Hinkley 1997, 4.2). */
function drawn(table: CountTable, { seed, draws }: { readonly seed: number; readonly draws: number }): number {
  const factorial = logFactorials(table.n);
  const limit = logOf(table, factorial) + tie;
  const random = seededRandom(seed);
  const width = table.columnSums.length;
  const rowOf = Int32Array.from(table.rowSums.flatMap((sum, row) => new Array<number>(sum).fill(row)));
  const columnOf = Int32Array.from(table.columnSums.flatMap((sum, column) => new Array<number>(sum).fill(column)));
  let within = 1;
  for (let draw = 0; draw < draws; draw += 1) {
    const cells = new Int32Array(width * table.rowSums.length);
    for (let last = table.n - 1; last >= 0; last -= 1) {
      const other = random.integer(last + 1);
      const column = columnOf[other] ?? 0;
      columnOf[other] = columnOf[last] ?? 0;
      columnOf[last] = column;
      const cell = (rowOf[last] ?? 0) * width + column;
      cells[cell] = (cells[cell] ?? 0) + 1;
    }
    if (-cells.reduce((sum, count) => sum + (factorial[count] ?? 0), 0) <= limit) within += 1;
  }
  return within / (draws + 1);
}
