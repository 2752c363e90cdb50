import { tidy } from './bench-unit.ts';
import type { Choice, Finding } from './choice.ts';
import { studLinkLoad_kN } from './grade-formula.ts';
import { hoistTypes } from './grade-selection.ts';
import { citationOf, provenanceOf } from './provenance.ts';
import { evaluateExpression } from './rule-expression.ts';
import { type RuleVariables, ruleFunction } from './rule-function.ts';
import type { Rule } from './rulebook.ts';
import type { Provenance } from './specification.ts';

/** Rules that speak of one grade only without carrying it as a field. */
const gradeOfRule: Readonly<Record<string, string>> = { 'ISO 4565 bf30': '30', 'ISO 4565 bf40': '40' };

/** Looks up another quantity that a rule builds on; null where there is none. */
export type LookUp = (quantity: string) => number | null;

/** A value by the first rule of the standard that gives one for the quantity, size and grade; null where none does. */
export function findInRules(choice: Choice, quantity: string, lookUp: LookUp): Finding | null {
  for (const rule of choice.standard.entry.rules) {
    if (!ruleApplies(rule, choice, quantity)) continue;
    const value = ruleValue(rule, choice, { quantity, lookUp });
    if (value !== null && Number.isFinite(value)) return ruleFinding(rule, choice, tidy(value));
  }
  return null;
}

/** The rule of a standard by its id; null where it has none. */
export function ruleById(choice: Choice, id: string): Rule | null {
  return choice.standard.entry.rules.find((rule) => rule.id === id) ?? null;
}

/** A finding from a rule: its statement becomes the note, its other values the alternatives. */
export function ruleFinding(rule: Rule, choice: Choice, value: number): Finding {
  return {
    value,
    place: `rule ${rule.id}`,
    provenance: provenanceOf({
      ids: rule.sources,
      sources: choice.standard.sources,
      crossChecked: rule.crossChecked,
      flags: rule.js === undefined ? [] : ['derived'],
      alternatives: ruleAlternatives(rule, choice),
      notes: [
        rule.statement,
        rule.note,
        ...(rule.alternatives ?? []).map(({ value: other, appliesTo }) =>
          other === undefined ? undefined : `${other}${rule.unit ?? ''} for ${appliesTo ?? 'another case'}`,
        ),
      ],
    }),
  };
}

function ruleApplies(rule: Rule, { standard, grade }: Choice, quantity: string): boolean {
  // The ASTM rule turns a force into a grade number: it is a definition, not a limit.
  if (rule.id === 'grade') return false;
  const ruleGrade = rule.grade ?? gradeOfRule[`${standard.entry.id} ${rule.id}`];
  if (ruleGrade !== undefined && ruleGrade !== grade.base) return false;
  return rule.quantity === quantity || (rule.coefficients !== undefined && quantity === 'proofForce');
}

interface Wanted {
  readonly quantity: string;
  readonly lookUp: LookUp;
}

function ruleValue(rule: Rule, choice: Choice, wanted: Wanted): number | null {
  if (rule.js === undefined) return fixedValue(rule, choice);
  const variables = variablesFor(rule, choice, wanted);
  if (choice.standard.isOwn) return evaluateExpression(rule.js, { ...variables });
  return ruleFunction(choice.standard.entry.id, rule.id)?.(variables) ?? null;
}

/** A value that holds for every size: a number, or one for each type of hoist chain. */
function fixedValue(rule: Rule, { grade }: Choice): number | null {
  const { value } = rule;
  if (typeof value === 'number') return value;
  const position = hoistTypes.indexOf(grade.base ?? '');
  if (!Array.isArray(value) || value.length !== hoistTypes.length || position < 0) return null;
  const entry: unknown = value[position];
  return typeof entry === 'number' ? entry : null;
}

function variablesFor(rule: Rule, choice: Choice, { quantity, lookUp }: Wanted): RuleVariables {
  const { form } = choice.grade;
  const k = coefficientOf(rule, choice, quantity);
  const p = quantity === 'pitch' ? null : lookUp('pitch');
  // The pitch and the breaking force come first: neither may wait for the other.
  const breakingForce = quantity === 'pitch' || quantity === 'breakingForceMin' ? null : lookUp('breakingForceMin');
  return {
    d: choice.size.size_mm,
    ...(form === null ? {} : { stud: form === 'stud' }),
    ...(k === null ? {} : { k }),
    ...(p === null ? {} : { p }),
    ...(breakingForce === null ? {} : { breakingForce }),
  };
}

function coefficientOf(rule: Rule, { grade }: Choice, quantity: string): number | null {
  const coefficients = rule.coefficients?.[grade.base ?? ''];
  if (coefficients === undefined) return null;
  if (quantity === 'breakingForceMin') return coefficients.breaking ?? null;
  const { proof, proofStud, proofStudless } = coefficients;
  if (proof !== undefined) return proof;
  if (grade.form !== null) return (grade.form === 'stud' ? proofStud : proofStudless) ?? null;
  return proofStud === proofStudless ? (proofStud ?? null) : null;
}

function ruleAlternatives(rule: Rule, choice: Choice): Provenance['alternatives'] {
  return (rule.alternatives ?? []).flatMap(({ value, sources, source }) =>
    value === undefined ? [] : [{ value, citation: citationText(sources?.[0] ?? source, choice) }],
  );
}

function citationText(id: string | undefined, { standard }: Choice): string {
  return id === undefined ? 'source not stated' : citationOf(id, standard.sources).text;
}

/** Proof forces that other coefficients published for the grade would give (UR W22, R3). */
export function otherProofForces(choice: Choice): Pick<Provenance, 'alternatives' | 'note'> {
  const { grade, size, standard } = choice;
  const found = standard.entry.rules.flatMap((rule) => {
    if (rule.coefficients === undefined) return [];
    return (rule.alternatives ?? []).flatMap((other) => {
      const k = other[grade.form === 'stud' ? 'proofStud' : 'proofStudless'];
      if (other.grade !== grade.base || typeof k !== 'number') return [];
      const value = tidy(studLinkLoad_kN(k, size.size_mm));
      return [{ value, citation: citationText(other.source, choice), note: other.note ?? null }];
    });
  });
  return {
    alternatives: found.map(({ value, citation }) => ({ value, citation })),
    note: found.map(({ note }) => note).join('; ') || null,
  };
}
