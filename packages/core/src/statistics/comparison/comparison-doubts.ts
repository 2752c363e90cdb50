import type { ComparedGroup, ComparisonRequest } from './comparison.ts';
import type { KruskalWallis } from './kruskal-wallis.ts';
import type { ScatterTest } from './levene.ts';
import { chanceWords, listWords } from './plain-words.ts';
import type { RankProbability } from './rank-probability.ts';
import type { WelchAnova } from './welch-anova.ts';

interface Findings {
  readonly request: ComparisonRequest;
  readonly groups: readonly ComparedGroup[];
  readonly welch: WelchAnova;
  readonly equalScatter: { readonly brownForsythe: ScatterTest; readonly bartlett: ScatterTest };
  readonly ranks: KruskalWallis;
  readonly order: RankProbability;
  readonly confidence: number;
}

/** What a reader must know before leaning on a comparison, the gravest first. */
export function comparisonDoubts(findings: Findings): string[] {
  const { request, groups, welch, order } = findings;
  return [
    ...new Set([
      ...emptyDoubts(request),
      ...censoredDoubts(request, groups),
      ...fewDoubts(groups),
      ...welch.doubts,
      ...scatterDoubts(findings),
      ...disagreement(findings),
      ...order.doubts,
    ]),
  ];
}

function emptyDoubts(request: ComparisonRequest): string[] {
  return request.groups
    .filter((group) => group.values.length === 0 && (group.atLeast ?? []).length > 0)
    .map(
      ({ name, atLeast = [] }) => `${name}: all ${atLeast.length} values are known only as "at least": not compared`,
    );
}

/** Left-out values above the mean show that leaving them out pulls the mean down. */
function censoredDoubts(request: ComparisonRequest, groups: readonly ComparedGroup[]): string[] {
  return groups.flatMap((group) => {
    const atLeast = request.groups.find((given) => given.name === group.name)?.atLeast ?? [];
    if (atLeast.length === 0) return [];
    const count = atLeast.length === 1 ? 'one value' : `${atLeast.length} values`;
    const high = atLeast.some((value) => value > group.mean);
    const pull = high ? ', which reach above the mean of the rest: its true mean may be higher than told' : '';
    const known = atLeast.length === 1 ? pull.replace('reach', 'reaches') : pull;
    return [`${group.name}: ${count} known only as "at least" left out${known}`];
  });
}

function fewDoubts(groups: readonly ComparedGroup[]): string[] {
  const few = groups.filter((group) => group.n > 1 && group.n < 4).map((group) => `${group.name} (${group.n})`);
  return few.length === 0 ? [] : [`few pieces: ${listWords(few)}; their scatter is hardly known`];
}

function scatterDoubts({ groups, equalScatter, confidence }: Findings): string[] {
  const p = equalScatter.brownForsythe.p;
  const sds = groups.flatMap((group) => (group.sd !== null && group.sd > 0 ? [group.sd] : []));
  const ratio = sds.length < 2 ? 1 : Math.max(...sds) / Math.min(...sds);
  if (p !== null && p < 1 - confidence) {
    return [
      `the groups do not scatter alike (by scatter alone ${chanceWords(p)}): read Welch and Games-Howell, not the classic table`,
    ];
  }
  if (ratio >= 3) return [`the largest standard deviation is ${ratio.toFixed(1)} times the smallest`];
  return [];
}

/** Means and ranks that answer differently point to an outlying value or a skew scatter. */
function disagreement({ welch, ranks, confidence }: Findings): string[] {
  if (welch.p === null || ranks.p === null) return [];
  const level = 1 - confidence;
  if (welch.p < level === ranks.p < level) return [];
  return ['means and ranks answer differently: look for an outlying value, or too few pieces'];
}
