import { chiSquaredUpper } from '../distribution/index.ts';
import { type CentredGroup, centred, type Group } from './group.ts';
import type { ScatterTest } from './levene.ts';
import { spreadSentence } from './plain-words.ts';

/**
 * Do the groups scatter equally, their scatter taken as normal? Sharper than `levene` when it is, misled when it is not
 * (Bartlett 1937, Proceedings of the Royal Society A 160, 268-282).
 * Groups of one value, or of equal values only, are left out and named.
 */
export function bartlett(groups: readonly Group[]): ScatterTest {
  const { groups: filled } = centred(groups);
  const used = filled.filter((group) => (group.variance ?? 0) > 0);
  const reason = used.length < 2 ? 'fewer than two groups have a scatter of their own' : null;
  const statistic = reason === null ? kSquared(used) : null;
  const degreesOfFreedom = Math.max(used.length - 1, 0);
  const p = statistic === null ? null : chiSquaredUpper(statistic, degreesOfFreedom);
  return {
    method: 'Equality of variances, normal scatter taken (Bartlett 1937)',
    statistic,
    degreesOfFreedomBetween: degreesOfFreedom,
    degreesOfFreedomWithin: null,
    p,
    doubts: [
      ...groups.filter((group) => !used.some(({ name }) => name === group.name)).map(leftOut),
      ...(reason === null ? [] : [reason]),
    ],
    sentence: spreadSentence({ p, groupCount: used.length, what: 'scatters', reason }),
  };
}

function leftOut(group: Group): string {
  const why = group.values.length < 2 ? 'has fewer than two values' : 'has equal values only';
  return `${group.name} ${why} and is left out`;
}

function kSquared(groups: readonly CentredGroup[]): number {
  const df = groups.reduce((sum, group) => sum + group.n - 1, 0);
  const pooled = groups.reduce((sum, group) => sum + group.sumOfSquares, 0) / df;
  const logs = groups.reduce((sum, group) => sum + (group.n - 1) * Math.log((group.variance ?? pooled) / pooled), 0);
  const inverse = groups.reduce((sum, group) => sum + 1 / (group.n - 1), 0);
  // -logs is never negative but for rounding: the logarithm is concave.
  return Math.max(-logs, 0) / (1 + (inverse - 1 / df) / (3 * (groups.length - 1)));
}
