/** The mean of values [from, to), summed in their order; NaN for none. */
export function meanBetween(values: Float64Array, from: number, to: number): number {
  let sum = 0;
  for (let i = from; i < to; i++) sum += values[i] as number;
  return sum / (to - from);
}
