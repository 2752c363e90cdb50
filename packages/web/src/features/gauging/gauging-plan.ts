import {
  type GaugingPlace,
  type GaugingQuantity,
  gaugingSchedule,
  type Limit,
  lengthsToGauge,
  quantitiesToGauge,
} from '@provinghouse/core';

/** What is gauged in a campaign. Null leaves it to the specification and the piece. */
export interface GaugingPlan {
  readonly quantities: readonly GaugingQuantity[] | null;
  readonly linksToGauge: number | null;
  readonly withCrown: boolean;
  readonly linksReadAgain: number;
  readonly lengthsOver: readonly number[] | null;
}

/** All links, and what the specification limits. */
export const usualPlan: GaugingPlan = {
  quantities: null,
  linksToGauge: null,
  withCrown: false,
  linksReadAgain: 0,
  lengthsOver: null,
};

export const gaugedQuantities: readonly GaugingQuantity[] = [
  'diameter',
  'weldDiameter',
  'pitch',
  'innerWidth',
  'outerWidth',
  'outerLength',
  'lengthOverLinks',
];

/** The places of one piece by the plan; what it asks beyond the links of the piece is left out. */
export function placesOf(
  plan: GaugingPlan,
  of: { readonly links: number; readonly limits: readonly Limit[] },
): readonly GaugingPlace[] {
  const { links, limits } = of;
  const linksToGauge = Math.min(plan.linksToGauge ?? links, links);
  const lengths = (plan.lengthsOver ?? lengthsToGauge(limits, links)).filter((over) => over <= links);
  return gaugingSchedule({
    links,
    linksToGauge,
    quantities: plan.quantities ?? quantitiesToGauge(limits, links),
    withCrown: plan.withCrown,
    linksReadAgain: Math.min(plan.linksReadAgain, linksToGauge),
    lengthsOver: lengths,
  });
}

/** A plan as this browser kept it; the usual one where there is none or it cannot be read. */
export function parsePlan(kept: string): GaugingPlan {
  let found: unknown;
  try {
    found = JSON.parse(kept);
  } catch {
    return usualPlan;
  }
  if (typeof found !== 'object' || found === null) return usualPlan;
  const cells: Readonly<Record<string, unknown>> = { ...found };
  const { quantities, linksToGauge, withCrown, linksReadAgain, lengthsOver } = cells;
  return {
    quantities: Array.isArray(quantities) ? gaugedQuantities.filter((one) => quantities.includes(one)) : null,
    linksToGauge: isCount(linksToGauge) ? linksToGauge : null,
    withCrown: withCrown === true,
    linksReadAgain: isCount(linksReadAgain) ? linksReadAgain : 0,
    lengthsOver: Array.isArray(lengthsOver) ? lengthsOver.filter(isCount) : null,
  };
}

function isCount(value: unknown): value is number {
  return typeof value === 'number' && Number.isInteger(value) && value >= 1;
}

/** A count as typed: null for an empty field, undefined for anything that is no whole number from 1. */
export function countTyped(typed: string): number | null | undefined {
  const words = typed.trim();
  if (words === '') return null;
  return /^[1-9]\d{0,3}$/.test(words) ? Number(words) : undefined;
}

/** Counts as typed, with blanks or commas between; null for an empty field, undefined where one of them is no count. */
export function countsTyped(typed: string): readonly number[] | null | undefined {
  const words = typed.split(/[\s,;]+/).filter((word) => word !== '');
  if (words.length === 0) return null;
  const counts = words.map(countTyped);
  return counts.every((count) => typeof count === 'number') ? counts : undefined;
}
