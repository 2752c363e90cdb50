import assert from 'node:assert/strict';
import { test } from 'node:test';
import { gamesHowell, rankProbability, tukeyKramer } from '../../src/statistics/comparison/index.ts';
import { alike } from './alike.ts';
import { cases, data, everyCampaign } from './campaigns.ts';
import { numbersFromR, withR } from './r.ts';

const tukey = cases.slice(0, 60).flatMap((groups) => {
  const { pairs } = tukeyKramer(groups);
  const [n, k] = [groups.reduce((sum, group) => sum + group.values.length, 0), groups.length];
  return pairs.map((pair) => ({ ...pair, size: k, nu: n - k }));
});
const games = cases.flatMap((groups) =>
  gamesHowell(groups).pairs.map((pair) => ({ ...pair, size: groups.length, nu: pair.degreesOfFreedom ?? 0 })),
);

/**
 * P(Q > q) by the trapezoidal rule in R, over the least value and the logarithm of the scale: R's own ptukey strays by
 * 1e-6 to 1e-5 at few degrees of freedom, which the case of two groups (a Student t) shows.
 */
const rangeTail = `
  z <- seq(-8.5, 6.5, length.out = 121); p0 <- pnorm(z); d0 <- dnorm(z) * 0.125
  tail <- function(q, r, nu) {
    u <- seq(log(qchisq(1e-13, nu) / nu) / 2, log(qchisq(1e-13, nu, lower.tail = FALSE) / nu) / 2, length.out = 121)
    s <- exp(u); f <- dchisq(nu * s^2, nu) * 2 * nu * s^2 * (u[2] - u[1])
    inner <- matrix((pnorm(z + rep(q * s, each = 121)) - p0)^(r - 1) * d0 * r, nrow = 121)
    sum(f * (1 - colSums(inner)))
  }; `;

/** Every pair of the first campaigns, as many as make `count`, with a p that a difference from 1 can still show. */
function shown(pairs: typeof games, count: number): typeof games {
  return pairs.filter(({ p }) => (p ?? 0) > 1e-7).slice(0, count);
}

function tailInR(pairs: typeof games): Promise<number[]> {
  return withR((r) =>
    numbersFromR(r, `${rangeTail} mapply(tail, q, size, nu)`, {
      q: pairs.map(({ q }) => q ?? Number.NaN),
      size: pairs.map(({ size }) => size),
      nu: pairs.map(({ nu }) => nu),
    }),
  );
}

test('R aov and TukeyHSD: all pairs with one pooled scatter, as far as ptukey goes', async () => {
  const few = 60;
  const theirs = await everyCampaign('t <- TukeyHSD(aov(v ~ f))$f; c(t[, "diff"], t[, "p adj"])', few);
  const ours = cases.slice(0, few).flatMap((groups) => {
    const { pairs } = tukeyKramer(groups);
    return [...pairs.map((pair) => -pair.difference), ...pairs.map((pair) => pair.p)];
  });
  assert.ok(ours.length >= 400);
  assert.equal(ours.length, theirs.length);
  ours.forEach((own, index) => {
    const off = Math.abs((own ?? Number.NaN) - (theirs[index] ?? Number.NaN));
    assert.ok(off < 1e-6, `${own} against ${theirs[index]}`);
  });
});

test('R, trapezoidal rule: Tukey-Kramer p values', async () => {
  const pairs = shown(tukey, 250);
  assert.equal(pairs.length, 250);
  alike(
    pairs.map(({ p }) => p),
    await tailInR(pairs),
  );
});

test('R: difference, degrees of freedom and p values of Games-Howell, as far as ptukey goes', async () => {
  const theirs = await everyCampaign(`
    m <- tapply(v, f, mean); w <- tapply(v, f, var) / tapply(v, f, length); n <- tapply(v, f, length)
    p <- combn(nlevels(f), 2); a <- p[1, ]; b <- p[2, ]
    nu <- (w[a] + w[b])^2 / (w[a]^2 / (n[a] - 1) + w[b]^2 / (n[b] - 1)); se <- sqrt((w[a] + w[b]) / 2)
    q <- abs(m[a] - m[b]) / se; c(rbind(m[a] - m[b], nu, q, ptukey(q, nlevels(f), nu, lower.tail = FALSE)))`);
  alike(
    games.flatMap((pair) => [pair.difference, pair.nu, pair.q]),
    theirs.filter((_, index) => index % 4 !== 3),
  );
  games.forEach((pair, index) => {
    const other = theirs[4 * index + 3] ?? Number.NaN;
    assert.ok(Math.abs((pair.p ?? Number.NaN) - other) < 1e-4, `${pair.p} against ${other}`);
  });
});

test('R, trapezoidal rule: Games-Howell p values, and what the joint limits cover', async () => {
  const pairs = shown(games, 250);
  assert.equal(pairs.length, 250);
  alike(
    pairs.map(({ p }) => p),
    await tailInR(pairs),
  );
  const limits = pairs.map((pair) => {
    const half = (pair.upper ?? Number.NaN) - pair.difference;
    return { ...pair, q: (half / (pair.standardError ?? Number.NaN)) * Math.SQRT2 };
  });
  alike(
    limits.map(() => 0.05),
    await tailInR(limits),
  );
});

test('R qt and pt over Student posteriors: probability of being the best, inside its simulation error', async () => {
  const few = cases.slice(0, 60);
  const theirs = await withR((r) =>
    numbersFromR(
      r,
      `w <- (seq_len(2000) - 0.5) / 2000
      unlist(lapply(split(seq_along(y), k), function(i) { v <- y[i]; f <- factor(g[i])
        m <- tapply(v, f, mean); n <- tapply(v, f, length); s <- sqrt(tapply(v, f, var) / n)
        sapply(seq_along(m), function(j) { x <- m[j] + s[j] * qt(w^3 * (10 - 15 * w + 6 * w^2), n[j] - 1)
          p <- 1; for (o in seq_along(m)[-j]) p <- p * pt((x - m[o]) / s[o], n[o] - 1); mean(p * 30 * w^2 * (1 - w)^2) }) }))`,
      {
        y: few.flatMap((groups) => groups.flatMap((group) => group.values)),
        g: data.g,
        k: data.k.filter((k) => k <= 60),
      },
    ),
  );
  const ours = few.flatMap((groups) => {
    const { ranked } = rankProbability(groups, { seed: 8 });
    return groups.map(({ name }) => ranked.find((entry) => entry.name === name)?.best ?? Number.NaN);
  });
  assert.equal(ours.length, theirs.length);
  // 200 and more probabilities from 20 000 draws: 4.5 standard errors are passed by chance once in a thousand runs.
  ours.forEach((own, index) => {
    const other = theirs[index] ?? Number.NaN;
    const error = Math.sqrt((other * (1 - other)) / 20_000) + 1e-5;
    assert.ok(Math.abs(own - other) < 4.5 * error, `${own} against ${other}`);
  });
});
