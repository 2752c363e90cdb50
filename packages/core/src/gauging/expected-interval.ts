import { tidy } from '../chain/bench-unit.ts';
import type { Limit } from '../chain/specification.ts';
import { plausibleBands } from './plausible-band.ts';
import type { GaugingQuantity } from './reading.ts';

/** Where a reading of one quantity is expected, in mm. Wider than its limits where those leave a side open. */
export interface ExpectedInterval {
  readonly quantity: GaugingQuantity;
  readonly lower_mm: number;
  readonly upper_mm: number;
  /** What is expected most: the nominal value, else the middle. */
  readonly expected_mm: number;
  /**
   * `limits`: the specification speaks of this quantity; `geometry`: it follows from limits of others (a link is as wide
   * outside as inside and two bars more); `common practice`: what any chain of this size has.
   */
  readonly basis: 'limits' | 'geometry' | 'common practice';
}

/** What {@link expectedInterval} works from. */
export interface ExpectationInputs {
  readonly nominalSize_mm: number;
  /** Limits of the specification, as `specificationFor` gives them; may be empty. */
  readonly limits: readonly Limit[];
  /** For `lengthOverLinks`: over how many links; taken as 1 where it is null or absent. */
  readonly overLinks?: number | null | undefined;
}

interface Sides {
  readonly lower: number | null;
  readonly upper: number | null;
  readonly nominal: number | null;
}

/** Share of the nominal size by which a bar without stated deviations is taken to vary (common practice). */
const barVariation = 0.1;
/** Share of a nominal value by which it is taken to vary where the specification states no deviations (common practice). */
const nominalVariation = 0.1;

/**
 * Where a reading of a quantity is expected: inside its limits; an open side is closed by the limits of the other
 * quantities of the link, else by what any chain of this size has. Meant for questioning a slip while typing, never for a
 * verdict.
 *
 * @param inputs nominal size in mm, above 0; limits in mm
 */
export function expectedInterval(quantity: GaugingQuantity, inputs: ExpectationInputs): ExpectedInterval {
  if (quantity === 'lengthOverLinks') return lengthInterval(inputs);
  const own = sidesOf(quantity, inputs.limits);
  const inferred = inferredSides(quantity, inputs);
  const band = plausibleBands[quantity];
  const nominal = own?.nominal ?? null;
  const isBare = own !== null && own.lower === null && own.upper === null;
  const spread = isBare && nominal !== null ? nominalVariation * nominal : null;
  const lower = own?.lower ?? minus(nominal, spread) ?? inferred.lower ?? band.least * inputs.nominalSize_mm;
  const upper = own?.upper ?? plus(nominal, spread) ?? inferred.upper ?? band.greatest * inputs.nominalSize_mm;
  const isInferred = inferred.lower !== null && inferred.upper !== null;
  const basis = own === null ? (isInferred ? 'geometry' : 'common practice') : 'limits';
  return finish(quantity, { lower, upper, nominal: nominal ?? inferred.nominal }, basis);
}

function finish(
  quantity: GaugingQuantity,
  sides: { readonly lower: number; readonly upper: number; readonly nominal: number | null },
  basis: ExpectedInterval['basis'],
): ExpectedInterval {
  const lower_mm = tidy(sides.lower);
  const upper_mm = tidy(Math.max(sides.lower, sides.upper));
  return { quantity, lower_mm, upper_mm, expected_mm: tidy(sides.nominal ?? (lower_mm + upper_mm) / 2), basis };
}

/** The sum of the pitches of n links: by its own limit where that is for n links, else n times the pitch. */
function lengthInterval(inputs: ExpectationInputs): ExpectedInterval {
  const links = inputs.overLinks ?? 1;
  const own = inputs.limits.find((limit) => limit.quantity === 'lengthOverLinks' && limit.links === links);
  const pitch = expectedInterval('pitch', inputs);
  const sides = {
    lower: own?.lower ?? pitch.lower_mm * links,
    upper: own?.upper ?? pitch.upper_mm * links,
    nominal: own?.nominal ?? pitch.expected_mm * links,
  };
  const basis = own !== undefined ? 'limits' : pitch.basis === 'limits' ? 'geometry' : pitch.basis;
  return finish('lengthOverLinks', sides, basis);
}

function sidesOf(quantity: GaugingQuantity, limits: readonly Limit[]): Sides | null {
  return limits.find((limit) => limit.quantity === quantity) ?? null;
}

/** Sides that follow from the other quantities of a link; null where nothing follows. */
function inferredSides(quantity: GaugingQuantity, { nominalSize_mm, limits }: ExpectationInputs): Sides {
  const bar = sidesOf('diameter', limits);
  const barLower = bar?.lower ?? nominalSize_mm * (1 - barVariation);
  const barUpper = bar?.upper ?? nominalSize_mm * (1 + barVariation);
  const outside = (inside: Sides | null): Sides => ({
    lower: plus(inside?.lower, 2 * barLower),
    upper: plus(inside?.upper, 2 * barUpper),
    nominal: plus(inside?.nominal, 2 * nominalSize_mm),
  });
  const inside = (over: Sides | null): Sides => ({
    lower: minus(over?.lower, 2 * barUpper),
    upper: minus(over?.upper, 2 * barLower),
    nominal: minus(over?.nominal, 2 * nominalSize_mm),
  });
  switch (quantity) {
    case 'diameter':
      return { lower: barLower, upper: barUpper, nominal: nominalSize_mm };
    case 'weldDiameter':
      return { lower: barLower, upper: null, nominal: null };
    case 'innerWidth':
      return inside(sidesOf('outerWidth', limits));
    case 'outerWidth':
      return outside(sidesOf('innerWidth', limits));
    case 'outerLength':
      return outside(withNominalSpread(sidesOf('pitch', limits) ?? pitchOfLength(limits)));
    default:
      return firstOf(inside(sidesOf('outerLength', limits)), withNominalSpread(pitchOfLength(limits)));
  }
}

/** The pitch behind a length over n links; a single pitch varies more than their mean, so only the nominal value is taken. */
function pitchOfLength(limits: readonly Limit[]): Sides | null {
  const length = limits.find((limit) => limit.quantity === 'lengthOverLinks');
  if (length === undefined || length.nominal === null || length.links === null) return null;
  return { lower: null, upper: null, nominal: length.nominal / length.links };
}

function withNominalSpread(sides: Sides | null): Sides | null {
  if (sides === null || sides.nominal === null || sides.lower !== null || sides.upper !== null) return sides;
  const spread = nominalVariation * sides.nominal;
  return { lower: sides.nominal - spread, upper: sides.nominal + spread, nominal: sides.nominal };
}

function firstOf(first: Sides, second: Sides | null): Sides {
  return first.lower !== null || second === null ? first : second;
}

function plus(value: number | null | undefined, further: number | null): number | null {
  return value == null || further === null ? null : value + further;
}

function minus(value: number | null | undefined, less: number | null): number | null {
  return value == null || less === null ? null : value - less;
}
