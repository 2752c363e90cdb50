const inverseRootTwoPi = 0.3989422804014327;

/** Rational approximations of Cody, Mathematics of Computation 23 (1969) 631-637, by the range of |z|. */
const middle = {
  top: [0.06568233791820745, 2.2352520354606837, 161.02823106855587, 1067.689485460371, 18154.98125334356],
  bottom: [1, 47.20258190468824, 976.0985517377767, 10260.932208618979, 45507.78933502673],
};
const shoulder = {
  top: [
    1.0765576773720192e-8, 0.39894151208813466, 8.883149794388375, 93.50665613217785, 597.2702763948002,
    2494.5375852903726, 6848.190450536283, 11602.65143764735, 9842.714838383978,
  ],
  bottom: [
    1, 22.266688044328117, 235.387901782625, 1519.3775994075547, 6485.558298266761, 18615.571640885097,
    34900.95272114598, 38912.00328609327, 19685.429676859992,
  ],
};
const far = {
  top: [
    0.02307344176494017, 0.215898534057957, 0.12740116116024736, 0.02223527787064981, 0.0014216191932278936,
    0.000029112874951168793,
  ],
  bottom: [
    1, 1.284260096144911, 0.4682382124808651, 0.06598813786892856, 0.0037823963320275824, 0.00007297515550839662,
  ],
};

interface Ratio {
  readonly top: readonly number[];
  readonly bottom: readonly number[];
}

function ratio({ top, bottom }: Ratio, x: number): number {
  return polynomial(top, x) / polynomial(bottom, x);
}

/** Coefficients of the highest power first. */
function polynomial(coefficients: readonly number[], x: number): number {
  let value = 0;
  for (const coefficient of coefficients) value = value * x + coefficient;
  return value;
}

/** Density of the standard normal distribution. */
export function normalDensity(z: number): number {
  return inverseRootTwoPi * Math.exp(-0.5 * z * z);
}

/** P(Z > z) for z at least 0.67448975. The square is split so that its rounding does not reach the exponential. */
function farTail(z: number): number {
  if (z > 38.6) return 0;
  const inverse = 1 / (z * z);
  const factor = z < 5.656854249492381 ? ratio(shoulder, z) : (inverseRootTwoPi - inverse * ratio(far, inverse)) / z;
  const coarse = Math.trunc(z * 16) / 16;
  return Math.exp(-0.5 * coarse * coarse) * Math.exp(-0.5 * (z - coarse) * (z + coarse)) * factor;
}

/** P(Z > z) of the standard normal distribution, accurate to about 1e-15 of itself in both tails. NaN is misuse. */
export function normalUpper(z: number): number {
  if (Number.isNaN(z)) throw new RangeError('the normal distribution takes a number, not NaN');
  if (z >= 0.67448975) return farTail(z);
  if (z <= -0.67448975) return 1 - farTail(-z);
  return 0.5 - z * ratio(middle, z * z);
}

/** P(Z <= z) of the standard normal distribution, accurate to about 1e-15 of itself in both tails. NaN is misuse. */
export function normalCdf(z: number): number {
  return normalUpper(-z);
}

/** ln P(Z <= z), also where the probability itself is too small for a double. */
export function normalLogCdf(z: number): number {
  if (z > -37) return z > 0 ? Math.log1p(-normalUpper(z)) : Math.log(normalCdf(z));
  const inverse = 1 / (z * z);
  return -0.5 * z * z + Math.log(inverseRootTwoPi / -z) + Math.log1p(-inverse * (1 - inverse * (3 - 15 * inverse)));
}

/** Rational approximations of Wichura, algorithm AS 241 (PPND16), Applied Statistics 37 (1988) 477-484. */
const quantileMiddle: Ratio = {
  top: [
    2509.0809287301227, 33430.57558358813, 67265.7709270087, 45921.95393154987, 13731.69376550946, 1971.5909503065513,
    133.14166789178438, 3.3871328727963665,
  ],
  bottom: [
    5226.495278852855, 28729.085735721943, 39307.89580009271, 21213.794301586597, 5394.196021424751, 687.1870074920579,
    42.31333070160091, 1,
  ],
};
const quantileShoulder: Ratio = {
  top: [
    0.0007745450142783414, 0.022723844989269184, 0.2417807251774506, 1.2704582524523684, 3.647848324763205,
    5.769497221460691, 4.630337846156546, 1.4234371107496837,
  ],
  bottom: [
    1.0507500716444169e-9, 0.0005475938084995344, 0.015198666563616457, 0.14810397642748008, 0.6897673349851,
    1.6763848301838038, 2.053191626637759, 1,
  ],
};
const quantileFar: Ratio = {
  top: [
    2.0103343992922881e-7, 0.000027115555687434876, 0.0012426609473880784, 0.026532189526576124, 0.29656057182850487,
    1.7848265399172913, 5.463784911164114, 6.657904643501104,
  ],
  bottom: [
    2.0442631033899397e-15, 1.421511758316446e-7, 0.000018463183175100548, 0.0007868691311456133, 0.014875361291085,
    0.1369298809227358, 0.599832206555888, 1,
  ],
};

/** z with P(Z <= z) = `p`, p in [0, 1]; minus and plus infinity at the ends. A p outside is misuse. */
export function normalQuantile(p: number): number {
  if (!(p >= 0 && p <= 1)) throw new RangeError(`a probability lies between 0 and 1, not ${p}`);
  const centred = p - 0.5;
  if (Math.abs(centred) <= 0.425) return centred * ratio(quantileMiddle, 0.180625 - centred * centred);
  const tail = centred < 0 ? p : 1 - p;
  if (tail === 0) return centred < 0 ? -Infinity : Infinity;
  const root = Math.sqrt(-Math.log(tail));
  const size = root <= 5 ? ratio(quantileShoulder, root - 1.6) : ratio(quantileFar, root - 5);
  return centred < 0 ? -size : size;
}
