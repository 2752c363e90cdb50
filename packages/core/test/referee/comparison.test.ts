import { test } from 'node:test';
import {
  bartlett,
  bonferroni,
  classicAnova,
  dunn,
  hedgesG,
  holm,
  kruskalWallis,
  levene,
  welchAnova,
  welchTwoSample,
} from '../../src/statistics/comparison/index.ts';
import { seededRandom } from '../../src/statistics/random.ts';
import { alike } from './alike.ts';
import { cases, everyCampaign } from './campaigns.ts';
import { numbersFromR, withR } from './r.ts';

test('R oneway.test: Welch analysis of variance', async () => {
  const theirs = await everyCampaign('t <- oneway.test(v ~ f); c(t$statistic, t$parameter[2], t$p.value)');
  const ours = cases.map(welchAnova).flatMap((test) => [test.f, test.degreesOfFreedomWithin, test.p]);
  alike(ours, theirs);
});

test('R oneway.test with equal variances: classic analysis of variance', async () => {
  const theirs = await everyCampaign('t <- oneway.test(v ~ f, var.equal = TRUE); c(t$statistic, t$p.value)');
  alike(
    cases.map(classicAnova).flatMap((table) => [table.f, table.p]),
    theirs,
  );
});

test('R kruskal.test: rank sums, ties and all', async () => {
  const theirs = await everyCampaign('t <- kruskal.test(v, f); c(t$statistic, t$p.value)');
  alike(
    cases.map(kruskalWallis).flatMap((ranked) => [ranked.h, ranked.p]),
    theirs,
  );
});

test('R rank, pnorm and p.adjust: pairs of mean ranks by Dunn and Holm', async () => {
  const theirs = await everyCampaign(`
    r <- rank(v); N <- length(v); n <- tapply(r, f, length); m <- tapply(r, f, mean); t <- table(v)
    s <- N * (N + 1) / 12 - sum(t^3 - t) / (12 * (N - 1)); p <- combn(nlevels(f), 2); a <- p[1, ]; b <- p[2, ]
    z <- (m[a] - m[b]) / sqrt(s * (1 / n[a] + 1 / n[b])); q <- 2 * pnorm(-abs(z)); c(q, p.adjust(q, "holm"))`);
  const ours = cases.flatMap((groups) => {
    const { pairs } = dunn(groups);
    return [...pairs.map((pair) => pair.p), ...pairs.map((pair) => pair.adjustedP)];
  });
  alike(ours, theirs);
});

test('R bartlett.test, and anova of distances from median and mean: equality of scatter', async () => {
  const theirs = await everyCampaign(`
    l <- function(centre) { d <- abs(v - ave(v, f, FUN = centre)); t <- oneway.test(d ~ f, var.equal = TRUE); c(t$statistic, t$p.value) }
    b <- bartlett.test(v, f); c(b$statistic, b$p.value, l(median), l(mean))`);
  const ours = cases.flatMap((groups) =>
    [bartlett(groups), levene(groups), levene(groups, { centre: 'mean' })].flatMap((test) => [test.statistic, test.p]),
  );
  alike(ours, theirs);
});

const firstPairs = cases.flatMap(([first, second]) => (first && second ? [{ first, second }] : []));

test('R t.test: two means by Welch', async () => {
  const theirs = await everyCampaign(
    't <- t.test(v[f == 1], v[f == 2]); c(t$statistic, t$parameter, t$p.value, t$conf.int)',
  );
  const ours = firstPairs.map((pair) => welchTwoSample(pair));
  alike(
    ours.flatMap((test) => [test.t, test.degreesOfFreedom, test.p, test.lower, test.upper]),
    theirs,
  );
});

test('R pt with noncentrality: limits of Hedges g', async () => {
  const ours = firstPairs.map((pair) => ({ ...pair, ...hedgesG(pair) }));
  const theirs = await everyCampaign(`
    a <- v[f == 1]; b <- v[f == 2]; u <- length(a) + length(b) - 2
    s <- sqrt((sum((a - mean(a))^2) + sum((b - mean(b))^2)) / u)
    (mean(a) - mean(b)) / s * exp(lgamma(u / 2) - lgamma((u - 1) / 2)) / sqrt(u / 2)`);
  alike(
    ours.map(({ g }) => g),
    theirs,
  );
  // At its limits, t must be the 97.5 % and the 2.5 % point of the noncentral t.
  const spread = ours.map(({ first, second }) => Math.sqrt(1 / first.values.length + 1 / second.values.length));
  const tails = await withR((r) =>
    numbersFromR(
      r,
      'j <- exp(lgamma(u / 2) - lgamma((u - 1) / 2)) / sqrt(u / 2); t <- g / j / s; c(pt(t, u, low / j / s), pt(t, u, high / j / s))',
      {
        g: ours.map(({ g }) => g ?? Number.NaN),
        low: ours.map(({ lower }) => lower ?? Number.NaN),
        high: ours.map(({ upper }) => upper ?? Number.NaN),
        u: ours.map(({ degreesOfFreedom }) => degreesOfFreedom),
        s: spread,
      },
    ),
  );
  alike([...ours.map(() => 0.975), ...ours.map(() => 0.025)], tails);
});

test('R p.adjust: Holm and Bonferroni', async () => {
  const random = seededRandom(31);
  const lists = Array.from({ length: 300 }, () => Array.from({ length: 6 }, () => random.uniform() ** 3));
  const theirs = await withR((r) =>
    numbersFromR(r, 'apply(matrix(p, 6), 2, function(q) c(p.adjust(q, "holm"), p.adjust(q, "bonferroni")))', {
      p: lists.flat(),
    }),
  );
  alike(
    lists.flatMap((list) => [...holm(list), ...bonferroni(list)]),
    theirs,
    1e-14,
  );
});
