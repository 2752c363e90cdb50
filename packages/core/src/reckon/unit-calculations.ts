import { kilonewtonsPerPoundForce } from '../chain/bench-unit.ts';
import { standardGravity_m_per_s2 } from '../chain/grade-formula.ts';
import { nearestR10, roundDownR40, roundUpR20 } from '../chain/preferred-number.ts';
import { InputError } from '../errors.ts';
import { type Calculation, type CalculationInput, given, optional, positive } from './calculation.ts';

/** Kilonewtons in one of each unit. */
const forceUnits: Readonly<
  Record<string, { readonly unit: string; readonly kilonewtons: number; readonly meaning: string }>
> = {
  force_kN: { unit: 'kN', kilonewtons: 1, meaning: 'kilonewtons' },
  force_N: { unit: 'N', kilonewtons: 1e-3, meaning: 'newtons' },
  force_lbf: { unit: 'lbf', kilonewtons: kilonewtonsPerPoundForce, meaning: 'pounds-force' },
  force_kgf: { unit: 'kgf', kilonewtons: standardGravity_m_per_s2 / 1000, meaning: 'kilograms-force' },
  force_tonf: { unit: 'tonf', kilonewtons: standardGravity_m_per_s2, meaning: 'metric tonnes-force of 1000 kgf' },
};

const value: CalculationInput = positive('value', 'any', 'the number to round');

const rounding = (facts: {
  readonly name: string;
  readonly title: string;
  readonly formula: string;
  readonly meaning: string;
  readonly round: (value: number) => number;
}): Calculation => ({
  name: facts.name,
  title: facts.title,
  formula: facts.formula,
  inputs: [value],
  outputs: [{ key: 'rounded', unit: 'any', meaning: facts.meaning }],
  source: 'ISO 3 preferred numbers, memory; chain standards print 3.15 as 3.2 and 31.5 as 32',
  example: { value: 30.2 },
  compute: (inputs) => ({ rounded: facts.round(given(inputs, 'value')) }),
});

/** Units of force, and the roundings of chain tables. */
export const unitCalculations: readonly Calculation[] = [
  {
    name: 'convert-force',
    title: 'A force in all units of the trade (give exactly one)',
    formula: '1 kN = 1000 N; 1 lbf = 0.0044482216152605 kN; 1 kgf = 9.80665 N; 1 tonf = 1000 kgf',
    inputs: Object.entries(forceUnits).map(([key, { unit, meaning }]) => optional(key, unit, meaning)),
    outputs: Object.entries(forceUnits).map(([key, { unit, meaning }]) => ({ key, unit, meaning })),
    source: 'Exact by definition: standard gravity 9.80665 m/s2 (CGPM 1901), international pound 0.45359237 kg (1959)',
    example: { force_lbf: 28250 },
    compute: convertForce,
  },
  rounding({
    name: 'round-r10',
    title: 'Nearest R10 preferred number',
    formula: 'nearest of 1, 1.25, 1.6, 2, 2.5, 3.15, 4, 5, 6.3, 8 times a power of ten',
    meaning: 'R10 number with the smallest difference',
    round: nearestR10,
  }),
  rounding({
    name: 'round-r20',
    title: 'Next R20 preferred number upward',
    formula: 'next upward of 1, 1.12, 1.25, 1.4, 1.6 … 9 times a power of ten',
    meaning: 'smallest R20 number not below the value',
    round: roundUpR20,
  }),
  rounding({
    name: 'round-r40',
    title: 'Next R40 preferred number downward',
    formula: 'next downward of 1, 1.06, 1.12, 1.18, 1.25 … 9.5 times a power of ten',
    meaning: 'largest R40 number not above the value',
    round: roundDownR40,
  }),
];

function convertForce(inputs: Readonly<Record<string, number>>): Record<string, number> {
  const [entry] = Object.entries(inputs);
  if (entry === undefined || Object.keys(inputs).length !== 1) {
    throw new InputError(
      'reckon/one-force',
      `Give exactly one of ${Object.keys(forceUnits).join(', ')}; ${Object.keys(inputs).length} were given.`,
      { given: Object.keys(inputs) },
    );
  }
  const [key, amount] = entry;
  const force_kN = amount * (forceUnits[key]?.kilonewtons ?? Number.NaN);
  return Object.fromEntries(
    Object.entries(forceUnits).map(([unit, { kilonewtons }]) => [unit, unit === key ? amount : force_kN / kilonewtons]),
  );
}
