import { strengthSplit } from '../gauging/strength-split.ts';
import { type Calculation, given, optional, positive } from './calculation.ts';

/** The steel-versus-size split, and the energy a parting releases. */
export const strengthCalculations: readonly Calculation[] = [
  {
    name: 'strength-split',
    title: 'Steel or size: where the strength of a chain comes from',
    formula:
      'σ = 1000 F / A; size factor A / ((π/2) d²); steel factor σ / (10 G); total = size factor · steel factor; (u/σ)² = (u(F)/F)² + (u(A)/A)²',
    inputs: [
      positive('breakingForce_kN', 'kN', 'measured breaking force'),
      positive('area_mm2', 'mm2', 'measured steel area of both legs'),
      positive('size_mm', 'mm', 'nominal size'),
      optional('grade', '', 'grade claimed, a tenth of the stress in N/mm2'),
      optional('forceUncertainty_kN', 'kN', 'standard uncertainty of the force'),
      optional('areaUncertainty_mm2', 'mm2', 'standard uncertainty of the area'),
    ],
    outputs: [
      { key: 'stressOverMeasuredArea_N_per_mm2', unit: 'N/mm2', meaning: 'force over measured area' },
      { key: 'stressOverNominalArea_N_per_mm2', unit: 'N/mm2', meaning: 'force over nominal area' },
      { key: 'sizeFactor', unit: '', meaning: 'measured over nominal area' },
      { key: 'steelFactor', unit: '', meaning: 'stress over measured area against the grade; none without a grade' },
      { key: 'totalFactor', unit: '', meaning: 'force against the minimum; none without a grade' },
      { key: 'honestGrade', unit: '', meaning: 'grade number the steel bears over its measured area' },
      { key: 'standardGrade', unit: '', meaning: 'highest standard grade it reaches; none below the lowest' },
      { key: 'stressUncertainty_N_per_mm2', unit: 'N/mm2', meaning: 'standard uncertainty; none without both parts' },
      { key: 'sentence', unit: '', meaning: 'the split in words' },
    ],
    source: 'Grade definition (ASTM A413/A413M scope, EN 818-1); uncertainty by JCGM 100:2008 5.1.6',
    example: { breakingForce_kN: 33.2, area_mm2: 107.6, size_mm: 8, grade: 30 },
    compute: computeSplit,
  },
  {
    name: 'parting-energy',
    title: 'Elastic energy held by a pull, set free at parting',
    formula: 'E = F² / (2 K)',
    doubts: () => ['Beyond the knee the true figure differs: the spring is no longer linear.'],
    inputs: [
      positive('force_kN', 'kN', 'force at parting'),
      positive('stiffness_kN_per_mm', 'kN/mm', 'stiffness of chain and frame together'),
    ],
    outputs: [{ key: 'energy_J', unit: 'J', meaning: 'F^2 / (2 K)' }],
    source: 'Elastic energy of a linear spring; beyond the knee the true figure differs',
    example: { force_kN: 50, stiffness_kN_per_mm: 10 },
    // kN2 over kN/mm is kN mm, which is J.
    compute: (inputs) => ({ energy_J: given(inputs, 'force_kN') ** 2 / (2 * given(inputs, 'stiffness_kN_per_mm')) }),
  },
];

function computeSplit(inputs: Readonly<Record<string, number>>): Record<string, number | string | null> {
  const grade = inputs.grade;
  const split = strengthSplit({
    breakingForce_kN: given(inputs, 'breakingForce_kN'),
    steelArea_mm2: given(inputs, 'area_mm2'),
    nominalSize_mm: given(inputs, 'size_mm'),
    specifiedStress_N_per_mm2: grade === undefined ? null : grade * 10,
    uncertainties: {
      breakingForce_kN: inputs.forceUncertainty_kN ?? null,
      steelArea_mm2: inputs.areaUncertainty_mm2 ?? null,
    },
  });
  return {
    stressOverMeasuredArea_N_per_mm2: split.stressOverMeasuredArea_N_per_mm2,
    stressOverNominalArea_N_per_mm2: split.stressOverNominalArea_N_per_mm2,
    sizeFactor: split.sizeFactor,
    steelFactor: split.steelFactor,
    totalFactor: split.totalFactor,
    honestGrade: split.honestGrade,
    standardGrade: split.standardGrade,
    stressUncertainty_N_per_mm2: split.stressUncertainty_N_per_mm2,
    sentence: split.sentence,
  };
}
