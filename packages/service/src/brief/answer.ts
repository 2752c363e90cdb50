import type {
  BriefFinding,
  DifferenceBrief,
  ProductBrief,
  ProductPlan,
  RigBrief,
  SizeBrief,
} from '@provinghouse/contract';
import { figure, list, plural } from '../judge/wording.ts';
import { chanceWords } from './chance-words.ts';
import { assumedCov_pct, assumedMargin_pct } from './expectation.ts';

/** The plan in a few sentences: what the pieces can show, and what they cannot. */
export function answersOf(brief: Pick<BriefFinding, 'products' | 'sizes' | 'rigs'>): string[] {
  return [...conformity(brief.products), ...apart(brief.sizes), ...unsuited(brief.rigs)];
}

function conformity(products: readonly ProductBrief[]): string[] {
  const groups = [...Map.groupBy(products, ({ pieces }) => pieces)].sort(([a], [b]) => a - b);
  return groups.flatMap(([pieces, group]) => [...showing(pieces, group), passing(pieces, group)]);
}

function showing(pieces: number, group: readonly ProductBrief[]): string[] {
  const plans = group.flatMap((product) => product.plans.filter(({ basis }) => basis === 'assumed'));
  const chances = (of: (plan: ProductPlan) => number | null) => rangeWords(plans.flatMap((plan) => of(plan) ?? []));
  const all = chances((plan) => plan.allPass.value);
  const mean = chances((plan) => plan.mean.chance.value);
  const share = chances((plan) => plan.share.chance.value);
  if (all === null || mean === null || share === null) return [];
  const enough = Math.max(...plans.map((plan) => plan.share.piecesFor90.value ?? Number.POSITIVE_INFINITY));
  const needed = Number.isFinite(enough) ? ` A chance of 90 % of that takes ${enough} pieces.` : '';
  return [
    `Take a product whose mean lies ${assumedMargin_pct} % above its minimum and whose pieces scatter by ${assumedCov_pct} %. All ${pieces} pieces of it pass with a chance of ${all}.`,
    `Those ${pieces} pieces show with a chance of ${mean} that its mean lies above the minimum, and with a chance of ${share} that 95 % of all such pieces do.${needed}`,
  ];
}

function passing(pieces: number, group: readonly ProductBrief[]): string {
  const held = chanceWords(group[0]?.passes.ifAllPass.value ?? 0);
  return `If ${plural(pieces, 'piece passes', 'pieces pass')} and none fails, at least ${held} of all such pieces would pass, however their forces scatter (95 % confidence).`;
}

function rangeWords(chances: readonly number[]): string | null {
  if (chances.length === 0) return null;
  const [least, most] = [chanceWords(Math.min(...chances)), chanceWords(Math.max(...chances))];
  return least === most ? least : `${least} to ${most}`;
}

/** Sizes of which the same can be said share a sentence. */
function apart(sizes: readonly SizeBrief[]): string[] {
  const said = sizes.flatMap(({ nominalSize_mm, differences }) => {
    const plan = differences.find(({ basis }) => basis === 'assumed');
    return plan ? differenceWords(plan).map((sentence) => ({ size: `${nominalSize_mm} mm`, sentence })) : [];
  });
  return [...Map.groupBy(said, ({ sentence }) => sentence)].map(
    ([sentence, group]) => `${list(group.map(({ size }) => size))}: ${sentence}`,
  );
}

function differenceWords({ pieces, difference90_pct, piecesFor90 }: DifferenceBrief): string[] {
  if (difference90_pct.value === null) return [];
  const needed = piecesFor90.value === null ? '' : ` A difference of 5 % takes ${piecesFor90.value} pieces of each.`;
  return [
    `with ${pieces} pieces of each, two products are told apart with a chance of 90 % if their means differ by ${figure(difference90_pct.value, 2)} %.${needed}`,
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
