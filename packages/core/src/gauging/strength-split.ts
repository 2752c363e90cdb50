import { meanStress_N_per_mm2, nominalArea_mm2 } from '../chain/grade-formula.ts';
import { rulebook } from '../chain/rulebook.ts';
import { InputError } from '../errors.ts';
import { splitSentence } from './split-sentence.ts';

/** What {@link strengthSplit} works from. */
export interface StrengthInputs {
  readonly breakingForce_kN: number;
  /** The pull ended, clipped or broke in the grip before the true breaking force. */
  readonly isAtLeast?: boolean | undefined;
  /** Measured steel area of both legs. */
  readonly steelArea_mm2: number;
  readonly nominalSize_mm: number;
  /** Mean stress of the grade claimed; or give the minimum breaking force. Null or absent: nothing was claimed. */
  readonly specifiedStress_N_per_mm2?: number | null | undefined;
  /** Used for the stress where that is not given: minimum over the nominal area. */
  readonly minimumBreakingForce_kN?: number | null | undefined;
  /** Standard uncertainties. */
  readonly uncertainties?:
    | { readonly breakingForce_kN?: number | null; readonly steelArea_mm2?: number | null }
    | undefined;
}

/** Breaking force split into what the size and what the steel contribute. */
export interface StrengthSplit {
  /** All strengths below are lower bounds. */
  readonly isAtLeast: boolean;
  readonly stressOverMeasuredArea_N_per_mm2: number;
  readonly stressOverNominalArea_N_per_mm2: number;
  readonly nominalArea_mm2: number;
  /** Measured over nominal area: above 1 is a fat bar. */
  readonly sizeFactor: number;
  /** Stress over measured area against the stress of the grade; null where nothing was claimed. */
  readonly steelFactor: number | null;
  /** Force against the minimum: size factor times steel factor. */
  readonly totalFactor: number | null;
  /** A tenth of the stress over measured area: the grade number the steel itself bears. */
  readonly honestGrade: number;
  /** Highest standard grade number the steel reaches; null below the lowest. */
  readonly standardGrade: number | null;
  /** The same, reached even when the stress is lowered by twice its standard uncertainty; null where none is known. */
  readonly guardedStandardGrade: number | null;
  /** Standard uncertainties; null where a part of them is not known. */
  readonly stressUncertainty_N_per_mm2: number | null;
  readonly sizeFactorUncertainty: number | null;
  readonly steelFactorUncertainty: number | null;
  readonly sentence: string;
}

/** US grade numbers that the grade-stress table of EN and ISO does not have (ASTM A413). */
const furtherGrades: readonly number[] = [30, 43, 70];

/** Grade numbers of the standards, ascending: a tenth of the mean stress at the minimum breaking force. */
export const standardGrades: readonly number[] = [
  ...new Set([
    ...furtherGrades,
    ...rulebook.general.gradeStress.rows.flatMap(({ value }) => (value === null ? [] : [value / 10])),
  ]),
].sort((a, b) => a - b);

/**
 * The steel-versus-size split. A chain can pass its minimum breaking force because its steel is strong or because its
 * bar is fat; the force alone does not say which. Force over minimum = (measured over nominal area) x (stress over the
 * measured area against the stress of the grade).
 *
 * @param inputs force in kN, area in mm2, size in mm, stress in N/mm2; all above 0
 * @throws InputError `gauging/strength` naming every input that is not a number above 0
 * Source: the grade definition (ASTM A413/A413M scope, EN 818-1); uncertainties by JCGM 100:2008 5.1.6.
 */
export function strengthSplit(inputs: StrengthInputs): StrengthSplit {
  requirePositive(inputs);
  const { breakingForce_kN, steelArea_mm2, nominalSize_mm } = inputs;
  const nominal_mm2 = nominalArea_mm2(nominalSize_mm);
  const specified = specifiedStress(inputs, nominal_mm2);
  const stress = meanStress_N_per_mm2(breakingForce_kN, { area_mm2: steelArea_mm2 });
  const overNominal = meanStress_N_per_mm2(breakingForce_kN, { area_mm2: nominal_mm2 });
  const sizeFactor = steelArea_mm2 / nominal_mm2;
  const steelFactor = specified === null ? null : stress / specified;
  const relative = relativeUncertainties(inputs);
  const split = {
    isAtLeast: inputs.isAtLeast ?? false,
    stressOverMeasuredArea_N_per_mm2: stress,
    stressOverNominalArea_N_per_mm2: overNominal,
    nominalArea_mm2: nominal_mm2,
    sizeFactor,
    steelFactor,
    totalFactor: specified === null ? null : overNominal / specified,
    honestGrade: stress / 10,
    standardGrade: gradeReached(stress),
    guardedStandardGrade: relative.stress === null ? null : gradeReached(stress * (1 - 2 * relative.stress)),
    stressUncertainty_N_per_mm2: relative.stress === null ? null : stress * relative.stress,
    sizeFactorUncertainty: relative.area === null ? null : sizeFactor * relative.area,
    steelFactorUncertainty: relative.stress === null || steelFactor === null ? null : steelFactor * relative.stress,
  };
  return { ...split, sentence: splitSentence(split) };
}

/** A stress a rounding error below a grade still reaches it. */
function gradeReached(stress_N_per_mm2: number): number | null {
  return standardGrades.findLast((grade) => stress_N_per_mm2 * (1 + 1e-12) >= grade * 10) ?? null;
}

function specifiedStress(inputs: StrengthInputs, nominal_mm2: number): number | null {
  const { specifiedStress_N_per_mm2, minimumBreakingForce_kN } = inputs;
  if (typeof specifiedStress_N_per_mm2 === 'number') return specifiedStress_N_per_mm2;
  if (typeof minimumBreakingForce_kN !== 'number') return null;
  return meanStress_N_per_mm2(minimumBreakingForce_kN, { area_mm2: nominal_mm2 });
}

function relativeUncertainties(inputs: StrengthInputs): {
  readonly area: number | null;
  readonly stress: number | null;
} {
  const force = inputs.uncertainties?.breakingForce_kN ?? null;
  const area = inputs.uncertainties?.steelArea_mm2 ?? null;
  return {
    area: area === null ? null : area / inputs.steelArea_mm2,
    stress:
      force === null || area === null ? null : Math.hypot(force / inputs.breakingForce_kN, area / inputs.steelArea_mm2),
  };
}

function requirePositive(inputs: StrengthInputs): void {
  const { breakingForce_kN, steelArea_mm2, nominalSize_mm, specifiedStress_N_per_mm2, minimumBreakingForce_kN } =
    inputs;
  const values = {
    breakingForce_kN,
    steelArea_mm2,
    nominalSize_mm,
    specifiedStress_N_per_mm2,
    minimumBreakingForce_kN,
  };
  const faults = Object.entries(values).flatMap(([name, value]) =>
    value === undefined || value === null || (Number.isFinite(value) && value > 0) ? [] : [`${name} = ${value}`],
  );
  if (faults.length === 0) return;
  throw new InputError('gauging/strength', `These must be numbers above 0: ${faults.join(', ')}.`, { faults });
}
