import { tidy } from '../chain/bench-unit.ts';
import { type ExpectedInterval, expectedInterval } from './expected-interval.ts';
import type { QuestionInputs, ReadingQuestion } from './question.ts';
import { sumSlack } from './question-neighbour.ts';
import { quantityWord, shown, spanWords } from './question-words.ts';
import type { GaugingInput, GaugingQuantity } from './reading.ts';

/** Earlier readings needed before they say what this chain is like. */
const enough = 3;
/** How far a link of one product may lie from the others (common practice). */
const productSpread = 1.15;

/** Powers of ten that a lost or slipped decimal sign makes. */
const slips: readonly number[] = [10, 0.1, 100, 0.01, 1000];
const millimetresPerInch = 25.4;

const ofLink: readonly GaugingQuantity[] = [
  'diameter',
  'weldDiameter',
  'pitch',
  'innerWidth',
  'outerWidth',
  'outerLength',
];

/**
 * What a reading outside its expected interval looks like: a slipped decimal sign, inches, another quantity of the link,
 * another number of links, a length taken outside. Best first; empty for a reading inside, or one that looks like none.
 */
export function mistakes(inputs: QuestionInputs, expected: ExpectedInterval): readonly ReadingQuestion[] {
  if (contains(expected, inputs.reading.value_mm)) return [];
  return [...factors(inputs, expected), ...otherQuantity(inputs, expected), ...otherLength(inputs, expected)];
}

/** The interval round the median of the readings of the same quantity; null where there are fewer than three. */
export function expectedOfReadings(
  reading: GaugingInput,
  readings: readonly GaugingInput[],
): Pick<ExpectedInterval, 'lower_mm' | 'upper_mm' | 'expected_mm'> | null {
  const values = readings
    .filter(({ quantity, overLinks }) => quantity === reading.quantity && overLinks === reading.overLinks)
    .map(({ value_mm }) => value_mm)
    .sort((a, b) => a - b);
  const median = values[Math.floor(values.length / 2)];
  if (values.length < enough || median === undefined) return null;
  return { lower_mm: median / productSpread, upper_mm: median * productSpread, expected_mm: median };
}

function contains({ lower_mm, upper_mm }: ExpectedInterval, value_mm: number): boolean {
  const slack = 1e-9 * value_mm;
  return value_mm >= lower_mm - slack && value_mm <= upper_mm + slack;
}

function factors({ reading }: QuestionInputs, expected: ExpectedInterval): ReadingQuestion[] {
  const { value_mm } = reading;
  const candidates = [
    ...slips.map((factor) => ({ code: 'slipped-point' as const, value: tidy(value_mm / factor) })),
    { code: 'inches' as const, value: tidy(value_mm * millimetresPerInch) },
  ];
  return candidates
    .filter(({ value }) => contains(expected, value))
    .sort((a, b) => distance(a.value, expected) - distance(b.value, expected))
    .map(({ code, value }) => ({
      code,
      words:
        code === 'inches'
          ? `${value_mm} mm is far from ${spanWords(expected, reading.overLinks)}. Was it read in inches? ${value_mm} in is ${value} mm.`
          : `${value_mm} mm is far from ${spanWords(expected, reading.overLinks)}. A slipped decimal sign? ${value} mm would fit.`,
      proposal_mm: value,
      weight: 'look again',
    }));
}

function distance(value_mm: number, { expected_mm }: ExpectedInterval): number {
  return Math.abs(Math.log(value_mm / expected_mm));
}

function otherQuantity(inputs: QuestionInputs, expected: ExpectedInterval): ReadingQuestion[] {
  const { reading } = inputs;
  if (!ofLink.includes(reading.quantity) || agreesWithLink(inputs)) return [];
  const fitting = ofLink
    .filter((quantity) => quantity !== reading.quantity && !(isBar(quantity) && isBar(reading.quantity)))
    .map((quantity) => expectedInterval(quantity, inputs))
    .filter((other) => contains(other, reading.value_mm) && isTelling(other, expected, reading.value_mm))
    .sort((a, b) => distance(reading.value_mm, a) - distance(reading.value_mm, b));
  const [best] = fitting;
  if (best === undefined) return [];
  const names = fitting.map(({ quantity }) => `the ${quantityWord(quantity)}`).join(' or ');
  const start = `${reading.value_mm} mm does not fit ${spanWords(expected)}, but it fits ${names}.`;
  const swapped = swappedWith(inputs, fitting);
  const end = swapped ?? `Was the ${quantityWord(best.quantity)} read in this place?`;
  return [{ code: 'other-quantity', words: `${start} ${end}`, proposal_mm: null, weight: 'look again' }];
}

/** A wide band of common practice holds many values: it tells something only of a reading well outside its own interval. */
function isTelling(other: ExpectedInterval, own: ExpectedInterval, value_mm: number): boolean {
  if (other.basis !== 'common practice') return true;
  return value_mm < own.lower_mm / 1.1 || value_mm > own.upper_mm * 1.1;
}

/** An earlier reading of the link that would fit here, as this one would fit there. */
function swappedWith(inputs: QuestionInputs, fitting: readonly ExpectedInterval[]): string | null {
  const { reading, earlier } = inputs;
  const own = expectedInterval(reading.quantity, inputs);
  for (const { quantity } of fitting) {
    const other = earlier.findLast((found) => found.link === reading.link && found.quantity === quantity);
    if (other !== undefined && contains(own, other.value_mm)) {
      return `The ${quantityWord(quantity)} of this link was read as ${other.value_mm} mm, which would fit here: are the two swapped?`;
    }
  }
  return null;
}

/** A width that adds up with the other width and the bar of its own link is what was meant, however odd the link. */
function agreesWithLink({ reading, earlier, nominalSize_mm }: QuestionInputs): boolean {
  const pair = { outerWidth: 'innerWidth', innerWidth: 'outerWidth' } as const;
  const wanted = reading.quantity === 'outerWidth' || reading.quantity === 'innerWidth' ? pair[reading.quantity] : null;
  const other = earlier.findLast(({ link, quantity }) => link === reading.link && quantity === wanted);
  if (wanted === null || other === undefined) return false;
  const bars = Math.abs(reading.value_mm - other.value_mm);
  return Math.abs(bars - 2 * nominalSize_mm) <= 2 * sumSlack * nominalSize_mm;
}

function isBar(quantity: GaugingQuantity): boolean {
  return quantity === 'diameter' || quantity === 'weldDiameter';
}

/** A length over n links that would be right over another number, or as the length outside. */
function otherLength(inputs: QuestionInputs, expected: ExpectedInterval): ReadingQuestion[] {
  const { reading, nominalSize_mm } = inputs;
  const links = reading.overLinks;
  if (reading.quantity !== 'lengthOverLinks' || links === null) return [];
  const found: ReadingQuestion[] = [];
  const start = `${reading.value_mm} mm does not fit ${spanWords(expected, links)}.`;
  const inside = tidy(reading.value_mm - 2 * nominalSize_mm);
  if (contains(expected, inside)) {
    const words = `${start} Was it read outside, over the two end bars? Less two bars it is about ${shown(inside)} mm: measure inside.`;
    found.push({ code: 'outside-length', words, proposal_mm: null, weight: 'look again' });
  }
  const count = Math.round((reading.value_mm / expected.expected_mm) * links);
  if (count < 1 || count === links || !contains(expected, (reading.value_mm / count) * links)) return found;
  const words = `${start} It would fit ${count} link${count === 1 ? '' : 's'}: count them again.`;
  return [...found, { code: 'link-count', words, proposal_mm: null, weight: 'look again' }];
}
