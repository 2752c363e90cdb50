/** A value and its uncertainty as they are printed: plain decimals, the same number of places. */
export interface RoundedResult {
  readonly value: string;
  readonly uncertainty: string;
}

/** ECMAScript's toFixed shows no more places than this. */
const mostPlaces = 100;

/**
 * Rounds an uncertainty to two significant digits and its value to the same decimal place (JCGM 100:2008 7.2.6).
 *
 * @param result.value finite, any unit
 * @param result.uncertainty standard or expanded, in the unit of the value; from 1e-99 upwards
 * @returns plain decimals without exponent; "-" before negative values, never before zero. 12345 with 1234 gives 12300
 * and 1200; an uncertainty that carries over (0.996) keeps two digits (1.0).
 *
 * Rounding is to the nearest, of the exact binary value. Throws a RangeError for a value that is not finite or an
 * uncertainty out of range: how an absent uncertainty is shown is the caller's to say.
 * @example roundByUncertainty({ value: 33.1234, uncertainty: 0.2149 }) // { value: '33.12', uncertainty: '0.21' }
 */
export function roundByUncertainty(result: { readonly value: number; readonly uncertainty: number }): RoundedResult {
  const { value, uncertainty } = result;
  if (!Number.isFinite(value)) throw new RangeError('only a finite value can be rounded');
  if (!(uncertainty >= 1e-99 && Number.isFinite(uncertainty))) {
    throw new RangeError('an uncertainty is a finite number of at least 1e-99');
  }
  const place = exponentOf(uncertainty.toExponential(1)) - 1;
  return { value: atPlace(value, place), uncertainty: atPlace(uncertainty, place) };
}

function exponentOf(exponential: string): number {
  return Number(exponential.slice(exponential.indexOf('e') + 1));
}

/** Rounds to a multiple of 10^place. */
function atPlace(value: number, place: number): string {
  const magnitude = Math.abs(value);
  const digits = place > 0 ? toMultiple(magnitude, place) : toPlaces(magnitude, Math.min(-place, mostPlaces));
  return value < 0 && /[1-9]/.test(digits) ? `-${digits}` : digits;
}

function toPlaces(magnitude: number, places: number): string {
  // From 1e21 toFixed falls back to an exponent; such a double is a whole number, so its places are zeros.
  if (magnitude < 1e21) return magnitude.toFixed(places);
  return BigInt(magnitude).toString() + (places > 0 ? `.${'0'.repeat(places)}` : '');
}

function toMultiple(magnitude: number, place: number): string {
  const unit = 10n ** BigInt(place);
  // Half a unit is a whole number here, so the fraction cut off cannot decide the rounding.
  const whole = BigInt(Math.trunc(magnitude));
  return (((whole + unit / 2n) / unit) * unit).toString();
}
