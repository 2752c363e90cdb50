import type { BriefFinding, ProductBrief, ProductPlan, RigBrief, SizeBrief } from '@provinghouse/contract';
import { figure, list, plural } from '../judge/wording.ts';
import { chanceWords } from './chance-words.ts';
import { assumedCov_pct, assumedMargin_pct } from './expectation.ts';

/** The plan in a few sentences: what the pieces can show, and what they cannot. */
export function answersOf(brief: Pick<BriefFinding, 'products' | 'sizes' | 'rigs'>): string[] {
  return [...conformity(brief.products), ...brief.sizes.flatMap(apart), ...unsuited(brief.rigs)];
}

function conformity(products: readonly ProductBrief[]): string[] {
  const groups = [...Map.groupBy(products, ({ pieces }) => pieces)].sort(([a], [b]) => a - b);
  return groups.flatMap(([pieces, group]) => {
    const plans = group.flatMap(({ plans }) => plans.filter(({ basis }) => basis === 'assumed'));
    const chances = (of: (plan: ProductPlan) => number | null) => rangeWords(plans.flatMap((plan) => of(plan) ?? []));
    const mean = chances((plan) => plan.mean.chance.value);
    const share = chances((plan) => plan.share.chance.value);
    const all = chances((plan) => plan.allPass.value);
    if (mean === null || share === null || all === null) return [];
    const run = group[0]?.passes.ifAllPass.value ?? 0;
    return [
      `${plural(pieces, 'piece', 'pieces')} of a product that lies ${assumedMargin_pct} % above its minimum and scatters by ${assumedCov_pct} %: the chance that all pass is ${all}; that they show the mean to lie above the minimum, ${mean}; that they show 95 % of all such pieces to, ${share}.`,
      `${plural(pieces, 'pass', 'passes')} and no failure bound the good share of all such pieces at ${chanceWords(run)} only (95 % confidence, no distribution taken).`,
    ];
  });
}

function rangeWords(chances: readonly number[]): string | null {
  if (chances.length === 0) return null;
  const [least, most] = [chanceWords(Math.min(...chances)), chanceWords(Math.max(...chances))];
  return least === most ? least : `${least} to ${most}`;
}

function apart({ nominalSize_mm, differences }: SizeBrief): string[] {
  const plan = differences.find(({ basis }) => basis === 'assumed');
  if (!plan || plan.difference90_pct.value === null) return [];
  const { pieces, difference90_pct, piecesFor90 } = plan;
  const needed = piecesFor90.value === null ? '' : ` For 5 % it takes ${piecesFor90.value} pieces of each.`;
  return [
    `${nominalSize_mm} mm: with ${pieces} pieces of each, means that differ by ${figure(difference90_pct.value ?? 0, 2)} % are told apart with a chance of 90 %.${needed}`,
  ];
}

function unsuited(rigs: readonly RigBrief[]): string[] {
  return rigs.flatMap(({ rig, checks }) => {
    const sizes = checks
      .filter(({ check }) => check.isSuited === false)
      .map(({ nominalSize_mm }) => `${nominalSize_mm} mm`);
    return sizes.length === 0 ? [] : [`${rig} does not suit the forces expected of ${list([...new Set(sizes)])}.`];
  });
}
