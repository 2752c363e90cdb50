import { tidy } from './bench-unit.ts';
import type { Choice, Finding } from './choice.ts';
import type { LimitDraft } from './limit-assembly.ts';
import { provenanceOf } from './provenance.ts';
import { ruleById, ruleFinding } from './rule-finding.ts';
import type { Rule } from './rulebook.ts';
import { findValue } from './value-finding.ts';

const linksInGauge = 5;

/**
 * Dimensions of stud-link and offshore mooring chain, whose rules state tolerances in forms of their own: a minus
 * deviation that steps with size, a percentage for all other dimensions, and the length over five links.
 * Source: IACS UR W18 and W22; the tolerances are from memory and marked so.
 */
export function studLinkDimensions(choice: Choice): readonly LimitDraft[] {
  if (choice.standard.isOwn || !choice.standard.entry.id.startsWith('IACS')) return [];
  const tolerance = ruleById(choice, 'diameterTolerance');
  const drafts = [
    tolerance === null ? null : crownDiameter(choice, tolerance),
    tolerance === null ? null : withinPercentage(choice, tolerance, { quantity: 'pitch', column: 'pitch' }),
    tolerance === null
      ? null
      : withinPercentage(choice, tolerance, { quantity: 'outerWidth', column: 'outerWidthMax' }),
    fiveLinks(choice),
  ];
  return drafts.filter((draft) => draft !== null);
}

function crownDiameter(choice: Choice, tolerance: Rule): LimitDraft | null {
  const d = choice.size.size_mm;
  const minus = minusDeviation(tolerance, d);
  const plusPct = valueAt(tolerance, 'plusPct');
  if (minus === null || plusPct === null) return null;
  return {
    quantity: 'diameter',
    lower: tidy(d - minus),
    upper: tidy(d * (1 + plusPct / 100)),
    nominal: d,
    parts: [ruleFinding(tolerance, choice, minus)],
  };
}

/** The deviation of the first step whose upper size is not exceeded. */
function minusDeviation(tolerance: Rule, d: number): number | null {
  const steps = field(tolerance, 'minusByUpperSize');
  if (typeof steps !== 'object' || steps === null) return null;
  const sized = Object.entries(steps).flatMap(([size, minus]) =>
    size === 'over' ? [] : [{ size: Number(size), minus }],
  );
  const step = sized.sort((a, b) => a.size - b.size).find(({ size }) => d <= size);
  return step?.minus ?? steps.over ?? null;
}

function withinPercentage(
  choice: Choice,
  tolerance: Rule,
  wanted: { readonly quantity: 'pitch' | 'outerWidth'; readonly column: string },
): LimitDraft | null {
  const nominal = findValue(choice, wanted.column);
  const pct = valueAt(tolerance, 'otherPct');
  if (nominal === null || pct === null) return null;
  return {
    quantity: wanted.quantity,
    lower: tidy(nominal.value * (1 - pct / 100)),
    upper: tidy(nominal.value * (1 + pct / 100)),
    nominal: nominal.value,
    parts: [nominal, ruleFinding(tolerance, choice, pct)],
  };
}

/** The rules state the outside length over five links, 5 p + 2 d; the limit is on the sum of the five pitches. */
function fiveLinks(choice: Choice): LimitDraft | null {
  const rule = ruleById(choice, 'fiveLinks');
  const bounds = rule === null ? null : outsideLengthOverSize(rule);
  if (rule === null || bounds === null) return null;
  const d = choice.size.size_mm;
  const parts: Finding[] = [ruleFinding(rule, choice, bounds.lower * d)];
  if (rule.tolerance !== undefined) {
    const ids = rule.tolerance.sources;
    const provenance = provenanceOf({ ids, sources: choice.standard.sources, crossChecked: false });
    parts.push({ value: rule.tolerance.upperPct, place: `rule ${rule.id}`, provenance });
  }
  return {
    quantity: 'lengthOverLinks',
    lower: tidy((bounds.lower - 2) * d),
    upper: tidy((bounds.upper - 2) * d),
    nominal: tidy((bounds.lower - 2) * d),
    links: linksInGauge,
    parts,
    note: `stated as an outside length of ${bounds.lower} d to ${bounds.upper} d; the sum of pitches is that less 2 d`,
  };
}

function outsideLengthOverSize(rule: Rule): { readonly lower: number; readonly upper: number } | null {
  if (rule.tolerance !== undefined) {
    const { upperPct, lowerPct } = rule.tolerance;
    const nominal = 4 * linksInGauge + 2;
    return { lower: tidy(nominal * (1 + lowerPct / 100)), upper: tidy(nominal * (1 + upperPct / 100)) };
  }
  if (!Array.isArray(rule.value)) return null;
  const [lower, upper]: readonly unknown[] = rule.value;
  return typeof lower === 'number' && typeof upper === 'number' ? { lower, upper } : null;
}

function field(rule: Rule, name: string): number | Readonly<Record<string, number>> | null {
  const { value } = rule;
  if (typeof value !== 'object' || value === null || Array.isArray(value)) return null;
  // `Array.isArray` does not narrow a readonly array away; what is left is the record.
  return (value as Readonly<Record<string, number | Readonly<Record<string, number>>>>)[name] ?? null;
}

function valueAt(rule: Rule, name: string): number | null {
  const value = field(rule, name);
  return typeof value === 'number' ? value : null;
}
