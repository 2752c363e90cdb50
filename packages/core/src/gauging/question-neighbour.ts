import { expectedInterval } from './expected-interval.ts';
import type { QuestionInputs, ReadingQuestion } from './question.ts';
import { shown } from './question-words.ts';
import type { GaugingInput } from './reading.ts';
import { readingUncertainty, repeatabilityOf } from './reading-uncertainty.ts';

/** A weld is no thinner than the bar beside it; a calliper across a ridge may read a little less (common practice). */
const weldShare = 0.95;
/** Share of the nominal size that a width outside may differ from the width inside and the bars on both sides. */
export const sumSlack = 0.15;
/** So many equal readings one after the other, where the instrument is fine enough to tell links apart. */
const sameInARow = 5;
/** An instrument coarser than this share of a reading shows the same figure for many links. */
const coarse = 0.005;
/** Steps of an instrument without a known calibration by which a repeat may differ. */
const stepsOfRepeat = 5;

/** Questions that the earlier readings of the piece and the instrument raise about a reading. */
export function neighbourQuestions(inputs: QuestionInputs): readonly ReadingQuestion[] {
  return [
    ...weldBelowBar(inputs),
    ...widthSum(inputs),
    ...repeatDiffers(inputs),
    ...sameAgain(inputs),
    ...finerThanInstrument(inputs),
  ];
}

function weldBelowBar(inputs: QuestionInputs): ReadingQuestion[] {
  const { reading, earlier } = inputs;
  if (reading.quantity !== 'weldDiameter') return [];
  const read_mm = barOf(reading, earlier);
  const bar_mm = read_mm ?? expectedInterval('diameter', inputs).lower_mm;
  if (reading.value_mm >= (read_mm === null ? bar_mm - 1e-9 : weldShare * bar_mm)) return [];
  const words = `The weld (${reading.value_mm} mm) is thinner than the bar (${shown(bar_mm)} mm). Look for undercut, or read across the full weld.`;
  return [{ code: 'weld-below-bar', words, proposal_mm: null, weight: 'look again' }];
}

/** Mean diameter of the bar: of the same link, else of the piece; null where none was read. */
function barOf(reading: GaugingInput, earlier: readonly GaugingInput[]): number | null {
  const bars = earlier.filter(({ quantity, position }) => quantity === 'diameter' && position === 'leg');
  const ofLink = bars.filter(({ link }) => link === reading.link);
  const taken = ofLink.length > 0 ? ofLink : bars;
  return taken.length === 0 ? null : taken.reduce((sum, { value_mm }) => sum + value_mm, 0) / taken.length;
}

/** The link is as wide outside as inside and two bars more, one of which may be the weld. */
function widthSum({ reading, earlier, nominalSize_mm }: QuestionInputs): ReadingQuestion[] {
  if (reading.quantity !== 'outerWidth' && reading.quantity !== 'innerWidth') return [];
  const wanted = reading.quantity === 'outerWidth' ? 'innerWidth' : 'outerWidth';
  const last = (quantity: string) =>
    earlier.findLast((found) => found.link === reading.link && found.quantity === quantity)?.value_mm;
  const other = last(wanted);
  const bar = barOf({ ...reading, quantity: 'diameter' }, earlier);
  if (reading.link === null || other === undefined || bar === null) return [];
  const [inner, outer] = wanted === 'innerWidth' ? [other, reading.value_mm] : [reading.value_mm, other];
  const slack = sumSlack * nominalSize_mm;
  const thickest = Math.max(bar, last('weldDiameter') ?? bar);
  if (outer >= inner + 2 * bar - slack && outer <= inner + bar + thickest + slack) return [];
  const words = `Inside width ${inner} mm and two bars of ${shown(bar)} mm make ${shown(inner + 2 * bar)} mm, not ${outer} mm outside. One of the two was read wrongly.`;
  return [{ code: 'width-does-not-add-up', words, proposal_mm: null, weight: 'look again' }];
}

function repeatDiffers(inputs: QuestionInputs): ReadingQuestion[] {
  const { reading, earlier } = inputs;
  const same = earlier.filter(
    (found) =>
      found.link === reading.link &&
      found.position === reading.position &&
      found.quantity === reading.quantity &&
      found.direction === reading.direction &&
      found.overLinks === reading.overLinks,
  );
  const reach = repeatReach(inputs);
  if (same.length === 0 || reach === null) return [];
  const mean = same.reduce((sum, { value_mm }) => sum + value_mm, 0) / same.length;
  const difference = Math.abs(reading.value_mm - mean);
  if (difference <= reach + 1e-9) return [];
  const words = `${reading.value_mm} mm, and before it ${shown(mean)} mm at the same place: ${Number(difference.toPrecision(2))} mm apart, where the instrument allows about ${Number(reach.toPrecision(2))} mm.`;
  const weight = difference > 2 * reach + 1e-9 ? 'look again' : 'note';
  return [{ code: 'repeat-differs', words, proposal_mm: null, weight }];
}

/**
 * How far two readings of one place may lie apart: one step of the instrument and the expanded uncertainty (k = 2) of a
 * difference of two readings, the repeatability taken from the repeats so far (JCGM 100:2008 5.1.2).
 */
function repeatReach({ earlier, instrument }: QuestionInputs): number | null {
  if (instrument === undefined) return null;
  const uncertainty = readingUncertainty(instrument, repeatabilityOf(earlier));
  if (uncertainty === null) return stepsOfRepeat * instrument.resolution_mm;
  return instrument.resolution_mm + 2 * Math.SQRT2 * uncertainty.standard_mm;
}

function sameAgain({ reading, earlier, instrument }: QuestionInputs): ReadingQuestion[] {
  if (instrument === undefined || instrument.resolution_mm > coarse * reading.value_mm) return [];
  const ofInstrument = earlier.filter((found) => found.instrument === reading.instrument);
  const others = ofInstrument.length - 1 - ofInstrument.findLastIndex(({ value_mm }) => value_mm !== reading.value_mm);
  if (others + 1 < sameInARow) return [];
  const words = `${reading.value_mm} mm, ${others + 1} times one after the other. Is the calliper stuck, or its display held? Close it and read its zero.`;
  return [{ code: 'same-again', words, proposal_mm: null, weight: 'look again' }];
}

function finerThanInstrument({ reading, instrument }: QuestionInputs): ReadingQuestion[] {
  if (instrument === undefined) return [];
  const steps = reading.value_mm / instrument.resolution_mm;
  if (Math.abs(steps - Math.round(steps)) < 1e-6 * Math.max(1, steps)) return [];
  const words = `${reading.value_mm} mm is finer than ${instrument.instrument} shows (steps of ${instrument.resolution_mm} mm).`;
  return [{ code: 'finer-than-instrument', words, proposal_mm: null, weight: 'note' }];
}
