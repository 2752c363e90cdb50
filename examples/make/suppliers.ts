import type { Jump, LinkMaking } from '@provinghouse/rig/practice';
import type { TraceForm } from './trace-file.ts';

/** A pause of the hand on the valve, placed by the share of the force at which the piece will part. */
export interface Pause {
  readonly share: number;
  readonly lasts_s: number;
  readonly keeps: number;
}

/** What sets one piece and its pull apart from the others of its product. */
export interface PieceStory {
  /** Strength of the piece's links relative to the product. */
  readonly level: number;
  readonly rate_Hz: 20 | 25 | 50 | 100;
  readonly form: TraceForm;
  readonly rig?: 'RIG-2';
  readonly pauses?: readonly Pause[];
  readonly jumps?: readonly { readonly kind: Jump['kind']; readonly share: number; readonly by_mm: number }[];
  /** False readings of a bad cable, by share of the pull's duration and of its maximum. */
  readonly spikes?: readonly { readonly when: number; readonly share: number }[];
  /** The recorder stopped at this share of the maximum. */
  readonly stopsAt?: number;
  /** The bar is nicked by the jaw and gives way there at this share of its strength. */
  readonly gripStrength?: number;
  /** Ductility of the piece relative to the product. */
  readonly ductility?: number;
  readonly pitchOfLink3_mm?: number;
  readonly weldOfLink3_mm?: number;
  readonly strippedForGauging?: true;
  readonly note?: string;
}

export interface Supplier {
  readonly product: string;
  readonly supplier: string;
  readonly description: string;
  readonly size_mm: 8 | 10;
  readonly specification: 'en-818-3' | 'iso-4565';
  readonly grade: '4' | '30';
  readonly price_per_metre: number;
  readonly boughtFrom: readonly [string, string];
  readonly batchMark: string;
  readonly condition: string;
  readonly making: LinkMaking;
  readonly zinc: {
    readonly mean_um: number;
    readonly scatter_um: number;
    readonly adherence: readonly [number, number];
  };
  readonly pieces: readonly PieceStory[];
}

const making8: LinkMaking = {
  diameter_mm: 8.0,
  diameterScatter_mm: 0.03,
  weldUpset_mm: 0.35,
  pitch_mm: 24.05,
  innerWidth_mm: 10.95,
  barStress_N_per_mm2: 460,
  barScatter: 0.012,
  uniformElongation: 0.3,
  faultyWelds: 0,
};
const making10: LinkMaking = {
  ...making8,
  diameter_mm: 10.02,
  diameterScatter_mm: 0.035,
  weldUpset_mm: 0.42,
  pitch_mm: 30.1,
  innerWidth_mm: 13.75,
};

const ash: Supplier = {
  product: 'ASH-8',
  supplier: 'Ash',
  description: '8 mm short-link chain, hot-dip galvanised, sold for lifting and mooring',
  size_mm: 8,
  specification: 'en-818-3',
  grade: '4',
  price_per_metre: 6.9,
  boughtFrom: ['counter sale, cut from a full drum', 'mail order, one bag'],
  batchMark: 'tin tag with a 4 in a ring, no batch number',
  condition: 'clean, bright, links run freely',
  making: { ...making8, barStress_N_per_mm2: 464 },
  zinc: { mean_um: 92, scatter_um: 8, adherence: [1, 2] },
  pieces: [
    { level: 0.965, rate_Hz: 50, form: 'comma' },
    { level: 0.995, rate_Hz: 20, form: 'semicolon' },
    { level: 1.025, rate_Hz: 25, form: 'tab, newton', spikes: [{ when: 0.42, share: 1.27 }] },
    {
      level: 0.985,
      rate_Hz: 50,
      form: 'comma',
      pauses: [{ share: 0.905, lasts_s: 9, keeps: 0.06 }],
      note: 'hand eased the valve when the needle stood still; it had not finished rising',
    },
    { level: 1.015, rate_Hz: 20, form: 'blanks', rig: 'RIG-2' },
  ],
};

const birch: Supplier = {
  product: 'BIRCH-8',
  supplier: 'Birch',
  description: '8 mm galvanised chain, short link',
  size_mm: 8,
  specification: 'en-818-3',
  grade: '4',
  price_per_metre: 4.6,
  boughtFrom: ['counter sale, pre-cut length on a card', 'counter sale, second shop of the same seller'],
  batchMark: 'none found',
  condition: 'trim marks of the weld burr felt on many links; links run freely',
  making: {
    ...making8,
    diameter_mm: 8.03,
    barStress_N_per_mm2: 472,
    barScatter: 0.014,
    uniformElongation: 0.36,
    faultyWelds: 0.2,
  },
  zinc: { mean_um: 57, scatter_um: 7, adherence: [0, 1] },
  pieces: [
    { level: 1.0, rate_Hz: 25, form: 'comma', rig: 'RIG-2' },
    { level: 1.01, rate_Hz: 20, form: 'tab, newton' },
    {
      level: 0.985,
      rate_Hz: 100,
      form: 'comma',
      jumps: [{ kind: 'weld opening', share: 0.945, by_mm: 0.11 }],
      note: 'a crack was heard some seconds before parting and the needle dropped back',
    },
    { level: 1.005, rate_Hz: 50, form: 'semicolon', weldOfLink3_mm: 8.97 },
    { level: 0.995, rate_Hz: 20, form: 'comma, no extension' },
  ],
};

const cedar: Supplier = {
  product: 'CEDAR-8',
  supplier: 'Cedar',
  description: '8 mm anchor chain, galvanised, calibrated',
  size_mm: 8,
  specification: 'iso-4565',
  grade: '30',
  price_per_metre: 5.2,
  boughtFrom: ['mail order, one bag', 'mail order, four weeks later'],
  batchMark: 'a 30 stamped on every tenth link or so',
  condition: 'clean; looks stout beside the other 8 mm chains',
  making: {
    ...making8,
    diameter_mm: 8.42,
    diameterScatter_mm: 0.02,
    weldUpset_mm: 0.3,
    innerWidth_mm: 10.7,
    barStress_N_per_mm2: 308,
    barScatter: 0.006,
    uniformElongation: 0.33,
  },
  zinc: { mean_um: 84, scatter_um: 7, adherence: [1, 1] },
  pieces: [
    { level: 1.0, rate_Hz: 20, form: 'comma', strippedForGauging: true },
    { level: 0.994, rate_Hz: 25, form: 'imperial', strippedForGauging: true },
    { level: 1.008, rate_Hz: 20, form: 'bare names' },
    { level: 1.012, rate_Hz: 25, form: 'comma', rig: 'RIG-2' },
    { level: 0.997, rate_Hz: 50, form: 'tab, newton', spikes: [{ when: 0.3, share: 0.2 }] },
  ],
};

const damson: Supplier = {
  product: 'DAMSON-10',
  supplier: 'Damson',
  description: '10 mm short-link chain, hot-dip galvanised, with works leaflet',
  size_mm: 10,
  specification: 'en-818-3',
  grade: '4',
  price_per_metre: 10.4,
  boughtFrom: ['trade counter, cut from a full drum', 'trade counter, another drum'],
  batchMark: 'tin tag with a 4 in a ring and a date letter',
  condition: 'dull grey, rough zinc with a few runs; links run freely after working',
  making: { ...making10, barStress_N_per_mm2: 461 },
  zinc: { mean_um: 138, scatter_um: 14, adherence: [3, 4] },
  pieces: [
    { level: 0.978, rate_Hz: 25, form: 'comma', pitchOfLink3_mm: 31.06 },
    {
      level: 1.01,
      rate_Hz: 100,
      form: 'comma',
      pauses: [{ share: 0.93, lasts_s: 11, keeps: 0.03 }],
      note: 'took the standstill for the end and reached for the valve; load climbed again and passed its former height',
    },
    { level: 0.995, rate_Hz: 20, form: 'UTF-16' },
    { level: 1.025, rate_Hz: 20, form: 'peak hold' },
    { level: 1.0, rate_Hz: 25, form: 'semicolon' },
  ],
};

const elder: Supplier = {
  product: 'ELDER-10',
  supplier: 'Elder',
  description: '10 mm chain, galvanised, marked 4',
  size_mm: 10,
  specification: 'en-818-3',
  grade: '4',
  price_per_metre: 8.7,
  boughtFrom: ['boat chandlery, end of a drum', 'boat chandlery, next drum'],
  batchMark: 'a 4 stamped on some links, hard to read',
  condition: 'clean; a few links of the first length stiff',
  making: { ...making10, diameter_mm: 9.94, barStress_N_per_mm2: 424, barScatter: 0.006, uniformElongation: 0.27 },
  zinc: { mean_um: 97, scatter_um: 9, adherence: [1, 2] },
  pieces: [
    { level: 1.017, rate_Hz: 50, form: 'comma' },
    { level: 0.992, rate_Hz: 20, form: 'clock' },
    {
      level: 0.964,
      rate_Hz: 25,
      form: 'comma',
      ductility: 0.76,
      note: 'parted with little warning; links hardly drawn',
    },
    { level: 0.988, rate_Hz: 20, form: 'tab, newton', pauses: [{ share: 0.8, lasts_s: 5, keeps: 0.1 }] },
    { level: 1.01, rate_Hz: 25, form: 'semicolon' },
  ],
};

const fir: Supplier = {
  product: 'FIR-10',
  supplier: 'Fir',
  description: '10 mm anchor chain, galvanised, calibrated',
  size_mm: 10,
  specification: 'iso-4565',
  grade: '30',
  price_per_metre: 8.1,
  boughtFrom: ['mail order, one bag', 'mail order, a second order three weeks later'],
  batchMark: 'a 30 stamped on every tenth link or so',
  condition: 'clean, bright; links run freely',
  making: { ...making10, diameter_mm: 10.05, barStress_N_per_mm2: 462, uniformElongation: 0.31 },
  zinc: { mean_um: 88, scatter_um: 8, adherence: [1, 1] },
  pieces: [
    { level: 0.985, rate_Hz: 20, form: 'comma' },
    {
      level: 1.0,
      rate_Hz: 50,
      form: 'comma',
      gripStrength: 0.93,
      jumps: [{ kind: 'grip slip', share: 0.62, by_mm: 0.55 }],
      note: 'jaw slipped with a bang at about 41 kN and bit again; parted in the upper jaw, at the tooth mark',
    },
    {
      level: 1.005,
      rate_Hz: 20,
      form: 'blanks',
      stopsAt: 0.93,
      note: 'recorder ran out of room and stopped; the pull went on to parting and the break was examined',
    },
    {
      level: 1.03,
      rate_Hz: 25,
      form: 'tab, newton',
      rig: 'RIG-2',
      note: 'stronger than its claim led us to plan for: the recorder stood at the end of its range',
    },
    { level: 1.01, rate_Hz: 20, form: 'semicolon' },
  ],
};

export const suppliers: readonly Supplier[] = [ash, birch, cedar, damson, elder, fir];
