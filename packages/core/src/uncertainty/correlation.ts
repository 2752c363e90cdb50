/** Correlation coefficient of two inputs, named. */
export interface Correlation {
  readonly between: readonly [string, string];
  readonly coefficient: number;
}

/**
 * The correlations as a matrix in the order of `names`; what is not stated is 0.
 * @throws RangeError for a coefficient outside -1 to 1, a name that is not there, or a quantity with itself
 */
export function correlationBetween(
  names: readonly string[],
  stated: readonly Correlation[],
): readonly (readonly number[])[] {
  if (stated.length > 0 && new Set(names).size < names.length)
    throw new RangeError('correlated inputs have names of their own');
  const matrix: number[][] = names.map((_, i) => names.map((_, j) => Number(i === j)));
  for (const { between, coefficient } of stated) {
    const [i, j] = [names.indexOf(between[0]), names.indexOf(between[1])];
    const [first, second] = [matrix[i], matrix[j]];
    if (!first || !second) throw new RangeError(`no inputs named ${between.join(' and ')}`);
    if (i === j) throw new RangeError(`${between[0]} is fully correlated with itself`);
    if (!(Math.abs(coefficient) <= 1)) throw new RangeError('a correlation coefficient lies between -1 and 1');
    first[j] = coefficient;
    second[i] = coefficient;
  }
  return matrix;
}

/**
 * Lower triangle L with L L' = matrix (Cholesky); a direction without spread is left out, so that full correlation is allowed.
 * @throws RangeError where the stated correlations cannot hold together
 */
export function triangleOf(matrix: readonly (readonly number[])[]): readonly (readonly number[])[] {
  const triangle: number[][] = [];
  for (const [i, row] of matrix.entries()) {
    const found: number[] = [];
    for (let j = 0; j <= i; j++) {
      const other = triangle[j] ?? found;
      let rest = row[j] ?? 0;
      for (let k = 0; k < j; k++) rest -= (found[k] ?? 0) * (other[k] ?? 0);
      if (j === i) {
        if (rest < -1e-9) throw new RangeError('these correlations cannot hold together');
        found.push(Math.sqrt(Math.max(0, rest)));
      } else {
        const pivot = other[j] ?? 0;
        found.push(pivot < 1e-9 ? 0 : rest / pivot);
      }
    }
    triangle.push(found);
  }
  return triangle;
}
