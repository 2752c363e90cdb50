import assert from 'node:assert/strict';
import { test } from 'node:test';
import { seededRandom } from '../../src/statistics/random.ts';
import {
  fitPooledShape,
  fitWeibull,
  modeRecord,
  type PulledPiece,
  quantileProfileInterval,
  shapeProfileInterval,
} from '../../src/statistics/weakest-link/index.ts';
import { numbersFromR, withR } from './r.ts';

const CASES = 220;

/** Random campaigns: 3 to 30 pieces of 1 to 12 links, two modes, some pulls stopped; at least two breaks in the bar below the greatest force. */
function campaigns(seed: number): PulledPiece[][] {
  const random = seededRandom(seed);
  const made: PulledPiece[][] = [];
  while (made.length < CASES) {
    const count = 3 + random.integer(28);
    const shape = 3 + 60 * random.uniform();
    const held = 0.6 * random.uniform();
    const pieces = Array.from({ length: count }, () => {
      const links = 1 + random.integer(12);
      const force_kN = 35 * (-Math.log(1 - random.uniform()) / links) ** (1 / shape);
      const other = random.uniform() < held;
      const stopped = other && random.uniform() < 0.5;
      return { links, force_kN, mode: stopped ? null : other ? 'weld' : 'bar', isAtLeast: stopped };
    });
    const record = modeRecord(pieces, 'bar');
    if (record.breakCount >= 2 && fitWeibull(record).fit) made.push(pieces);
  }
  return made;
}

/** All pieces of all campaigns one after another, and to which campaign each belongs, from 1. */
function inBulk(all: readonly (readonly PulledPiece[])[]): Record<string, number[]> {
  const flat = all.flatMap((pieces, k) => pieces.map((piece) => ({ piece, k: k + 1 })));
  return {
    id: flat.map(({ k }) => k),
    force: flat.map(({ piece }) => piece.force_kN),
    links: flat.map(({ piece }) => piece.links),
    broke: flat.map(({ piece }) => Number(!piece.isAtLeast && piece.mode === 'bar')),
  };
}

/** The likelihood as R would write it: density of the least of n links for a break, survival for the others; parameters in logarithms. */
const likelihood = `
  options(warn = -1)
  nll <- function(p, x, n, d) { b <- exp(p[1]); s <- exp(p[2])
    -sum(d * dweibull(x, b, s * n^(-1/b), log = TRUE) + (1 - d) * pweibull(x, b, s * n^(-1/b), lower.tail = FALSE, log.p = TRUE)) }
  gradient <- function(p, x, n, d) { b <- exp(p[1]); z <- log(x) - p[2]; h <- n * exp(b * z)
    -c(sum(d * (1 + b * z) - h * b * z), sum(b * (h - d))) }
  fit <- function(x, n, d) { start <- c(log(1.2 / sd(log(x))), log(mean(x)))
    f <- optim(start, nll, gradient, x = x, n = n, d = d, method = "BFGS", control = list(reltol = 1e-15, maxit = 2000))
    p <- f$par
    for (k in 1:4) { # BFGS stops short of the last digits: Newton's steps with differences of the gradient finish
      h <- 1e-5
      H <- cbind((gradient(p + c(h, 0), x, n, d) - gradient(p - c(h, 0), x, n, d)) / (2 * h),
                 (gradient(p + c(0, h), x, n, d) - gradient(p - c(0, h), x, n, d)) / (2 * h))
      p <- p - solve(H, gradient(p, x, n, d)) }
    list(p = p, value = nll(p, x, n, d)) }
`;

function close(ours: number | null | undefined, theirs: number | undefined, what: string, relative = 1e-6): void {
  const difference = Math.abs((ours ?? Number.NaN) / (theirs ?? Number.NaN) - 1);
  assert.ok(difference <= relative, `${what}: ${ours} here, ${theirs} in R`);
}

const all = campaigns(31);

/** Six numbers for each campaign: shape, scale, log likelihood; 80 % profile ends of the shape; low end of a force of 4167 links. */
const fromR = withR((r) =>
  numbersFromR(
    r,
    `${likelihood}
    drop <- qchisq(0.8, 1) / 2; lh <- log(-log(0.95) / 4167)
    ofShape <- function(u, x, n, d) { b <- exp(u); s <- (sum(n * x^b) / sum(d))^(1/b); -nll(c(u, log(s)), x, n, d) }
    ofForce <- function(y, x, n, d, at) optimize(function(u) -nll(c(u, y - lh / exp(u)), x, n, d), c(at - 2.5, at + 2.5), maximum = TRUE, tol = 1e-9)$objective
    root <- function(f, inside, step) { a <- inside; b <- a + step; while (f(b) < 0) { a <- b; b <- b + step }; uniroot(f, sort(c(a, b)), tol = 1e-12)$root }
    sapply(1:${CASES}, function(k) { i <- id == k; x <- force[i] / max(force[i]); n <- links[i]; d <- broke[i]; f <- fit(x, n, d); best <- -f$value
      shape <- function(u) best - ofShape(u, x, n, d) - drop
      q <- f$p[2] + lh / exp(f$p[1])
      chain <- function(y) best - ofForce(y, x, n, d, f$p[1]) - drop
      c(exp(f$p[1]), exp(f$p[2]) * max(force[i]), best - sum(d) * log(max(force[i])),
        exp(root(shape, f$p[1], -0.3)), exp(root(shape, f$p[1], 0.3)), exp(root(chain, q, -0.5 / exp(f$p[1]))) * max(force[i])) })`,
    inBulk(all),
  ),
);

test(`R's optim finds the same optimum of the censored likelihood in ${CASES} random campaigns`, async () => {
  const theirs = await fromR;
  assert.equal(theirs.length, 6 * CASES);
  for (const [k, pieces] of all.entries()) {
    const { fit } = fitWeibull(modeRecord(pieces, 'bar'));
    close(fit?.shape, theirs[6 * k], `shape of campaign ${k}`);
    close(fit?.scale_kN, theirs[6 * k + 1], `scale of campaign ${k}`);
    const logLikelihood = theirs[6 * k + 2] ?? Number.NaN;
    const difference = Math.abs((fit?.logLikelihood ?? Number.NaN) - logLikelihood);
    assert.ok(difference <= 1e-6 * (1 + Math.abs(logLikelihood)), `log likelihood of campaign ${k}`);
  }
});

test(`R finds the same ends of the profile intervals of shape and long-chain force in ${CASES} random campaigns`, async () => {
  const theirs = await fromR;
  for (const [k, pieces] of all.entries()) {
    const record = modeRecord(pieces, 'bar');
    const { fit } = fitWeibull(record);
    assert.ok(fit);
    const shape = shapeProfileInterval(record, fit, 0.8);
    close(shape.low, theirs[6 * k + 3], `low end of the shape of campaign ${k}`);
    close(shape.high, theirs[6 * k + 4], `high end of the shape of campaign ${k}`);
    const force = quantileProfileInterval(record, fit, { links: 4167, survival: 0.95, confidence: 0.8 });
    close(force.low, theirs[6 * k + 5], `low end of the chain force of campaign ${k}`);
  }
});

test(`R finds the same shape for four products at once, in ${CASES - 3} pools of the campaigns`, async () => {
  const pools = CASES - 3;
  const theirs = await withR((r) =>
    numbersFromR(
      r,
      `parts <- lapply(1:${CASES}, function(k) { i <- id == k; list(y = log(force[i] / max(force[i])), n = links[i], d = broke[i]) })
       slope <- function(u, k) { b <- exp(u); sum(sapply(parts[k], function(p) { w <- p$n * exp(b * p$y); r <- sum(p$d)
          r / b + sum(p$d * p$y) - r * sum(w * p$y) / sum(w) })) }
       sapply(1:${pools}, function(g) exp(uniroot(slope, c(-2, 12), k = g + 0:3, tol = 1e-13)$root))`,
      inBulk(all),
    ),
  );
  for (let g = 0; g < pools; g++) {
    const records = all.slice(g, g + 4).map((pieces) => modeRecord(pieces, 'bar'));
    close(fitPooledShape(records).shape, theirs[g], `pool ${g}`);
  }
});
