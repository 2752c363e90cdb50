import type { Limit } from '../chain/specification.ts';
import { type ExpectedInterval, expectedInterval } from './expected-interval.ts';
import { expectedOfReadings, mistakes } from './question-mistake.ts';
import { neighbourQuestions } from './question-neighbour.ts';
import { isOutside, spanWords } from './question-words.ts';
import type { GaugingInput, GaugingInstrument } from './reading.ts';
import { requireReadings } from './reading-check.ts';

/** What may be asked about a reading. */
export type QuestionCode =
  | 'slipped-point'
  | 'inches'
  | 'other-quantity'
  | 'link-count'
  | 'outside-length'
  | 'implausible'
  | 'outside-limits'
  | 'weld-below-bar'
  | 'width-does-not-add-up'
  | 'repeat-differs'
  | 'same-again'
  | 'finer-than-instrument';

/** A question to put at once, beside the field. The reading itself is kept as typed unless the person changes it. */
export interface ReadingQuestion {
  readonly code: QuestionCode;
  readonly words: string;
  /** A value that would answer it, offered and never put in unasked; null where none follows. */
  readonly proposal_mm: number | null;
  /** `look again`: before the next reading; `note`: shown, nothing to do. */
  readonly weight: 'look again' | 'note';
}

/** What {@link readingQuestions} works from. */
export interface QuestionInputs {
  /** The reading just typed. */
  readonly reading: GaugingInput;
  readonly nominalSize_mm: number;
  /** Limits of the product's specification; may be empty. */
  readonly limits: readonly Limit[];
  /** Readings of the same piece so far, in the order in which they were taken. */
  readonly earlier: readonly GaugingInput[];
  /** Readings of other pieces of the product: what this chain is like. */
  readonly ofProduct?: readonly GaugingInput[] | undefined;
  /** The instrument in use; left out where nothing is known of it. */
  readonly instrument?: GaugingInstrument | undefined;
  /**
   * What will come off a diameter for zinc, mm (twice its thickness): 0 for bare steel, null where the callipers touched zinc
   * whose thickness is not known yet. Bare steel where it is left out.
   */
  readonly zincOnBar_mm?: number | null | undefined;
}

/** Zinc on a bar whose thickness is not known: twice 0.2 mm, more than hot dipping leaves (common practice). */
const zincAllowance_mm = 0.4;
/** Further than this outside what is expected is taken for a mistake rather than for a chain out of tolerance. */
const farOutside = Math.log(1.15);
/** Questions shown at once. */
const most = 3;

/**
 * Questions about a reading as it is typed, the most telling first, at most three; none for a reading that fits. Nothing is
 * refused: a reading outside its limits may well be true, and is said to be outside.
 *
 * The expected interval comes from the specification's limits and the geometry of a link (`expectedInterval`); where neither
 * speaks of the quantity, from three or more earlier readings of the product, else from common practice.
 *
 * @throws InputError `gauging/readings` where the value is no length above 0, `gauging/size`
 */
export function readingQuestions(inputs: QuestionInputs): readonly ReadingQuestion[] {
  requireReadings([inputs.reading], inputs.nominalSize_mm);
  const expected = expectedFor(inputs);
  const found = mistakes(inputs, expected);
  const fit = found.length > 0 ? found : [...outside(inputs, expected), ...outsideLimits(inputs)].slice(0, 1);
  // A reading that is a mistake differs from everything: saying so again helps nobody.
  const isMistake = fit.some(({ code }) => code !== 'outside-limits');
  const all = [...fit, ...(isMistake ? [] : neighbourQuestions(inputs))];
  return [
    ...all.filter(({ weight }) => weight === 'look again'),
    ...all.filter(({ weight }) => weight === 'note'),
  ].slice(0, most);
}

function expectedFor(inputs: QuestionInputs): ExpectedInterval {
  const { reading, nominalSize_mm, limits, earlier, ofProduct = [] } = inputs;
  const interval = expectedInterval(reading.quantity, { nominalSize_mm, limits, overLinks: reading.overLinks });
  const learnt = interval.basis === 'common practice' ? expectedOfReadings(reading, [...earlier, ...ofProduct]) : null;
  const { lower_mm, upper_mm, expected_mm } = learnt ?? interval;
  const zinc = isOfBar(reading) ? (inputs.zincOnBar_mm === null ? zincAllowance_mm : (inputs.zincOnBar_mm ?? 0)) : 0;
  return { ...interval, lower_mm, upper_mm: upper_mm + zinc, expected_mm };
}

function isOfBar({ quantity }: GaugingInput): boolean {
  return quantity === 'diameter' || quantity === 'weldDiameter';
}

function outside({ reading }: QuestionInputs, expected: ExpectedInterval): ReadingQuestion[] {
  const { value_mm } = reading;
  const excess = Math.max(Math.log(expected.lower_mm / value_mm), Math.log(value_mm / expected.upper_mm));
  if (excess <= (expected.basis === 'common practice' ? 0 : farOutside)) return [];
  const words = `${value_mm} mm is far from ${spanWords(expected, reading.overLinks)}. Read it again, and check the nominal size.`;
  return [{ code: 'implausible', words, proposal_mm: null, weight: 'look again' }];
}

/** Outside the limits as the verdict will take them: zinc comes off a bar first where its thickness is known. */
function outsideLimits(inputs: QuestionInputs): ReadingQuestion[] {
  const { reading, limits, earlier, ofProduct = [] } = inputs;
  const limit = limits.find(
    (found) => found.quantity === reading.quantity && (found.links === null || found.links === reading.overLinks),
  );
  if (limit === undefined) return [];
  const zinc_mm = isOfBar(reading) ? (inputs.zincOnBar_mm ?? 0) : 0;
  const side = isOutside(reading.value_mm - zinc_mm, limit);
  if (side === null) return [];
  const isZincOpen = isOfBar(reading) && inputs.zincOnBar_mm === null && side === 'above';
  const mayBeZinc = isZincOpen && isOutside(reading.value_mm - zincAllowance_mm, limit) === null;
  const alike = [...earlier, ...ofProduct].filter(
    ({ quantity, value_mm, overLinks }) =>
      quantity === reading.quantity && overLinks === reading.overLinks && isOutside(value_mm - zinc_mm, limit) === side,
  ).length;
  const taken = zinc_mm > 0 ? `${reading.value_mm} mm less ${zinc_mm} mm of zinc` : `${reading.value_mm} mm`;
  const rest = mayBeZinc
    ? 'It was read over the zinc, which comes off once its thickness is known.'
    : alike > 0
      ? `So ${alike === 1 ? 'is one reading' : `are ${alike} readings`} of this product before it.`
      : 'If it reads so again, keep it: the verdict says what it means.';
  return [
    {
      code: 'outside-limits',
      words: `${taken} is ${side} its limit: ${limit.statement} (${limit.standard}). ${rest}`,
      proposal_mm: null,
      weight: mayBeZinc || alike > 0 ? 'note' : 'look again',
    },
  ];
}
