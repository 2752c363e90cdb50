import assert from 'node:assert/strict';
import { test } from 'node:test';
import * as few from '../../src/statistics/few-pieces/index.ts';
import { seededRandom } from '../../src/statistics/random.ts';
import { numbersFromR, withR } from './r.ts';

const cases = 200;
const random = seededRandom(29);
const between = (low: number, high: number) => low + (high - low) * random.uniform();
const whole = (low: number, high: number) => low + random.integer(high - low + 1);
const list = <T>(make: (index: number) => T) => Array.from({ length: cases }, (_, index) => make(index));

function near(found: number | null | undefined, expected: number | undefined, relative: number, what: string): void {
  assert.ok(
    found !== null &&
      found !== undefined &&
      expected !== undefined &&
      Math.abs(found - expected) <= relative * Math.abs(expected),
    `${what}: ${found} against ${expected}`,
  );
}

/** Samples of 3 to 60 values, one in ten of up to 600: normal, skewed, heavy-tailed, rounded. */
function samplesOfAllForms(): readonly (readonly number[])[] {
  return list((index) => {
    const n = index % 10 === 9 ? whole(60, 600) : whole(3, 60);
    const form = index % 4;
    return Array.from({ length: n }, () => {
      const z = random.normal();
      if (form === 1) return Math.exp(z);
      if (form === 2) return z / (0.2 + random.uniform());
      return form === 3 ? Math.round(100 + 30 * z) / 10 : 100 + 3 * z;
    });
  });
}

/** One R expression over every sample; x is the sample. */
function overSamples(samples: readonly (readonly number[])[], expression: string): Promise<number[]> {
  const flat = samples.flat();
  const sizes = samples.map((sample) => sample.length);
  const split = `s <- split(all, rep(seq_along(sizes), sizes)); unlist(lapply(s, function(x) ${expression}))`;
  return withR((r) => numbersFromR(r, split, { all: flat, sizes }));
}

test('Shapiro-Wilk agrees with R for samples of every form, W and p', async () => {
  const samples = samplesOfAllForms();
  const expected = await overSamples(samples, '{ t <- shapiro.test(x); c(t$statistic, t$p.value) }');
  assert.equal(expected.length, 2 * cases);
  samples.forEach((sample, index) => {
    const { statistic, p } = few.shapiroWilk(sample);
    near(statistic, expected[2 * index], 1e-10, `W of ${sample.length}`);
    const expectedP = expected[2 * index + 1] ?? 0;
    if (expectedP > 1e-12) near(p, expectedP, 1e-6, `p of ${sample.length}`);
  });
});

test('intervals of mean and standard deviation agree with R', async () => {
  const samples = samplesOfAllForms();
  const expected = await overSamples(
    samples,
    '{ n <- length(x); c(t.test(x, conf.level = 0.9)$conf.int, sqrt((n - 1) * var(x) / qchisq(c(0.95, 0.05), n - 1))) }',
  );
  samples.forEach((values, index) => {
    const mean = few.meanInterval({ values }, { confidence: 0.9 });
    const deviation = few.deviationInterval({ values }, { confidence: 0.9 });
    const size = Math.abs(mean.mean ?? 0) + (mean.sd ?? 0);
    for (const [place, found] of [mean.lower, mean.upper].entries()) {
      assert.ok(Math.abs((found ?? Number.NaN) - (expected[4 * index + place] ?? Number.NaN)) < 1e-10 * size);
    }
    near(deviation.lower, expected[4 * index + 2], 1e-8, 'sd');
    near(deviation.upper, expected[4 * index + 3], 1e-8, 'sd');
  });
});

test('one-sided tolerance factors agree with the noncentral t of R', async () => {
  const n = list(() => whole(2, 100));
  const coverage = list(() => between(0.5, 0.995));
  const confidence = list(() => between(0.05, 0.99));
  const expected = await withR((r) =>
    numbersFromR(r, 'suppressWarnings(qt(confidence, n - 1, qnorm(coverage) * sqrt(n))) / sqrt(n)', {
      n,
      coverage,
      confidence,
    }),
  );
  n.forEach((size, index) => {
    const demand = { n: size, coverage: coverage[index] ?? 0, confidence: confidence[index] ?? 0 };
    const found = few.oneSidedToleranceFactor(demand);
    // R's own accuracy is absolute: near zero only that can be asked for.
    assert.ok(Math.abs(found - (expected[index] ?? Number.NaN)) < 1e-8 * (1 + Math.abs(found)), JSON.stringify(demand));
  });
});

test('two-sided tolerance factors have the stated confidence when R integrates over the error of the mean', async () => {
  const n = list(() => whole(2, 60));
  const coverage = list(() => between(0.5, 0.995));
  const confidence = list(() => between(0.05, 0.99));
  const k = n.map((size, index) =>
    few.twoSidedToleranceFactor({ n: size, coverage: coverage[index] ?? 0, confidence: confidence[index] ?? 0 }),
  );
  // R finds the reach about an off mean by its own Newton steps.
  const expected = await withR((r) =>
    numbersFromR(
      r,
      `reach <- function(c, p) { x <- abs(c) + qnorm((1 + p) / 2); for (i in 1:12) { f <- pnorm(c + x) - pnorm(c - x) - p; x <- x - f / (dnorm(c + x) + dnorm(c - x)) }; x }
       mapply(function(n, p, k) integrate(function(z) 2 * dnorm(z) * pchisq((n - 1) * reach(z / sqrt(n), p)^2 / k^2, n - 1, lower = FALSE), 0, 9, rel.tol = 1e-8)$value, n, coverage, k)`,
      { n, coverage, k },
    ),
  );
  confidence.forEach((asked, index) => {
    near(expected[index], asked, 1e-6, `n = ${n[index]}, coverage ${coverage[index]}`);
  });
});

test('exact binomial tests and intervals agree with R', async () => {
  const n = list(() => whole(1, 300));
  const count = n.map((trials) => whole(0, trials));
  // At one half counts tie with their mirror image, which rounding must not part.
  const supposed = list((index) => (index % 4 === 0 ? 0.5 : between(0.02, 0.98)));
  const expected = await withR((r) =>
    numbersFromR(
      r,
      `unlist(mapply(function(x, n, p) { t <- binom.test(x, n, p, conf.level = 0.9)
        c(t$p.value, t$conf.int, binom.test(x, n, p, alternative = "less")$p.value, binom.test(x, n, p, alternative = "greater")$p.value) },
        count, n, supposed, SIMPLIFY = FALSE))`,
      { count, n, supposed },
    ),
  );
  count.forEach((seen, index) => {
    const counted = { count: seen, n: n[index] ?? 0 };
    const share = supposed[index] ?? 0.5;
    const [p, lower, upper, less, greater] = expected.slice(5 * index, 5 * index + 5);
    const what = `${seen} of ${counted.n}, ${share}`;
    near(few.binomialTest(counted, { supposed: share }).p, p, 1e-8, what);
    near(few.binomialTest(counted, { supposed: share, alternative: 'less' }).p, less, 1e-8, what);
    near(few.binomialTest(counted, { supposed: share, alternative: 'greater' }).p, greater, 1e-8, what);
    const interval = few.proportionInterval(counted, { confidence: 0.9 });
    near(interval.lower, lower, 1e-8, what);
    near(interval.upper, upper, 1e-8, what);
  });
});

test("Hanson and Koopmans' factor leaves the stated risk of a wrong bound when R integrates over the order statistic", async () => {
  const n = list(() => whole(2, 60));
  const rank = n.map((size) => whole(2, size));
  const coverage = list(() => between(0.8, 0.99));
  const k = n.map((size, index) =>
    few.hansonKoopmansFactor({ n: size, rank: rank[index] ?? 2, coverage: coverage[index] ?? 0.9, confidence: 0.95 }),
  );
  const expected = await withR((r) =>
    numbersFromR(
      r,
      `mapply(function(n, r, p, k) integrate(function(u) dbeta(u, r, n - r + 1) * (1 - (p / u)^(1 / max(k, 1e-9)))^(r - 1), p, 1, rel.tol = 1e-10, subdivisions = 1000)$value, n, rank, 1 - coverage, k)`,
      { n, rank, coverage, k },
    ),
  );
  expected.forEach((risk, index) => {
    if (k[index] === 0) assert.ok(risk <= 0.05);
    else near(risk, 0.05, 1e-6, `n = ${n[index]}, rank ${rank[index]}, coverage ${coverage[index]}`);
  });
});
