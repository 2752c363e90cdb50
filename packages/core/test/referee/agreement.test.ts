import assert from 'node:assert/strict';
import { test } from 'node:test';
import {
  cohenKappaOfTable,
  fisherExact,
  fisherExactTwoByTwo,
  fleissKappaOfCounts,
} from '../../src/statistics/agreement/index.ts';
import { seededRandom } from '../../src/statistics/random.ts';
import { alike } from './alike.ts';
import { numbersFromR, withR } from './r.ts';

const random = seededRandom(77);

/** A table of counts with no empty row or column. */
function tableOf(rows: number, columns: number, most: number): number[][] {
  for (;;) {
    const table = Array.from({ length: rows }, () => Array.from({ length: columns }, () => random.integer(most + 1)));
    const full = table.every((row) => row.some((count) => count > 0));
    if (full && table[0]?.every((_, place) => table.some((row) => (row[place] ?? 0) > 0))) return table;
  }
}

const twoByTwo = Array.from({ length: 250 }, () => {
  const cell = () => random.integer(14);
  return [
    [cell() + 1, cell()],
    [cell(), cell() + 1],
  ] as const satisfies readonly (readonly [number, number])[];
});

test('R fisher.test: 2 x 2 tables, three alternatives', async () => {
  const theirs = await withR((r) =>
    numbersFromR(
      r,
      'apply(matrix(x, 4), 2, function(t) sapply(c("two.sided", "less", "greater"), function(a) fisher.test(matrix(t, 2, byrow = TRUE), alternative = a, conf.int = FALSE)$p.value))',
      { x: twoByTwo.flat(2) },
    ),
  );
  const ours = twoByTwo.flatMap((table) =>
    (['two-sided', 'less', 'greater'] as const).map((alternative) => fisherExactTwoByTwo(table, { alternative }).p),
  );
  alike(ours, theirs);
});

test('R dhyper: odds ratio and limits make the tails they should', async () => {
  const bounded = twoByTwo.filter(([[a, b], [c, d]]) => Math.min(a, b, c, d) > 0);
  assert.ok(bounded.length >= 200);
  const found = bounded.map((table) => ({ table, ...fisherExactTwoByTwo(table) }));
  // R finds the odds ratio itself to four digits only: its density is asked for mean and tails at ours.
  const theirs = await withR((r) =>
    numbersFromR(
      r,
      `sapply(seq_along(a), function(i) { m <- a[i] + c[i]; n <- b[i] + d[i]; k <- a[i] + b[i]; s <- max(0, k - n):min(k, m)
        w <- function(o) { l <- dhyper(s, m, n, k, log = TRUE) + s * log(o); l <- exp(l - max(l)); l / sum(l) }
        c(sum(s * w(odds[i])) / a[i], sum(w(low[i])[s >= a[i]]), sum(w(high[i])[s <= a[i]])) })`,
      {
        a: found.map(({ table }) => table[0][0]),
        b: found.map(({ table }) => table[0][1]),
        c: found.map(({ table }) => table[1][0]),
        d: found.map(({ table }) => table[1][1]),
        odds: found.map(({ oddsRatio }) => oddsRatio ?? Number.NaN),
        low: found.map(({ lower }) => lower ?? Number.NaN),
        high: found.map(({ upper }) => upper ?? Number.NaN),
      },
    ),
  );
  alike(
    found.flatMap(() => [1, 0.025, 0.025]),
    theirs,
  );
});

test('R fisher.test: tables of products by break modes', async () => {
  const tables = Array.from({ length: 210 }, () => tableOf(2 + random.integer(5), 2 + random.integer(2), 4));
  const theirs = await withR((r) =>
    numbersFromR(
      r,
      'e <- cumsum(rows * cols); sapply(seq_along(rows), function(i) fisher.test(matrix(x[(e[i] - rows[i] * cols[i] + 1):e[i]], rows[i], byrow = TRUE), workspace = 2e6)$p.value)',
      { x: tables.flat(2), rows: tables.map((t) => t.length), cols: tables.map((t) => t[0]?.length ?? 0) },
    ),
  );
  alike(
    tables.map((table) => fisherExact(table, { seed: 1 }).p),
    theirs,
  );
});

/** Derivatives by weights of the things read: the large-sample variance of any statistic of weighted counts. */
const influence = `influence <- function(stat, n) sapply(seq_len(n), function(i) { h <- 1e-4
  up <- rep(1, n); up[i] <- 1 + h; down <- rep(1, n); down[i] <- 1 - h; (stat(up) - stat(down)) / (2 * h) })`;

test("R, by derivatives of kappa itself: Cohen's kappa and its standard error", async () => {
  const tables = Array.from({ length: 220 }, () => {
    const table = tableOf(3, 3, 5);
    return table.map((row, place) => row.map((count, column) => (place === column ? count + 2 : count)));
  });
  const theirs = await withR((r) =>
    numbersFromR(
      r,
      `${influence}
      sapply(split(x, rep(seq_len(length(x) / 9), each = 9)), function(t) { t <- matrix(t, 3, byrow = TRUE)
        cells <- which(t > 0, arr.ind = TRUE); counts <- t[cells]
        stat <- function(w) { q <- matrix(0, 3, 3); q[cells] <- counts * w; q <- q / sum(q); e <- sum(rowSums(q) * colSums(q)); (sum(diag(q)) - e) / (1 - e) }
        d <- influence(stat, nrow(cells)) / counts; c(stat(1), sqrt(sum(counts * d^2))) })`,
      { x: tables.flat(2) },
    ),
  );
  alike(
    tables.map((table) => cohenKappaOfTable(table)).flatMap(({ kappa, standardError }) => [kappa, standardError]),
    theirs,
  );
});

test("R, by derivatives of kappa itself: Fleiss' kappa and its standard error, readers differing in number", async () => {
  const studies = Array.from({ length: 200 }, () =>
    Array.from({ length: 12 }, () => {
      const leaning = random.integer(3);
      const counts = [0, 0, 0];
      const readers = 2 + random.integer(4);
      for (let reader = 0; reader < readers; reader += 1) {
        const choice = random.uniform() < 0.7 ? leaning : random.integer(3);
        counts[choice] = (counts[choice] ?? 0) + 1;
      }
      return counts;
    }),
  );
  const theirs = await withR((r) =>
    numbersFromR(
      r,
      `${influence}
      sapply(split(x, rep(seq_len(length(x) / 36), each = 36)), function(t) { t <- matrix(t, 12, byrow = TRUE)
        m <- rowSums(t); two <- m > 1; a <- ifelse(two, rowSums(t * (t - 1)) / pmax(m * (m - 1), 1), 0)
        stat <- function(w) { w <- rep_len(w, 12); p <- colSums(w * t / m) / sum(w); e <- sum(p^2); (sum(w * a) / sum(w * two) - e) / (1 - e) }
        d <- influence(stat, 12); c(stat(1), sqrt(sum(d^2) * 12 / 11)) })`,
      { x: studies.flat(2) },
    ),
  );
  const ours = studies.map((study) => fleissKappaOfCounts(study));
  alike(
    ours.flatMap(({ kappa, standardError }) => [kappa, standardError]),
    theirs,
  );
});
