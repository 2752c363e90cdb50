import {
  breakingForce_kN,
  gradeOf,
  meanStress_N_per_mm2,
  nominalArea_mm2,
  studLinkLoad_kN,
  workingLoadLimitLifting_t,
} from '../chain/grade-formula.ts';
import { type Calculation, given, optional, positive } from './calculation.ts';

const size = positive('size_mm', 'mm', 'nominal size of the chain');
const force = positive('force_kN', 'kN', 'tensile force on the chain');
const gradeSource =
  'Grade definition: mean stress over both legs at breaking, a tenth of it the grade (ASTM A413/A413M scope; EN 818-1 definitions, as restated on public pages)';

/** Grade, stress and area of a chain. */
export const gradeCalculations: readonly Calculation[] = [
  {
    name: 'grade-breaking-force',
    title: 'Minimum breaking force of a grade and size',
    formula:
      'F = 10 G · (π/2) d² / 1000: ten times the grade number G is the stress in N/mm², (π/2) d² the area of both legs',
    inputs: [positive('grade', '', 'grade number, a tenth of the stress in N/mm2: 30, 40, 80'), size],
    outputs: [
      { key: 'breakingForce_kN', unit: 'kN', meaning: 'breaking force by the grade definition, unrounded' },
      { key: 'stress_N_per_mm2', unit: 'N/mm2', meaning: 'mean stress of the grade' },
    ],
    source: gradeSource,
    example: { grade: 30, size_mm: 8 },
    compute: (inputs) => {
      const stress_N_per_mm2 = given(inputs, 'grade') * 10;
      return { breakingForce_kN: breakingForce_kN(stress_N_per_mm2, given(inputs, 'size_mm')), stress_N_per_mm2 };
    },
  },
  {
    name: 'grade-of-chain',
    title: 'Grade that a breaking force amounts to',
    formula: 'G = σ / 10, with σ = 1000 F / ((π/2) d²)',
    inputs: [force, size],
    outputs: [
      { key: 'grade', unit: '', meaning: 'grade number' },
      { key: 'stress_N_per_mm2', unit: 'N/mm2', meaning: 'mean stress over both legs' },
    ],
    source: gradeSource,
    example: { force_kN: 40, size_mm: 8 },
    compute: (inputs) => {
      const [force_kN, size_mm] = [given(inputs, 'force_kN'), given(inputs, 'size_mm')];
      return { grade: gradeOf(force_kN, size_mm), stress_N_per_mm2: meanStress_N_per_mm2(force_kN, { size_mm }) };
    },
  },
  {
    name: 'mean-stress',
    title: 'Mean stress over a measured steel area',
    formula: 'σ = 1000 F / A',
    inputs: [force, positive('area_mm2', 'mm2', 'steel area of both legs')],
    outputs: [{ key: 'stress_N_per_mm2', unit: 'N/mm2', meaning: 'force over area' }],
    source: gradeSource,
    example: { force_kN: 40, area_mm2: 100.5 },
    compute: (inputs) => ({
      stress_N_per_mm2: meanStress_N_per_mm2(given(inputs, 'force_kN'), { area_mm2: given(inputs, 'area_mm2') }),
    }),
  },
  {
    name: 'nominal-area',
    title: 'Steel area of both legs from the nominal size',
    formula: 'A = (π/2) d²',
    inputs: [size],
    outputs: [{ key: 'area_mm2', unit: 'mm2', meaning: '2 pi/4 d^2' }],
    source: gradeSource,
    example: { size_mm: 8 },
    compute: (inputs) => ({ area_mm2: nominalArea_mm2(given(inputs, 'size_mm')) }),
  },
  {
    name: 'area-from-diameters',
    title: 'Steel area of both legs from diameters read at right angles',
    formula: 'A = (π/2) d₁ d₂; over nominal A / ((π/2) d²)',
    inputs: [
      positive('diameter1_mm', 'mm', 'diameter of the plain leg'),
      positive('diameter2_mm', 'mm', 'diameter at right angles to the first'),
      optional('size_mm', 'mm', 'nominal size, to compare with'),
    ],
    outputs: [
      { key: 'area_mm2', unit: 'mm2', meaning: '2 pi/4 d1 d2, both legs taken alike' },
      { key: 'overNominal', unit: '', meaning: 'measured over nominal area; none without a nominal size' },
    ],
    source: 'Geometry: area of an ellipse, twice',
    example: { diameter1_mm: 8.1, diameter2_mm: 7.9, size_mm: 8 },
    compute: (inputs) => {
      const area_mm2 = (Math.PI / 2) * given(inputs, 'diameter1_mm') * given(inputs, 'diameter2_mm');
      const size_mm = inputs.size_mm;
      return { area_mm2, overNominal: size_mm === undefined ? null : area_mm2 / nominalArea_mm2(size_mm) };
    },
  },
  {
    name: 'working-load-limit',
    title: 'Working load limit of lifting chain from its breaking force',
    formula: 'WLL = F / (4 g), with g = 9.80665 m/s², rounded down to the R40 series',
    doubts: () => ['A pattern found in published tables, not the words of a standard.'],
    inputs: [positive('breakingForce_kN', 'kN', 'minimum breaking force, unrounded')],
    outputs: [{ key: 'workingLoadLimit_t', unit: 't', meaning: 'a quarter in tonnes, rounded down to R40' }],
    source:
      'Pattern found in the published tables of EN 818-2 and EN 818-3 (34 values); not the words of a standard. R40: ISO 3, memory',
    example: { breakingForce_kN: 80.42 },
    compute: (inputs) => ({ workingLoadLimit_t: workingLoadLimitLifting_t(given(inputs, 'breakingForce_kN')) }),
  },
  {
    name: 'stud-link-load',
    title: 'Load of stud-link or offshore mooring chain by its coefficient',
    formula: 'F = k d² (44 − 0.08 d)',
    inputs: [positive('coefficient', 'kN/mm2', 'k of the grade and load, as 0.0223 for R3 breaking'), size],
    outputs: [{ key: 'load_kN', unit: 'kN', meaning: 'k d^2 (44 - 0.08 d)' }],
    source: 'IACS UR W18 and W22, formula as used by public tables and scripts',
    example: { coefficient: 0.0223, size_mm: 50 },
    compute: (inputs) => ({ load_kN: studLinkLoad_kN(given(inputs, 'coefficient'), given(inputs, 'size_mm')) }),
  },
];
