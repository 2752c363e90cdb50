const halfLogTwoPi = 0.9189385332046727;

/** B(2k) / (2k (2k - 1)) of Stirling's series, highest first (Abramowitz and Stegun 6.1.41). */
const stirlingSeries = [-3617 / 122_400, 1 / 156, -691 / 360_360, 1 / 1188, -1 / 1680, 1 / 1260, -1 / 360, 1 / 12];

/**
 * What Stirling's formula leaves over: ln Gamma(x) - ((x - 1/2) ln x - x + ln(2 pi) / 2), for x above 0.
 * Densities written with it keep their digits where ln Gamma itself is huge (Loader, Fast and accurate computation of binomial probabilities, 2000).
 */
export function stirlingRemainder(x: number): number {
  if (!(x > 0)) throw new RangeError(`the gamma function is taken here of numbers above 0, not of ${x}`);
  if (x < 10) return logGamma(x) - ((x - 0.5) * Math.log(x) - x + halfLogTwoPi);
  const inverseSquare = 1 / (x * x);
  let sum = 0;
  for (const coefficient of stirlingSeries) sum = sum * inverseSquare + coefficient;
  return sum / x;
}

/** ln Gamma(x) for x above 0, by Stirling's series after raising the argument to 10 or more. */
export function logGamma(x: number): number {
  if (!(x > 0)) throw new RangeError(`the gamma function is taken here of numbers above 0, not of ${x}`);
  if (x === Infinity) return Infinity;
  let raised = x;
  let product = 1;
  while (raised < 10) {
    product *= raised;
    raised += 1;
  }
  return (raised - 0.5) * Math.log(raised) - raised + halfLogTwoPi + stirlingRemainder(raised) - Math.log(product);
}

/**
 * The deviance x ln(x / m) + m - x of a count x about its mean m, both above 0, without cancellation near x = m
 * (the series of the inverse hyperbolic tangent).
 */
export function deviance(x: number, mean: number): number {
  const difference = x - mean;
  if (Math.abs(difference) > 0.1 * (x + mean)) return x * Math.log(x / mean) - difference;
  const v = difference / (x + mean);
  let power = 2 * x * v;
  let sum = difference * v;
  for (let k = 3; k < 1000; k += 2) {
    power *= v * v;
    const next = sum + power / k;
    if (next === sum) break;
    sum = next;
  }
  return sum;
}
