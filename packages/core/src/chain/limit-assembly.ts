import { tidy } from './bench-unit.ts';
import type { Choice, Finding } from './choice.ts';
import { nominalArea_mm2, standardGravity_m_per_s2 } from './grade-formula.ts';
import { limitStatement } from './limit-statement.ts';
import { mergeProvenance, withMarks } from './provenance.ts';
import { otherProofForces } from './rule-finding.ts';
import { type Limit, type Quantity, quantityUnits } from './specification.ts';
import { studLinkDimensions } from './stud-link-dimension.ts';
import { findInTables } from './table-finding.ts';
import { findValue } from './value-finding.ts';

/** A limit before its words: numbers and the findings it rests on, the principal one first. */
export interface LimitDraft {
  readonly quantity: Quantity;
  readonly lower?: number | null;
  readonly upper?: number | null;
  readonly nominal?: number | null;
  readonly links?: number;
  readonly parts: readonly Finding[];
  readonly note?: string;
}

/** Every limit that the rulebook has for a choice, in the order in which a piece is gauged, weighed and pulled. */
export function limitsOf(choice: Choice): readonly Limit[] {
  const drafts: readonly (LimitDraft | null)[] = [
    diameter(choice),
    oneSided(choice, 'weldDiameter', { upper: 'weldDiameterMax' }),
    pitch(choice),
    oneSided(choice, 'innerWidth', { lower: 'innerWidthMin' }),
    oneSided(choice, 'outerWidth', { upper: 'outerWidthMax' }),
    oneSided(choice, 'outerLength', { lower: 'outerLengthMin', upper: 'outerLengthMax' }),
    lengthOverLinks(choice),
    nominalOnly(choice, 'massPerMetre'),
    nominalOnly(choice, 'workingLoadLimit') ?? limitFromStress(choice),
    proofForce(choice),
    oneSided(choice, 'breakingForce', { lower: 'breakingForceMin' }),
    oneSided(choice, 'elongation', { lower: 'elongationMin' }),
    oneSided(choice, 'bendDeflection', { lower: 'bendDeflectionMin' }),
  ];
  const special = studLinkDimensions(choice);
  const replaced = new Set(special.map((draft) => draft.quantity));
  const kept = drafts.filter((draft) => draft !== null && !replaced.has(draft.quantity));
  return [...special, ...kept].flatMap((draft) => (draft === null ? [] : [finish(choice, draft)]));
}

function finish({ standard }: Choice, draft: LimitDraft): Limit {
  const numbers = {
    lower: draft.lower ?? null,
    upper: draft.upper ?? null,
    nominal: draft.nominal ?? null,
    links: draft.links ?? null,
  };
  return {
    quantity: draft.quantity,
    unit: quantityUnits[draft.quantity],
    ...numbers,
    statement: limitStatement(draft.quantity, numbers),
    standard: standard.entry.id,
    edition: standard.entry.edition,
    place: [...new Set(draft.parts.map((part) => part.place))].join('; '),
    provenance: withMarks(mergeProvenance(draft.parts.map((part) => part.provenance)), { note: draft.note ?? null }),
  };
}

function oneSided(
  choice: Choice,
  quantity: Quantity,
  sides: { readonly lower?: string; readonly upper?: string },
): LimitDraft | null {
  const lower = sides.lower === undefined ? null : findValue(choice, sides.lower);
  const upper = sides.upper === undefined ? null : findValue(choice, sides.upper);
  const parts = [lower, upper].filter((part) => part !== null);
  return parts.length === 0 ? null : { quantity, lower: lower?.value ?? null, upper: upper?.value ?? null, parts };
}

function proofForce(choice: Choice): LimitDraft | null {
  const found = findValue(choice, 'proofForce');
  if (found === null) return null;
  const provenance = withMarks(found.provenance, otherProofForces(choice));
  return { quantity: 'proofForce', lower: found.value, parts: [{ ...found, provenance }] };
}

function nominalOnly(choice: Choice, quantity: 'massPerMetre' | 'workingLoadLimit'): LimitDraft | null {
  const found = findValue(choice, quantity);
  return found === null ? null : { quantity, nominal: found.value, parts: [found] };
}

/** Diameter of the plain leg: nominal size with its deviations, or only the size where the table gives that as a reading. */
function diameter(choice: Choice): LimitDraft | null {
  const nominal = choice.size.size_mm;
  const columns = findInTables(choice, 'diameterTolerance');
  const deviation = columns[0] ?? findValue(choice, 'diameterTolerance');
  if (deviation === null) {
    const size = findInTables(choice, 'nominalSize').find((found) => found.provenance.citations.length > 0);
    return size === undefined ? null : { quantity: 'diameter', nominal, parts: [size] };
  }
  const below = columns.find((found) => found.value < 0);
  return {
    quantity: 'diameter',
    lower: tidy(nominal + (below?.value ?? -deviation.value)),
    upper: tidy(nominal + deviation.value),
    nominal,
    parts: below === undefined ? [deviation] : [deviation, below],
  };
}

/** Pitch with its deviations; a standard that gives the upper one alone means the same below (EN 818: +/-3 %). */
function pitch(choice: Choice): LimitDraft | null {
  const nominal = findValue(choice, 'pitch');
  const upper = findValue(choice, 'pitchUpper');
  if (nominal === null) return null;
  if (upper === null) return { quantity: 'pitch', nominal: nominal.value, parts: [nominal] };
  const lower = findValue(choice, 'pitchLower');
  return {
    quantity: 'pitch',
    lower: tidy(nominal.value + (lower?.value ?? -upper.value)),
    upper: tidy(nominal.value + upper.value),
    nominal: nominal.value,
    parts: lower === null ? [nominal, upper] : [nominal, upper, lower],
  };
}

function lengthOverLinks(choice: Choice): LimitDraft | null {
  const nominal = findValue(choice, 'gaugeLength11');
  if (nominal === null) return null;
  const upper = findValue(choice, 'gaugeLength11Upper');
  const lower = findValue(choice, 'gaugeLength11Lower');
  const notes = [
    hasClasses(choice) ? classNote(choice) : null,
    upper === null ? 'the upper deviation was not found' : null,
    lower === null ? 'the lower deviation was not found' : null,
  ].filter((note) => note !== null);
  return {
    quantity: 'lengthOverLinks',
    lower: lower === null ? null : tidy(nominal.value + lower.value),
    upper: upper === null ? null : tidy(nominal.value + upper.value),
    nominal: nominal.value,
    links: 11,
    parts: [nominal, upper, lower].filter((part) => part !== null),
    ...(notes.length === 0 ? {} : { note: notes.join('; ') }),
  };
}

function hasClasses({ standard }: Choice): boolean {
  return standard.entry.tables.some((table) => Object.keys(table.columns).some((name) => /^class[AB]/.test(name)));
}

function classNote({ lengthClass }: Choice): string {
  const other = lengthClass === 'B' ? 'class A is narrower' : 'class B is wider';
  return `tolerance class ${lengthClass} of the length over links; ${other}`;
}

/** Working load limit from a mean stress over both legs, where the standard gives the stress alone (hoist chain). */
function limitFromStress(choice: Choice): LimitDraft | null {
  const stress = findValue(choice, 'stressAtWll');
  if (stress === null) return null;
  const force_kN = (stress.value * nominalArea_mm2(choice.size.size_mm)) / 1000;
  const part = { ...stress, provenance: withMarks(stress.provenance, { flags: ['derived'] }) };
  return {
    quantity: 'workingLoadLimit',
    nominal: tidy(force_kN / standardGravity_m_per_s2),
    parts: [part],
    note: `${stress.value} N/mm2 over both legs, not rounded`,
  };
}
