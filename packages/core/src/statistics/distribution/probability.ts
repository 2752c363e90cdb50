/** Refuses what is no probability; null and NaN are misuse. */
export function requireProbability(p: number): void {
  if (!(p >= 0 && p <= 1)) throw new RangeError(`a probability lies between 0 and 1, not ${p}`);
}

/** Refuses a parameter at or below 0 and NaN. */
export function requirePositive(name: string, value: number): void {
  if (!(value > 0)) throw new RangeError(`${name} must lie above 0, not ${value}`);
}

/** Refuses NaN where any number will do. */
export function requireNumber(name: string, value: number): void {
  if (Number.isNaN(value)) throw new RangeError(`${name} must be a number, not NaN`);
}

/** The two tails of a distribution at one place; each is computed to its own relative accuracy where it is the smaller. */
export interface Tails {
  readonly lower: number;
  readonly upper: number;
}
