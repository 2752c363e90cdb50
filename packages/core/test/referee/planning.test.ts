import assert from 'node:assert/strict';
import { test } from 'node:test';
import {
  piecesToBoundFraction,
  piecesToTellApart,
  piecesToTellSharesApart,
  powerToShowConformity,
  powerToTellApart,
  powerToTellSharesApart,
} from '../../src/plan/index.ts';
import { normalQuantile } from '../../src/statistics/distribution/index.ts';
import { seededRandom } from '../../src/statistics/random.ts';
import { calibrationLine, correctionAt, coverage } from '../../src/uncertainty/index.ts';
import { conformanceProbability, decideToleranceBound, globalRisk, guardForRisk } from '../../src/verdict/index.ts';
import { alike } from './alike.ts';
import { numbersFromR, withR } from './r.ts';

const count = 200;
const random = seededRandom(2024);
const between = (from: number, to: number) => from + (to - from) * random.uniform();
const column = (draw: (index: number) => number) => Array.from({ length: count }, (_, index) => draw(index));
const rows = column((index) => index);

test('R power.t.test: power to tell two products apart, one side or two', async () => {
  const n = column(() => 2 + random.integer(60));
  const difference = column(() => between(0.1, 3));
  const sd = column(() => between(0.5, 2));
  const alpha = column(() => between(0.001, 0.2));
  const sides = column((index) => 1 + (index % 2));
  const theirs = await withR((r) =>
    numbersFromR(
      r,
      `mapply(function(n, d, s, a, k) power.t.test(n, d, s, a, alternative = c('one.sided', 'two.sided')[k])$power,
        n, difference, sd, alpha, sides)`,
      { n, difference, sd, alpha, sides },
    ),
  );
  alike(
    rows.map((i) =>
      powerToTellApart(n[i] ?? 0, {
        difference: difference[i] ?? 0,
        standardDeviations: [sd[i] ?? 0, sd[i] ?? 0],
        alpha: alpha[i] ?? 0,
        sides: sides[i] === 1 ? 1 : 2,
      }),
    ),
    theirs,
  );
});

test('R pt with noncentrality: power with unequal scatters by degrees of freedom of Welch', async () => {
  const n = column(() => 3 + random.integer(40));
  const difference = column(() => between(0.1, 3));
  const a = column(() => between(0.5, 2));
  const b = column(() => between(0.5, 2));
  const theirs = await withR((r) =>
    numbersFromR(
      r,
      `v <- a^2 / n + b^2 / n
       nu <- v^2 / ((a^2 / n)^2 / (n - 1) + (b^2 / n)^2 / (n - 1))
       pt(qt(0.025, nu, lower.tail = FALSE), nu, difference / sqrt(v), lower.tail = FALSE)`,
      { n, difference, a, b },
    ),
  );
  alike(
    rows.map((i) =>
      powerToTellApart(n[i] ?? 0, { difference: difference[i] ?? 0, standardDeviations: [a[i] ?? 0, b[i] ?? 0] }),
    ),
    theirs,
  );
});

test('R power.t.test: pieces to tell two products apart', async () => {
  const difference = column(() => between(0.3, 1.5));
  const power = column(() => between(0.6, 0.97));
  const theirs = await withR((r) =>
    numbersFromR(r, `mapply(function(d, p) power.t.test(delta = d, power = p, tol = 1e-11)$n, difference, power)`, {
      difference,
      power,
    }),
  );
  const ours = rows.map((i) =>
    piecesToTellApart({ difference: difference[i] ?? 0, standardDeviations: [1, 1] }, power[i] ?? 0),
  );
  alike(
    ours.map(({ exact }) => exact),
    theirs,
  );
  assert.deepEqual(
    ours.map(({ pieces }) => pieces),
    theirs.map(Math.ceil),
  );
});

test('R power.prop.test: power and pieces to tell two shares apart', async () => {
  const n = column(() => 5 + random.integer(200));
  const first = column(() => between(0.02, 0.5));
  const second = column((index) => (first[index] ?? 0) + between(0.05, 0.45));
  const theirs = await withR((r) =>
    numbersFromR(
      r,
      `c(mapply(function(n, p, q) power.prop.test(n, p, q)$power, n, first, second),
         mapply(function(p, q) power.prop.test(p1 = p, p2 = q, power = 0.9, tol = 1e-11)$n, first, second))`,
      { n, first, second },
    ),
  );
  const question = (i: number) => ({ first: first[i] ?? 0, second: second[i] ?? 0 });
  alike(
    [
      ...rows.map((i) => powerToTellSharesApart(n[i] ?? 0, question(i))),
      ...rows.map((i) => piecesToTellSharesApart(question(i), 0.9)?.exact ?? null),
    ],
    theirs,
  );
});

test('R pt and qt with noncentrality: power to show a mean, and a share by its tolerance bound', async () => {
  const n = column(() => 3 + random.integer(40));
  const share = column(() => between(0.8, 0.99));
  // R's pt is good to some 1e-12 in all, so powers of next to nothing are no test of ours.
  const margin = column((index) => normalQuantile(share[index] ?? 0) + between(-0.2, 2));
  const confidence = column(() => between(0.8, 0.99));
  const theirs = await withR((r) =>
    numbersFromR(
      r,
      `d <- margin * sqrt(n)
       c(pt(qt(confidence, n - 1), n - 1, d, lower.tail = FALSE),
         pt(qt(confidence, n - 1, qnorm(share) * sqrt(n)), n - 1, d, lower.tail = FALSE))`,
      { n, share, margin, confidence },
    ),
  );
  const power = (i: number, of: 'mean' | { readonly share: number }) =>
    powerToShowConformity(n[i] ?? 0, {
      expectedMean: 100,
      cov_pct: 1,
      limit: 100 - (margin[i] ?? 0),
      side: 'lower',
      confidence: confidence[i] ?? 0,
      of,
    });
  alike([...rows.map((i) => power(i, 'mean')), ...rows.map((i) => power(i, { share: share[i] ?? 0 }))], theirs);
});

test('R qt with noncentrality: factor of a tolerance bound', async () => {
  const n = column(() => 2 + random.integer(30));
  const share = column(() => between(0.8, 0.99));
  const confidence = column(() => between(0.8, 0.99));
  const theirs = await withR((r) =>
    numbersFromR(r, 'qt(confidence, n - 1, qnorm(share) * sqrt(n)) / sqrt(n)', { n, share, confidence }),
  );
  alike(
    rows.map(
      (i) =>
        decideToleranceBound(
          {
            values: Array.from({ length: n[i] ?? 0 }, (_, k) => k),
            unit: 'kN',
            limits: { lower: 0, upper: null },
            commonStandardUncertainty: 0,
          },
          { share: share[i] ?? 0, confidence: confidence[i] ?? 0 },
        ).factor,
    ),
    theirs,
  );
});

test('R pbinom: pieces to bound a share with failures forgiven', async () => {
  const reliability = column(() => between(0.7, 0.97));
  const confidence = column(() => between(0.7, 0.97));
  const failures = column(() => random.integer(4));
  const theirs = await withR((r) =>
    numbersFromR(
      r,
      `mapply(function(R, C, c) { n <- (c + 1):2000; n[which(pbinom(c, n, 1 - R) <= 1 - C)[1]] },
        reliability, confidence, failures)`,
      { reliability, confidence, failures },
    ),
  );
  assert.deepEqual(
    rows.map(
      (i) =>
        piecesToBoundFraction({
          reliability: reliability[i] ?? 0,
          confidence: confidence[i] ?? 0,
          allowedFailures: failures[i] ?? 0,
        }).pieces,
    ),
    theirs,
  );
});

test('R pnorm, pt, qt: chance of conformity, guard band for a risk, coverage factor', async () => {
  const at = column(() => between(-3, 3));
  const u = column(() => between(0.1, 2));
  const nu = column(() => 1 + random.integer(40));
  const risk = column(() => between(0.001, 0.4));
  const theirs = await withR((r) =>
    numbersFromR(
      r,
      `off <- abs(at) # on this side the difference of the tails keeps its digits
       c(pnorm((1 - off) / u) - pnorm((-1 - off) / u), pt((at + 1) / u, nu), qt(risk, nu, lower.tail = FALSE) * u,
         qt(1 - risk / 2, nu))`,
      { at, u, nu, risk },
    ),
  );
  const value = (i: number) => ({ value: at[i] ?? 0, standardUncertainty: u[i] ?? 0 });
  const student = (i: number) => ({ ...value(i), degreesOfFreedom: nu[i] ?? 0 });
  alike(
    [
      ...rows.map((i) => conformanceProbability(value(i), { lower: -1, upper: 1 })?.probability ?? null),
      ...rows.map((i) => conformanceProbability(student(i), { lower: -1, upper: null })?.probability ?? null),
      ...rows.map((i) =>
        guardForRisk({ lower: 0, upper: null }, risk[i] ?? 0, { ...student(i), expandedUncertainty: null }),
      ),
      ...rows.map((i) => coverage({ probability: 1 - (risk[i] ?? 0) }, nu[i] ?? 0).factor),
    ],
    theirs,
    1e-8,
  );
});

test('R integrate: global risks over a normal and a gamma prior', async () => {
  const mean = column(() => between(1, 2));
  const sd = column(() => between(0.2, 0.7));
  const u = column(() => between(0.1, 0.5));
  const guard = column(() => between(-0.2, 0.4));
  const theirs = await withR((r) =>
    numbersFromR(
      r,
      `both <- function(g, from, accept) c(
         integrate(function(x) g(x) * accept(x), 2, Inf, rel.tol = 1e-9, subdivisions = 2000L)$value,
         integrate(function(x) g(x) * (1 - accept(x)), from, 2, rel.tol = 1e-9, subdivisions = 2000L)$value)
       mapply(function(m, s, u, w) {
         accept <- function(x) pnorm(2 - w, x, u)
         c(both(function(x) dnorm(x, m, s), m - 12 * s, accept),
           both(function(x) dgamma(x, (m / s)^2, m / s^2), 0, accept))
       }, mean, sd, u, guard)`,
      { mean, sd, u, guard },
    ),
  );
  const risks = (i: number, kind: 'normal' | 'gamma') => {
    const { consumersRisk, producersRisk } = globalRisk({
      prior: { kind, mean: mean[i] ?? 0, standardDeviation: sd[i] ?? 0 },
      standardUncertainty: u[i] ?? 0,
      limits: { lower: null, upper: 2 },
      acceptance: { lower: null, upper: 2 - (guard[i] ?? 0) },
    });
    return [consumersRisk, producersRisk];
  };
  alike(
    rows.flatMap((i) => [...risks(i, 'normal'), ...risks(i, 'gamma')]),
    theirs,
  );
});

test('R lm.fit: calibration line and the correction it gives', async () => {
  const size = 6;
  const places = rows.flatMap(() => Array.from({ length: size }, () => between(0, 100)));
  const corrections = places.map((place) => 0.1 - 0.002 * place + 0.05 * random.normal());
  const theirs = await withR((r) =>
    numbersFromR(
      r,
      `sapply(split(seq_along(x), rep(seq_len(length(x) / ${size}), each = ${size})), function(i) {
         X <- cbind(1, x[i])
         m <- lm.fit(X, y[i])
         s <- sqrt(sum(m$residuals^2) / m$df.residual)
         V <- s^2 * chol2inv(m$qr$qr[1:2, 1:2])
         at <- c(1, 30)
         c(m$coefficients[2], sqrt(V[2, 2]), sum(at * m$coefficients), sqrt(drop(at %*% V %*% at)), s)
       })`,
      { x: places, y: corrections },
    ),
  );
  alike(
    rows.flatMap((i) => {
      const part = (list: readonly number[]) => list.slice(i * size, (i + 1) * size);
      const line = calibrationLine({ at: part(places), correction: part(corrections) });
      assert.ok(line);
      const found = correctionAt(line, 30);
      return [line.slope, line.slopeUncertainty, found.correction, found.standardUncertainty, line.sd];
    }),
    theirs,
  );
});
