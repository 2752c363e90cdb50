import { rulebook } from '../chain/rulebook.ts';
import { InputError } from '../errors.ts';
import { type Calculation, given, optional, positive } from './calculation.ts';

const machineClasses = rulebook.general.machineAccuracy.classes;
const classColumn = machineClasses.columns.indexOf('class');
const errorColumn = machineClasses.columns.indexOf('indicationError');

/** Uncertainty of the machine, and what it takes from a limit. */
export const decisionCalculations: readonly Calculation[] = [
  {
    name: 'rig-class-uncertainty',
    title: 'Standard uncertainty of a force from the class of the machine',
    formula: 'u = a / √3, with a the permitted error of the class in per cent of the force',
    doubts: () => ['The errors of the classes are from memory: check them against the certificate.'],
    inputs: [
      positive('force_kN', 'kN', 'force read'),
      {
        key: 'class',
        unit: '',
        meaning: 'accuracy class on the calibration certificate',
        required: true,
        choices: machineClasses.rows.flatMap((row) => row[classColumn] ?? []),
      },
    ],
    outputs: [
      { key: 'standardUncertainty_kN', unit: 'kN', meaning: 'permitted error as a rectangular distribution' },
      { key: 'permittedError_kN', unit: 'kN', meaning: 'largest error of indication of the class' },
    ],
    source:
      'ISO 7500-1 classes, memory; rectangular distribution: half-width over the square root of 3 (JCGM 100:2008 4.3.7)',
    example: { force_kN: 40, class: 1 },
    compute: (inputs) => {
      const row = machineClasses.rows.find((candidate) => candidate[classColumn] === given(inputs, 'class'));
      const permittedError_kN = (given(inputs, 'force_kN') * (row?.[errorColumn] ?? Number.NaN)) / 100;
      return { standardUncertainty_kN: permittedError_kN / Math.sqrt(3), permittedError_kN };
    },
  },
  {
    name: 'guard-band',
    title: 'Acceptance limit with a guard band of the expanded uncertainty',
    formula:
      'accepted from lower limit + U to upper limit − U; rejected below lower limit − U or above upper limit + U; inconclusive between',
    inputs: [
      optional('lowerLimit', 'any', 'lower limit of the specification'),
      optional('upperLimit', 'any', 'upper limit of the specification, in the same unit'),
      {
        ...positive('expandedUncertainty', 'any', 'U = k u of the value, in the same unit; 0 is simple acceptance'),
        mayBeMinimum: true,
      },
      optional('measured', 'any', 'measured value, in the same unit'),
    ],
    outputs: [
      { key: 'lowerAcceptance', unit: 'any', meaning: 'lower limit + U; none without a lower limit' },
      { key: 'upperAcceptance', unit: 'any', meaning: 'upper limit - U; none without an upper limit' },
      {
        key: 'verdict',
        unit: '',
        meaning: 'conforms, inconclusive or does not conform; none without a measured value',
      },
    ],
    source: 'ILAC-G8:09/2019 4.2, guard band w = U; JCGM 106:2012 8.3',
    example: { lowerLimit: 40, expandedUncertainty: 0.6, measured: 40.9 },
    compute: guardBand,
  },
];

function guardBand(inputs: Readonly<Record<string, number>>): Record<string, number | string | null> {
  const { lowerLimit, upperLimit, measured } = inputs;
  const guard = given(inputs, 'expandedUncertainty');
  if (lowerLimit === undefined && upperLimit === undefined) {
    throw new InputError('reckon/no-limit', 'guard-band needs lowerLimit, upperLimit or both.');
  }
  const isWithin = (value: number, band: number) =>
    (lowerLimit === undefined || value >= lowerLimit + band) &&
    (upperLimit === undefined || value <= upperLimit - band);
  const verdict = (value: number) => {
    if (isWithin(value, guard)) return 'conforms';
    return isWithin(value, -guard) ? 'inconclusive' : 'does not conform';
  };
  return {
    lowerAcceptance: lowerLimit === undefined ? null : lowerLimit + guard,
    upperAcceptance: upperLimit === undefined ? null : upperLimit - guard,
    verdict: measured === undefined ? null : verdict(measured),
  };
}
