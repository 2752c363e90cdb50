import type { Calculation, CalculationInput } from './calculation.ts';
import { calculations } from './reckoning.ts';

/**
 * Fields that mean something else than their key says elsewhere, as `calculation.key` for an input and `calculation>key` for a result:
 * a minimum is not a measured force, the force at parting not the maximum, a grade reached not the grade claimed, a factor found not a
 * factor agreed beforehand. All other fields with one key mean one thing.
 */
const otherMeanings: Readonly<Record<string, string>> = {
  'working-load-limit.breakingForce_kN': 'minimumForce_kN',
  'grade-breaking-force>breakingForce_kN': 'minimumForce_kN',
  'pieces-for-share.limit_kN': 'minimumForce_kN',
  'pieces-for-mean.limit_kN': 'minimumForce_kN',
  'chance-all-pass.limit_kN': 'minimumForce_kN',
  'strength-split.breakingForce_kN': 'force_kN',
  'force-uncertainty>value_kN': 'force_kN',
  'parting-energy.force_kN': 'partingForce_kN',
  'grade-of-chain>grade': 'reachedGrade',
  'nominal-area>area_mm2': 'nominalArea_mm2',
  'area-uncertainty.first_mm': 'diameter1_mm',
  'area-uncertainty.second_mm': 'diameter2_mm',
  'area-uncertainty>value_mm2': 'area_mm2',
  'area-uncertainty>standardUncertainty_mm2': 'areaUncertainty_mm2',
  'force-uncertainty>standardUncertainty_kN': 'forceUncertainty_kN',
  'rig-class-uncertainty>standardUncertainty_kN': 'forceUncertainty_kN',
  'length-over-links>sumOfPitches_mm': 'gaugeLength_mm',
  'zinc-thickness-uncertainty>value_um': 'thickness_um',
  'zinc-thickness-uncertainty>standardUncertainty_um': 'thicknessUncertainty_um',
  'elongation-uncertainty.class': 'extensionClass',
  'elongation-uncertainty.resolution_mm': 'extensionResolution_mm',
  'zinc-thickness-uncertainty.readings': 'zincReadings',
  'scatter-reliability.readings': 'scatterReadings',
  'force-uncertainty.certificateFactor': 'rigCertificateFactor',
  'difference-power.pieces': 'piecesOfEach',
  'pieces-for-difference>pieces': 'piecesOfEach',
  'pieces-for-shares>pieces': 'piecesForShares',
  'pieces-for-fraction>pieces': 'piecesProved',
};

/** Keys whose result is never what an input of the same key asks for. */
const otherResults: Readonly<Record<string, string>> = {
  coverageFactor: 'factorFound',
  power_pct: 'powerReached_pct',
  effectiveFreedom: 'degreesOfFreedom',
};

/**
 * What a field means, as one word for all fields that mean the same in whatever calculation; a value may be kept from one to the next.
 * The conversion of forces shares nothing: it takes exactly one of its fields.
 */
export function meaningOf(calculation: string, key: string, side: 'input' | 'result'): string {
  const field = `${calculation}${side === 'input' ? '.' : '>'}${key}`;
  if (calculation === 'convert-force') return field;
  return otherMeanings[field] ?? (side === 'result' ? otherResults[key] : undefined) ?? key;
}

/** An input that a result may be sent into. */
export interface TakingInput {
  readonly calculation: Calculation;
  readonly input: CalculationInput;
  /** It means what the result means; else only the unit fits, and the reader must know what is meant. */
  readonly isSame: boolean;
}

/** The inputs a value may be sent into: first those of the same meaning, then those of the same key or unit. */
export function inputsThatTake(value: {
  readonly calculation: string;
  readonly key: string;
  readonly unit: string;
}): readonly TakingInput[] {
  const meaning = meaningOf(value.calculation, value.key, 'result');
  const taking = calculations.flatMap((calculation) =>
    calculation.inputs.flatMap((input): readonly TakingInput[] => {
      const isSame = meaningOf(calculation.name, input.key, 'input') === meaning;
      return isSame || fits(value, input) ? [{ calculation, input, isSame }] : [];
    }),
  );
  return taking.toSorted((a, b) => Number(b.isSame) - Number(a.isSame));
}

function fits({ key, unit }: { readonly key: string; readonly unit: string }, input: CalculationInput): boolean {
  if (input.choices !== undefined) return false;
  if (unit === '') return input.key === key && input.unit === '';
  return input.unit === unit || input.unit === 'any' || unit === 'any';
}
