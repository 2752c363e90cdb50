/** A question to put beside the field at once. The reading is kept as typed unless the person changes it. */
export interface ThicknessQuestion {
  readonly code: 'too-thin' | 'too-thick' | 'slipped-point' | 'unlike-the-others';
  readonly words: string;
  /** A value that would answer it, offered and never put in unasked; null where none follows. */
  readonly proposal_um: number | null;
}

export interface ThicknessInputs {
  /** The reading just typed, um, 0 or more. */
  readonly thickness_um: number;
  /** Readings of the same product so far, um. */
  readonly others_um: readonly number[];
}

/** Zinc below or above this on a chain is a gauge lifted off, a foil, or a slip of the pen (common practice). */
const least_um = 1;
const greatest_um = 300;
/** Readings needed before they say what this zinc is like. */
const enough = 3;
/** Further than this factor from the median of the others is asked about. */
const unlike = 4;
/** A proposal must come this near to the others, or into what hot dipping leaves, to be offered (common practice). */
const near = 1.8;
const dipped = { least_um: 20, greatest_um: 250 };
/** A decimal sign lost or slipped by one or two places, and millimetres read for micrometres. */
const slips: readonly number[] = [10, 0.1, 100, 0.01, 1000];

/**
 * Questions about a zinc thickness as it is typed; none for one that fits. Nothing is refused: a bare spot and a drip are true readings.
 *
 * @throws RangeError for a thickness below 0 or not finite
 */
export function thicknessQuestions({ thickness_um, others_um }: ThicknessInputs): readonly ThicknessQuestion[] {
  if (!(thickness_um >= 0 && Number.isFinite(thickness_um))) throw new RangeError('a thickness is a number from 0');
  const middle = medianOf(others_um);
  const asked = oddness(thickness_um, middle);
  if (asked === null) return [];
  const proposal_um = slips
    .map((factor) => Number((thickness_um * factor).toPrecision(12)))
    .find((value) => fits(value, middle));
  if (proposal_um === undefined) return [{ ...asked, proposal_um: null }];
  const words = `${asked.words} A slipped decimal sign, or another unit? ${proposal_um} µm would fit.`;
  return [{ code: 'slipped-point', words, proposal_um }];
}

type Oddness = Pick<ThicknessQuestion, 'code' | 'words'>;

function oddness(thickness_um: number, middle: number | null): Oddness | null {
  if (thickness_um < least_um)
    return {
      code: 'too-thin',
      words: `${thickness_um} µm is next to no zinc. Was the probe square on the bar, or is the steel bare there?`,
    };
  if (thickness_um > greatest_um)
    return {
      code: 'too-thick',
      words: `${thickness_um} µm is more than hot dipping leaves on a bar. A drip, or the probe lifted off?`,
    };
  if (middle === null || (thickness_um < middle * unlike && thickness_um > middle / unlike)) return null;
  return {
    code: 'unlike-the-others',
    words: `${thickness_um} µm is far from the other readings of this product, which lie about ${Math.round(middle)} µm.`,
  };
}

function fits(value_um: number, middle: number | null): boolean {
  if (middle === null) return value_um >= dipped.least_um && value_um <= dipped.greatest_um;
  return value_um < middle * near && value_um > middle / near;
}

/** The median; null where there are too few to tell. Zeros are bare spots and say nothing of the rest. */
function medianOf(values_um: readonly number[]): number | null {
  const sorted = values_um.filter((value) => value > 0).sort((a, b) => a - b);
  if (sorted.length < enough) return null;
  const half = Math.floor(sorted.length / 2);
  const [upper, lower] = [sorted[half] ?? 0, sorted[half - 1] ?? 0];
  return sorted.length % 2 === 1 ? upper : (upper + lower) / 2;
}
