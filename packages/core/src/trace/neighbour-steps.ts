const MOST_STEPS = 20_000;

/** Steps from one value to the next, at all places or, of more than 20 000, at that many or somewhat more, spread evenly. */
export function neighbourSteps(values: Float64Array): Float64Array {
  const stride = Math.max(1, Math.floor(values.length / MOST_STEPS));
  const steps = new Float64Array(Math.max(0, Math.floor((values.length - 1) / stride)));
  for (let k = 0; k < steps.length; k++) steps[k] = (values[k * stride + 1] as number) - (values[k * stride] as number);
  return steps;
}
