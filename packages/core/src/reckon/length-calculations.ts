import {
  apparentStrainRate_per_s,
  forceRate_kN_per_s,
  lengthOverLinks_mm,
  linkGeometry,
  stressRate_N_per_mm2_per_s,
  totalUltimateElongation_pct,
} from '../chain/link-formula.ts';
import { type Calculation, given, positive } from './calculation.ts';

const size = positive('size_mm', 'mm', 'nominal size of the chain');
const links = positive('links', '', 'number of free links');
const pitch = positive('pitch_mm', 'mm', 'pitch: inside length of a link');

/** Lengths, elongation, rates and mass of a chain. */
export const lengthCalculations: readonly Calculation[] = [
  {
    name: 'elongation',
    title: 'Total ultimate elongation',
    formula: '100 ΔL / (n p): extension over the sum of the pitches of n free links',
    inputs: [positive('extension_mm', 'mm', 'extension at the moment of fracture'), links, pitch],
    outputs: [
      { key: 'elongation_pct', unit: '%', meaning: 'extension over the sum of inside lengths' },
      { key: 'gaugeLength_mm', unit: 'mm', meaning: 'sum of inside lengths of the free links' },
    ],
    source:
      'EN 818-1 definitions as restated on a public page; ASTM chain elongation test (links in the fixtures do not count)',
    example: { extension_mm: 25.2, links: 5, pitch_mm: 24 },
    compute: (inputs) => {
      const gaugeLength_mm = given(inputs, 'links') * given(inputs, 'pitch_mm');
      return {
        elongation_pct: totalUltimateElongation_pct(given(inputs, 'extension_mm'), gaugeLength_mm),
        gaugeLength_mm,
      };
    },
  },
  {
    name: 'length-over-links',
    title: 'Outside length of links drawn straight',
    formula: 'L = n p + 2 d',
    inputs: [links, pitch, size],
    outputs: [
      { key: 'outsideLength_mm', unit: 'mm', meaning: 'n p + 2 d' },
      { key: 'sumOfPitches_mm', unit: 'mm', meaning: 'n p' },
    ],
    source: 'Geometry; the five-link length 22 d of stud-link cable is the same identity',
    example: { links: 11, pitch_mm: 24, size_mm: 8 },
    compute: (inputs) => {
      const [count, pitch_mm] = [given(inputs, 'links'), given(inputs, 'pitch_mm')];
      return {
        outsideLength_mm: lengthOverLinks_mm({ links: count, pitch_mm, size_mm: given(inputs, 'size_mm') }),
        sumOfPitches_mm: count * pitch_mm,
      };
    },
  },
  {
    name: 'stress-rate',
    title: 'Stress rate over both legs from the force rate',
    formula: 'stress rate = 1000 · force rate / ((π/2) d²)',
    inputs: [positive('forceRate_kN_per_s', 'kN/s', 'rate of force'), size],
    outputs: [{ key: 'stressRate_N_per_mm2_per_s', unit: 'N/mm2/s', meaning: 'force rate over nominal area' }],
    source: 'Definition; no chain standard read gives a numeric limit for it',
    example: { forceRate_kN_per_s: 1, size_mm: 8 },
    compute: (inputs) => ({
      stressRate_N_per_mm2_per_s: stressRate_N_per_mm2_per_s(
        given(inputs, 'forceRate_kN_per_s'),
        given(inputs, 'size_mm'),
      ),
    }),
  },
  {
    name: 'force-rate',
    title: 'Force rate that gives a stress rate over both legs',
    formula: 'force rate = stress rate · (π/2) d² / 1000',
    inputs: [positive('stressRate_N_per_mm2_per_s', 'N/mm2/s', 'rate of mean stress'), size],
    outputs: [{ key: 'forceRate_kN_per_s', unit: 'kN/s', meaning: 'stress rate times nominal area' }],
    source: 'Definition; no chain standard read gives a numeric limit for it',
    example: { stressRate_N_per_mm2_per_s: 10, size_mm: 8 },
    compute: (inputs) => ({
      forceRate_kN_per_s: forceRate_kN_per_s(given(inputs, 'stressRate_N_per_mm2_per_s'), given(inputs, 'size_mm')),
    }),
  },
  {
    name: 'strain-rate',
    title: 'Apparent strain rate over the free links',
    formula: 'strain rate = (v / 60) / (n p), with the table speed v in mm/min',
    doubts: () => ['It holds take-up and the change of link shape: it is not the strain rate of the steel.'],
    inputs: [positive('tableSpeed_mm_per_min', 'mm/min', 'speed of the machine table'), links, pitch],
    outputs: [{ key: 'strainRate_per_s', unit: '1/s', meaning: 'table speed over the sum of pitches' }],
    source: 'Definition; it holds take-up and change of link shape, and is not the strain rate of the steel',
    example: { tableSpeed_mm_per_min: 18, links: 5, pitch_mm: 24 },
    compute: (inputs) => ({
      strainRate_per_s: apparentStrainRate_per_s({
        tableSpeed_mm_per_s: given(inputs, 'tableSpeed_mm_per_min') / 60,
        links: given(inputs, 'links'),
        pitch_mm: given(inputs, 'pitch_mm'),
      }),
    }),
  },
  {
    name: 'link-mass',
    title: 'Mass and bare surface of a plain link',
    formula:
      'centre line l = 2 (p − w) + π (w + d); mass m = 7850 · (π/4) d² l / 10⁹; per metre 1000 m / p; surface π d l',
    doubts: () => ['Without the upset of the weld; published masses lie within 4 % of it.'],
    inputs: [size, pitch, positive('innerWidth_mm', 'mm', 'inside width of a link, not above the pitch')],
    outputs: [
      { key: 'massPerMetre_kg_per_m', unit: 'kg/m', meaning: 'mass per metre of chain' },
      { key: 'linkMass_kg', unit: 'kg', meaning: 'mass of one link' },
      { key: 'surface_mm2', unit: 'mm2', meaning: 'bare surface of one link' },
    ],
    source: 'Geometry: two straight legs and two half-circles without weld upset; steel 7850 kg/m3 (common practice)',
    example: { size_mm: 8, pitch_mm: 24, innerWidth_mm: 9.6 },
    compute: (inputs) => {
      const { massPerMetre_kg_per_m, linkMass_kg, surface_mm2 } = linkGeometry({
        size_mm: given(inputs, 'size_mm'),
        pitch_mm: given(inputs, 'pitch_mm'),
        innerWidth_mm: given(inputs, 'innerWidth_mm'),
      });
      return { massPerMetre_kg_per_m, linkMass_kg, surface_mm2 };
    },
  },
];
