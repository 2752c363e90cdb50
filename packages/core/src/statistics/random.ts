/** A seeded source of random numbers: the same seed gives the same numbers everywhere. */
export interface RandomSource {
  /** Uniform on [0, 1), 53 bits. */
  readonly uniform: () => number;
  /** Standard normal. */
  readonly normal: () => number;
  /** Uniform on 0, 1, ... `below` - 1. */
  readonly integer: (below: number) => number;
}

/**
 * xoshiro128** (Blackman and Vigna, Scrambled linear pseudorandom number generators, 2021), its state filled from `seed` by splitmix32.
 * Not for secrets. `seed` is any integer; only its low 32 bits count.
 */
export function seededRandom(seed: number): RandomSource {
  const next = xoshiro(fill(seed));
  const uniform = () => ((next() >>> 5) * 67_108_864 + (next() >>> 6)) / 9_007_199_254_740_992;
  return { uniform, normal: normalFrom(uniform), integer: (below) => Math.floor(uniform() * below) };
}

function fill(seed: number): Uint32Array {
  let state = seed >>> 0;
  return Uint32Array.from({ length: 4 }, () => {
    state = (state + 0x9e3779b9) >>> 0;
    let mixed = state ^ (state >>> 16);
    mixed = Math.imul(mixed, 0x21f0aaad);
    mixed ^= mixed >>> 15;
    mixed = Math.imul(mixed, 0x735a2d97);
    return (mixed ^ (mixed >>> 15)) >>> 0;
  });
}

function xoshiro(state: Uint32Array): () => number {
  let [a = 0, b = 0, c = 0, d = 0] = state;
  return () => {
    const scrambled = Math.imul(rotate(Math.imul(b, 5), 7), 9) >>> 0;
    const shifted = b << 9;
    c ^= a;
    d ^= b;
    b ^= c;
    a ^= d;
    c ^= shifted;
    d = rotate(d, 11);
    return scrambled;
  };
}

function rotate(value: number, by: number): number {
  return (value << by) | (value >>> (32 - by));
}

/** Marsaglia's polar method; every second number is kept for the next call. */
function normalFrom(uniform: () => number): () => number {
  let spare: number | null = null;
  return () => {
    if (spare !== null) {
      const kept = spare;
      spare = null;
      return kept;
    }
    let x = 0;
    let y = 0;
    let square = 0;
    do {
      x = 2 * uniform() - 1;
      y = 2 * uniform() - 1;
      square = x * x + y * y;
    } while (square >= 1 || square === 0);
    const scale = Math.sqrt((-2 * Math.log(square)) / square);
    spare = y * scale;
    return x * scale;
  };
}
