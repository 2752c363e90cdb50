/**
 * The first place of the largest value on [from, to]. One function for every search of a maximum, so that over a big record it runs
 * as machine code from the second search on. A NaN is never the largest unless it comes first.
 */
export function placeOfLargest(values: Float64Array, from: number, to: number): number {
  let place = from;
  let largest = values[from] as number;
  for (let i = from + 1; i <= to; i++) {
    const value = values[i] as number;
    if (value > largest) {
      largest = value;
      place = i;
    }
  }
  return place;
}
