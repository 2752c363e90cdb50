import { plausibleBands } from './plausible-band.ts';
import type { GaugingInput, GaugingQuantity } from './reading.ts';
import { describeReading } from './reading-check.ts';

const slips: readonly { readonly factor: number; readonly words: string }[] = [
  { factor: 10, words: 'ten times the value would fit: a slipped decimal sign?' },
  { factor: 0.1, words: 'a tenth of the value would fit: a slipped decimal sign?' },
  { factor: 25.4, words: 'it would fit as inches' },
  { factor: 100, words: 'a hundred times the value would fit: a slipped decimal sign?' },
  { factor: 0.01, words: 'a hundredth of the value would fit: a slipped decimal sign?' },
];

/**
 * Doubts about readings, in words: values no chain of this size has, with what they look like; two quantities of one
 * link that look swapped. Nothing is dropped or changed. The bands are wide and from common practice, not from a
 * standard: a reading outside them is a slip of the pen, not a chain out of tolerance.
 */
export function readingDoubts(readings: readonly GaugingInput[], nominalSize_mm: number): readonly string[] {
  const swapped = swappedPairs(readings, nominalSize_mm);
  const explained = new Set(swapped.flatMap(({ pair }) => pair));
  return [
    ...swapped.map(({ words }) => words),
    ...readings.flatMap((reading) => {
      if (explained.has(reading) || isPlausible(reading.quantity, sizesOf(reading, nominalSize_mm))) return [];
      return [doubt(reading, nominalSize_mm)];
    }),
  ];
}

function doubt(reading: GaugingInput, nominalSize_mm: number): string {
  const sizes = sizesOf(reading, nominalSize_mm);
  const slip = slips.find(({ factor }) => isPlausible(reading.quantity, sizes * factor));
  const per = reading.quantity === 'lengthOverLinks' ? ' per link' : '';
  const found = `${describeReading(reading)}: ${reading.value_mm} mm is ${Number(sizes.toPrecision(3))} d${per}`;
  return `${found}, not plausible; ${slip?.words ?? 'check the reading and the nominal size'}. It was kept.`;
}

interface Swap {
  readonly pair: readonly [GaugingInput, GaugingInput];
  readonly words: string;
}

function swappedPairs(readings: readonly GaugingInput[], nominalSize_mm: number): readonly Swap[] {
  const found: Swap[] = [];
  for (const [index, a] of readings.entries()) {
    if (a.link === null || a.quantity === 'lengthOverLinks') continue;
    const b = readings
      .slice(index + 1)
      .find((other) => other.link === a.link && looksSwapped(a, other, nominalSize_mm));
    if (b === undefined) continue;
    const values = `${a.value_mm} mm and ${b.value_mm} mm`;
    const words = `link ${a.link}: ${a.quantity} and ${b.quantity} (${values}) look swapped. They were kept as entered.`;
    found.push({ pair: [a, b], words });
  }
  return found;
}

/** Each value fits the other's quantity and at least one does not fit its own. */
function looksSwapped(a: GaugingInput, b: GaugingInput, nominalSize_mm: number): boolean {
  if (b.quantity === a.quantity || b.quantity === 'lengthOverLinks') return false;
  const first = a.value_mm / nominalSize_mm;
  const second = b.value_mm / nominalSize_mm;
  if (isPlausible(a.quantity, first) && isPlausible(b.quantity, second)) return false;
  return isPlausible(a.quantity, second) && isPlausible(b.quantity, first);
}

function sizesOf(reading: GaugingInput, nominalSize_mm: number): number {
  const links = reading.quantity === 'lengthOverLinks' ? (reading.overLinks ?? 1) : 1;
  return reading.value_mm / nominalSize_mm / links;
}

function isPlausible(quantity: GaugingQuantity, sizes: number): boolean {
  const band = plausibleBands[quantity];
  return sizes >= band.least && sizes <= band.greatest;
}
