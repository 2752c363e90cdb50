import type {
  CampaignFinding,
  PieceFinding,
  ProductFinding,
  ProductInference,
  ProductSummary,
  PullCurve,
  PullFinding,
} from '@provinghouse/contract';
import type {
  Comparison,
  Flag,
  Judgement,
  Limit,
  LongChainFinding,
  MeasuredValue,
  Specification,
  StrengthSplit,
  TraceReading,
  Verdict,
} from '@provinghouse/core';
import {
  breakModeOf,
  characteristicValue,
  compareGroups,
  grubbsTest,
  longChain,
  meanInterval,
  shapiroWilk,
  toleranceBound,
  valueForMoney,
} from '@provinghouse/core';
import type { ReportDocument } from '../src/index.ts';

/** What a made-up campaign holds. All of it is invented; no number is a result of anything. */
export interface FixtureShape {
  readonly products: number;
  readonly pieces: number;
  readonly isPulled?: boolean;
  readonly isGauged?: boolean;
  /** Whether products are compared and long chain is inferred: that takes a while. */
  readonly isInferred?: boolean;
}

/** A campaign of the shape asked for, the same on every call: one grip break, one clipped pull, one doubtful reading of a break. */
export function fixture(shape: FixtureShape): ReportDocument {
  const parts = Array.from({ length: shape.products }, (_, index) => makeProduct(index, shape));
  const pieces = parts.flatMap((part) => part.pieces);
  const curves = pieces.flatMap((piece, index) => (piece.pull === null ? [] : [curveOf(piece.pull.pull, index)]));
  return {
    finding: makeFinding(
      parts.map((part) => part.product),
      pieces,
      shape,
    ),
    curves: Object.fromEntries(curves.map((curve) => [curve.pull, curve])),
    issuedOn: '2026-04-01',
    software: 'Provinghouse fixture',
    recordHead: '0123456789abcdef'.repeat(4),
  };
}

const names = [
  'Ash',
  'Birch',
  'Cedar',
  'Damson',
  'Elder',
  'Fir',
  'Gorse',
  'Hazel',
  'Ivy',
  'Juniper',
  'Kelp',
  'Larch',
  'Maple',
];

function makeFinding(
  products: readonly ProductFinding[],
  pieces: readonly PieceFinding[],
  shape: FixtureShape,
): CampaignFinding {
  return {
    campaign: {
      campaign: 'FIXTURE-1',
      title: 'Invented chain for a made-up mooring',
      question: 'Is this chain as strong as its mark says?',
      client: 'The invented co-operative',
      laboratory: 'Made-up test room, shed 2',
      opened_on: '2026-03-02',
      decision_rule: 'guarded acceptance',
      coverage_factor: 2,
      method: 'Straight pull in shackles, table speed set by hand.',
      sampling: 'One length of each, bought over the counter.',
      table_speed_min_mm_per_min: 10,
      table_speed_max_mm_per_min: 60,
      marking: 'invented demonstration data',
      pieces_per_product: null,
      order_seed: null,
      blinding: null,
      plan_frozen_at: null,
      unblinded_at: null,
    },
    rule: 'guarded acceptance',
    ruleSentence: 'A value conforms when it clears the limit by its expanded uncertainty; between, nothing is decided.',
    people: [
      { person: 'gauger', name: 'First Person', role: 'gauging and pulls' },
      { person: 'examiner', name: 'Second Person', role: null },
    ],
    instruments: [
      instrument({
        instrument: 'RIG-1',
        kind: 'rig',
        unit: 'kN',
        resolution: 0.02,
        range_minimum: 5,
        range_maximum: 100,
        class: 1,
      }),
      instrument({
        instrument: 'CAL-1',
        kind: 'calliper',
        unit: 'mm',
        resolution: 0.01,
        range_minimum: 0,
        range_maximum: 150,
        class: null,
      }),
    ],
    calibrations: [
      {
        calibration: 'C-1001',
        instrument: 'RIG-1',
        calibrated_on: '2026-01-12',
        due_on: '2027-01-12',
        expanded_uncertainty: null,
        coverage_factor: null,
      },
    ],
    samples: products.map((product) => ({
      sample: `${product.product}-S1`,
      product: product.product,
      received_on: '2026-03-05',
      received_by: 'gauger',
      bought_from: 'Counter sale',
      batch_mark: null,
      length_m: 2,
      mass_kg: 2.7,
      condition: 'clean, dry, no damage seen',
    })),
    products,
    pieces,
    comparisons:
      products.length === 0
        ? []
        : [
            {
              nominalSize_mm: 8,
              products: products.map((one) => one.product),
              sentences: ['The means differ by less than their scatter.'],
              statistics: shape.isInferred === true ? compared(products, pieces) : null,
              worth: valueForMoney([], { seed: 1 }),
            },
          ],
    agreement: null,
    answers: products.map((product) => `${product.product}: ${product.standing}.`),
    photographs: [],
    limitsOfTheFinding: ['Few pieces from one length of each product.'],
    doubts: ['CAL-1 has no certificate on record.'],
  };
}

function forcesOf(product: string, pieces: readonly PieceFinding[]): number[] {
  return pieces.flatMap((piece) =>
    piece.product === product && piece.pull?.use === 'value' && piece.pull.maximum ? [piece.pull.maximum.value] : [],
  );
}

function compared(products: readonly ProductFinding[], pieces: readonly PieceFinding[]): Comparison {
  const groups = products.map(({ product }) => ({ name: product, values: forcesOf(product, pieces) }));
  return compareGroups({ groups, seed: 1, draws: 500, unit: 'kN' });
}

function longChainFrom(pieces: readonly PieceFinding[]): LongChainFinding {
  const pulled = pieces.flatMap((piece) => {
    const maximum = piece.pull?.maximum;
    const position = piece.breaks[0]?.position;
    if (!maximum) return [];
    const mode = position === undefined ? null : breakModeOf(position);
    return [{ links: piece.links, force_kN: maximum.value, mode, isAtLeast: maximum.isAtLeast }];
  });
  return longChain({ pieces: pulled, pitch_mm: 24, lengths_m: [2, 10, 100], confidence: 0.9, seed: 1, resamples: 0 });
}

function inferenceOf(values: readonly number[]): ProductInference {
  return {
    mean: meanInterval({ values }, { confidence: 0.95, unit: 'kN' }),
    tolerance: toleranceBound({ values, coverage: 0.95, confidence: 0.95, side: 'lower', unit: 'kN' }),
    characteristic: characteristicValue({ values }, { unit: 'kN' }),
    outlier: grubbsTest(values, { significance: 0.05, end: 'either', unit: 'kN' }),
    normality: shapiroWilk(values),
    meanDecision: null,
    boundDecision: null,
  };
}

type Instrument = CampaignFinding['instruments'][number];

function instrument(
  known: Pick<Instrument, 'instrument' | 'kind' | 'unit' | 'resolution' | 'range_minimum' | 'range_maximum' | 'class'>,
): Instrument {
  return { ...known, description: null, extension_class: null, compliance_mm_per_kN: null };
}

interface Part {
  readonly product: ProductFinding;
  readonly pieces: readonly PieceFinding[];
}

function makeProduct(index: number, shape: FixtureShape): Part {
  const name = names[index % names.length] ?? 'Oak';
  const code = `${name.toUpperCase()}-8`;
  const pieces = Array.from({ length: shape.pieces }, (_, piece) => makePiece(code, { index, piece, shape }));
  const values = pieces.flatMap((piece) =>
    piece.pull?.use === 'value' && piece.pull.maximum ? [piece.pull.maximum.value] : [],
  );
  const mean = values.length === 0 ? null : values.reduce((a, b) => a + b, 0) / values.length;
  const verdict: Verdict =
    pieces.find((piece) => piece.standing !== 'conforms')?.standing ??
    (pieces.length === 0 ? 'not judged' : 'conforms');
  const product: ProductFinding = {
    product: code,
    supplier: name,
    description: '8 mm short-link chain, galvanised',
    nominalSize_mm: 8,
    specification,
    claimedBreakingForce_kN: null,
    pricePerMetre: 5.1 + index / 10,
    currency: 'EUR',
    massPerMetre_kg_per_m: 1.35,
    pieces: pieces.map((piece) => piece.piece),
    judgements:
      pieces.length === 0
        ? []
        : [
            {
              quantity: 'breakingForce',
              verdict,
              counts: { conforms: pieces.length, 'does not conform': 0, inconclusive: 0, 'not judged': 0 },
              deciding: [],
              sentence: 'What the pieces say together, in a sentence.',
            },
          ],
    standing: verdict,
    breakingForce: summary(values, 'kN', pieces),
    elongation: summary(
      values.map((value) => value / 2),
      '%',
      pieces,
    ),
    steelStress: summary([], 'N/mm2', pieces),
    inference: inferenceOf(values),
    longChain: shape.isInferred === true ? longChainFrom(pieces) : null,
    split: shape.isGauged === false || mean === null ? null : split(mean),
    breaks: values.length === 0 ? [] : [{ position: 'crown', mode: 'ductile cup-and-cone', count: values.length }],
    zinc:
      shape.isGauged === false
        ? null
        : {
            readings: 6,
            mean_um: 84.2,
            standardUncertainty_um: 2.1,
            leastLinkMean_um: 79,
            worstAdherence: 3,
            greatestFlakedShare_pct: 8,
          },
    marginOverMinimum_pct: mean === null ? null : 100 * (mean / 40.2 - 1),
    forcePerMass_kN_m_per_kg: mean === null ? null : mean / 1.35,
    forcePerPrice_kN_m: mean === null ? null : mean / 5.1,
  };
  return { product, pieces };
}

function summary(values: readonly number[], unit: string, pieces: readonly PieceFinding[]): ProductSummary {
  const n = values.length;
  const mean = n === 0 ? null : values.reduce((a, b) => a + b, 0) / n;
  return {
    n,
    mean,
    sd: n < 2 ? null : 0.8,
    cov_pct: n < 2 ? null : 2,
    least: n === 0 ? null : Math.min(...values),
    greatest: n === 0 ? null : Math.max(...values),
    unit,
    atLeast: pieces.flatMap((piece) =>
      piece.pull?.use === 'at least' ? [{ piece: piece.piece, value: piece.pull.maximum?.value ?? 0 }] : [],
    ),
    excluded: pieces.flatMap((piece) =>
      piece.pull?.use === 'none' ? [{ piece: piece.piece, reason: 'parted in the grip' }] : [],
    ),
    sentence:
      n === 0 ? `Nothing can be said of the mean in ${unit}.` : `${n} values in ${unit}, summed up in a sentence.`,
  };
}

function split(mean: number): StrengthSplit {
  return {
    isAtLeast: false,
    stressOverMeasuredArea_N_per_mm2: (1000 * mean) / 104,
    stressOverNominalArea_N_per_mm2: (1000 * mean) / 100.53,
    nominalArea_mm2: 100.53,
    sizeFactor: 1.0345,
    steelFactor: mean / 41.6,
    totalFactor: mean / 40.2,
    honestGrade: (100 * mean) / 104,
    standardGrade: 40,
    guardedStandardGrade: 30,
    stressUncertainty_N_per_mm2: 4.2,
    sizeFactorUncertainty: 0.004,
    steelFactorUncertainty: 0.01,
    sentence: 'What size and steel add, in a sentence.',
  };
}

interface PiecePlace {
  readonly index: number;
  readonly piece: number;
  readonly shape: FixtureShape;
}

function makePiece(code: string, place: PiecePlace): PieceFinding {
  const { index, piece, shape } = place;
  const name = `${code}-${piece + 1}`;
  const pull = shape.isPulled === false ? null : makePull(name, place);
  const standing: Verdict =
    pull === null || pull.use === 'none' ? 'not judged' : index === 1 ? 'does not conform' : 'conforms';
  const differ = index === 0 && piece === 1;
  return {
    piece: name,
    product: code,
    sample: `${code}-S1`,
    links: 5,
    gaugeLength_mm: 120,
    gaugeLengthOrigin: '5 links of the gauged pitch',
    gauging:
      shape.isGauged === false
        ? null
        : {
            quantities: [],
            meanDiameter_mm: 8.13 + piece / 100,
            steelArea_mm2: 103.8 + piece / 10,
            steelAreaUncertainty_mm2: 0.21,
            leastSteelArea_mm2: 102.9,
            nominalArea_mm2: 100.53,
            outOfRound_mm: 0.08,
            notes: [],
          },
    gaugingReadings: [],
    pull,
    otherPulls: index === 0 && piece === 0 && pull !== null ? ['P-PROOF-1'] : [],
    split: null,
    breaks:
      pull === null
        ? []
        : [
            {
              link: pull.use === 'none' ? 0 : 3,
              examiner: 'gauger',
              position: pull.use === 'none' ? 'in grip' : 'crown',
              mode: 'ductile cup-and-cone',
              note: null,
            },
            ...(differ
              ? [
                  {
                    link: 3,
                    examiner: 'examiner',
                    position: 'beside weld',
                    mode: 'shear',
                    note: 'dull zone at the weld',
                  },
                ]
              : []),
          ],
    examinersDiffer: differ && pull !== null,
    zinc: null,
    judgements: specification.limits.map((limit) => judgement(limit, pull, standing)),
    standing,
    note: null,
  };
}

function makePull(piece: string, { index, piece: number }: PiecePlace): PullFinding {
  const use = index === 0 && number === 2 ? 'none' : index === 0 && number === 3 ? 'at least' : 'value';
  const value = forceOf(index * 5 + number);
  const maximum = measuredForce(value, use === 'at least');
  return {
    pull: `P-${piece}`,
    rig: 'RIG-1',
    operator: 'gauger',
    pulledAt: '2026-03-09T10:00:00Z',
    trace: `traces/${piece.toLowerCase()}.csv`,
    traceSha256: 'fedcba9876543210'.repeat(4),
    reading: readingOf(value, use),
    maximum: use === 'none' ? null : maximum,
    elongation: use === 'value' ? { ...maximum, value: value / 2, unit: '%', expandedUncertainty: 0.6 } : null,
    use,
    reasons:
      use === 'none'
        ? ['It parted in the grip.']
        : use === 'at least'
          ? ['The record was clipped at the range limit.']
          : [],
    note: null,
  };
}

/** A force for the n-th piece: scattered without chance. */
function forceOf(n: number): number {
  return 41.5 + 3 * Math.sin(n * 1.7);
}

function measuredForce(value: number, isAtLeast: boolean): MeasuredValue {
  return {
    value,
    unit: 'kN',
    expandedUncertainty: 0.47,
    coverageFactor: 2,
    isAtLeast,
    origin: 'Greatest true reading before parting.',
    contributions: [
      { name: 'force calibration', standardUncertainty: 0.23, source: 'class 1 of ISO 7500-1, rectangular' },
      { name: 'resolution', standardUncertainty: 0.006, source: 'half a step of 0.02 kN, rectangular' },
    ],
  };
}

function readingOf(value: number, use: PullFinding['use']): TraceReading {
  const column = (name: string, unit: string) => ({ name, unit, because: 'its header says so' });
  return {
    columns: { time: column('t', 's'), force: column('F', 'kN'), table: column('s', 'mm'), extension: null },
    samples: 3000,
    duration_s: 60,
    sampleRate_Hz: 50,
    zeroForce_kN: 0.012,
    resolution_kN: 0.02,
    noise_kN: 0.011,
    maximumForce_kN: value,
    maximumForceUncertainty_kN: 0.235,
    maximumIsAtLeast: use === 'at least',
    timeAtMaximum_s: 48,
    parted: use !== 'at least',
    partingForce_kN: use === 'at least' ? null : value - 1,
    timeAtParting_s: use === 'at least' ? null : 51,
    stiffness_kN_per_mm: 7.4,
    stiffnessInterval95_kN_per_mm: { lower: 7.1, upper: 7.7 },
    kneeForce_kN: 24.6,
    tableSpeed_mm_per_min: 30,
    forceRate_kN_per_s: 1.1,
    extensionAtMaximum_mm: 21,
    extensionAtParting_mm: 23,
    plasticExtension_mm: 17,
    totalUltimateElongation_pct: 20.5,
    energyToMaximum_J: 610,
    energyToParting_J: 690,
    meanStressAtMaximum_N_per_mm2: 400,
    stressRate_N_per_mm2_per_s: 11,
    shareInsideRateLimits: 0.97,
    spikes: use === 'none' ? [{ time_s: 12.34, force_kN: 88 }] : [],
    events: [{ kind: 'dip', time_s: 30, force_kN: 33, drop_kN: 0.4, regained: true }],
    valid: use !== 'none',
    notes: [],
  };
}

function judgement(limit: Limit, pull: PullFinding | null, standing: Verdict): Judgement {
  const isForce = limit.quantity === 'breakingForce';
  const measured = isForce ? (pull?.maximum ?? null) : null;
  return {
    limit,
    measured,
    rule: 'guarded acceptance',
    acceptance: measured === null ? { lower: null, upper: null } : { lower: (limit.lower ?? 0) + 0.47, upper: null },
    probability: null,
    verdict: measured === null ? 'not judged' : standing,
    reason: measured === null ? 'Nothing was measured.' : 'A reason in words.',
  };
}

function limitOf(
  known: Pick<Limit, 'quantity' | 'unit' | 'lower' | 'upper' | 'nominal'>,
  flags: readonly Flag[],
): Limit {
  return {
    ...known,
    links: known.quantity === 'lengthOverLinks' ? 11 : null,
    statement: 'The requirement in words.',
    standard: 'Invented standard',
    edition: '2020',
    place: 'table loads, d = 8',
    provenance: {
      citations: [
        {
          id: `page-${known.quantity}`,
          kind: 'published-page',
          text: 'An invented page (https://example.org/a/long/path/to/a/table?row=8)',
        },
      ],
      crossChecked: flags.length === 0,
      flags,
      alternatives: flags.includes('conflict') ? [{ value: 39.9, citation: 'page-other' }] : [],
      note: null,
    },
  };
}

const specification: Specification = {
  title: 'Invented standard, grade 4, 8 mm',
  standard: 'Invented standard',
  edition: '2020',
  grade: '4',
  nominalSize_mm: 8,
  confidence: 'B',
  gradeStress_N_per_mm2: 400,
  limits: [
    limitOf({ quantity: 'breakingForce', unit: 'kN', lower: 40.2, upper: null, nominal: null }, ['conflict']),
    limitOf({ quantity: 'proofForce', unit: 'kN', lower: 20.1, upper: null, nominal: null }, ['derived']),
    limitOf({ quantity: 'elongation', unit: '%', lower: 15, upper: null, nominal: null }, ['memory', 'suspect']),
    limitOf({ quantity: 'lengthOverLinks', unit: 'mm', lower: 262, upper: 267, nominal: 264 }, ['inference']),
  ],
};

/** Slack, rise, plateau and fall; every third pull without extension and table. */
function curveOf(pull: string, index: number): PullCurve {
  const count = 160;
  const steps = Array.from({ length: count }, (_, step) => step / (count - 1));
  const force = steps.map((share) =>
    share < 0.1 ? 0 : share > 0.97 ? 2 : forceOf(index) * Math.min(1, Math.sqrt((share - 0.1) / 0.7)),
  );
  const isBare = index % 3 === 2;
  return {
    pull,
    time_s: steps.map((share) => 60 * share),
    force_kN: force,
    table_mm: isBare ? null : steps.map((share) => 30 * share),
    extension_mm: null,
  };
}
