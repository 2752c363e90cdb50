import { breakingForce_kN, gradeOf, studLinkLoad_kN, workingLoadLimitLifting_t } from './grade-formula.ts';
import { nearestR10, roundUpR20 } from './preferred-number.ts';

/** What a rule may depend on besides the nominal size. Missing ones are NaN and make the rule unusable. */
export interface RuleVariables {
  /** Nominal size, mm. */
  readonly d: number;
  /** Pitch, mm. */
  readonly p?: number;
  /** Coefficient of the grade. */
  readonly k?: number;
  /** Minimum breaking force, kN. */
  readonly breakingForce?: number;
  /** Measured breaking force, kN, for the rules that give a grade. */
  readonly mbf?: number;
  readonly stud?: boolean;
}

export type RuleFunction = (variables: RuleVariables) => number;

const timesSize =
  (factor: number): RuleFunction =>
  ({ d }) =>
    factor * d;

const atStress =
  (stress_N_per_mm2: number): RuleFunction =>
  ({ d }) =>
    breakingForce_kN(stress_N_per_mm2, d);

const stepTolerance: RuleFunction = ({ d }) => (d < 18 ? 0.04 : 0.05) * d;
const threePerCentOfPitch: RuleFunction = ({ d }) => 0.03 * 3 * d;
const gradeNumber: RuleFunction = ({ d, mbf }) => gradeOf(mbf ?? Number.NaN, d);
const studLoad: RuleFunction = ({ d, k }) => studLinkLoad_kN(k ?? Number.NaN, d);

const shortLinkSling: Readonly<Record<string, RuleFunction>> = {
  pitch: timesSize(3),
  pitchTolerance: threePerCentOfPitch,
  innerWidth: timesSize(1.3),
  outerWidth: timesSize(3.7),
  diameterTolerance: stepTolerance,
  weld: timesSize(1.1),
  bend: timesSize(0.8),
};

/**
 * Each rule that the rulebook states as an expression, as a function: standard, then rule. The expressions in the file
 * are text and are never run by the tool; a test runs them beside these so that data and code cannot drift apart.
 */
const functions: Readonly<Record<string, Readonly<Record<string, RuleFunction>>>> = {
  'EN 818-2': {
    ...shortLinkSling,
    bf: atStress(800),
    mpf: atStress(500),
    wll: ({ d }) => workingLoadLimitLifting_t(breakingForce_kN(800, d)),
  },
  'EN 818-3': {
    ...shortLinkSling,
    bf: atStress(400),
    mpf: atStress(200),
    wll: ({ d }) => workingLoadLimitLifting_t(breakingForce_kN(400, d)),
  },
  'EN 818-7': {
    weld: timesSize(1.08),
    pitch: timesSize(3),
    innerWidth: timesSize(1.2),
    outerWidth: timesSize(3.4),
    bf: atStress(800),
    mpf: atStress(500),
  },
  'ISO 3075 series': {
    bf: atStress(630),
    mpf: atStress(315),
    length: timesSize(5),
    outerWidth: timesSize(3.5),
    innerWidth: timesSize(1.25),
  },
  'PAS 1061': { bf: atStress(1000), mpf: atStress(625) },
  'DIN 766': {
    weld2015: timesSize(1.08),
    l11: ({ p }) => 11 * (p ?? Number.NaN),
    bf: ({ d }) => nearestR10(breakingForce_kN(315, d)),
    mpf: ({ breakingForce }) => (breakingForce ?? Number.NaN) / 1.6,
  },
  'ISO 4565': {
    outerWidth: timesSize(3.6),
    bf30: ({ d }) => roundUpR20(breakingForce_kN(300, d)),
    bf40: atStress(400),
  },
  'DIN 764': { pitch: timesSize(3.5), outerWidth: timesSize(3.6) },
  'DIN 763': { diameterTolerance: timesSize(0.05), innerWidth: timesSize(1.8), outerWidth: timesSize(4.2) },
  'ASTM A413/A413M': { grade: gradeNumber },
  'ASTM A391/A391M': { grade: gradeNumber },
  'ASTM A973/A973M': { grade: gradeNumber },
  'IACS UR W18': {
    load: studLoad,
    pitch: timesSize(4),
    width: timesSize(3.6),
    fiveLinks: timesSize(22),
    mass: ({ d }) => 0.0219 * d * d,
  },
  'IACS UR W22': {
    load: studLoad,
    mass: ({ d, stud }) => (stud === undefined ? Number.NaN : (stud ? 0.0219 : 0.0199) * d * d),
  },
};

/** The function behind a rule of a published standard; null where the rule is a fixed value or words. */
export function ruleFunction(standard: string, rule: string): RuleFunction | null {
  return functions[standard]?.[rule] ?? null;
}
