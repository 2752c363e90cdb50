/** A named stream of pseudo-random numbers: the same seed and name give the same numbers, whatever else was drawn. */
export interface Random {
  /** In [0, 1). */
  readonly uniform: () => number;
  readonly between: (low: number, high: number) => number;
  /** Gaussian, cut at three standard deviations: nobody keeps a reading that far out without reading again. */
  readonly normal: (mean: number, sd: number) => number;
  readonly chance: (probability: number) => boolean;
  readonly pick: <T>(items: readonly [T, ...T[]]) => T;
  /** A shuffled copy (Fisher and Yates, in Durstenfeld's form). */
  readonly shuffled: <T>(items: readonly T[]) => T[];
}

/** FNV-1a over the name's UTF-16 units, so that streams with like names start far apart. */
function hash(name: string): number {
  let h = 0x811c9dc5;
  for (let i = 0; i < name.length; i++) {
    h ^= name.charCodeAt(i);
    h = Math.imul(h, 0x01000193);
  }
  return h >>> 0;
}

/** mulberry32: one 32-bit word of state, full period, ample for drawing a few million demonstration numbers. */
function mulberry32(start: number): () => number {
  let state = start >>> 0;
  return () => {
    state = (state + 0x6d2b79f5) >>> 0;
    let t = Math.imul(state ^ (state >>> 15), state | 1);
    t ^= t + Math.imul(t ^ (t >>> 7), t | 61);
    return ((t ^ (t >>> 14)) >>> 0) / 4294967296;
  };
}

/** Opens the stream called `name` under `seed`. */
export function stream(seed: number, name: string): Random {
  const uniform = mulberry32(hash(`${seed}/${name}`));
  for (let i = 0; i < 8; i++) uniform();
  const standardNormal = (): number => {
    const radius = Math.sqrt(-2 * Math.log(1 - uniform()));
    const z = radius * Math.cos(2 * Math.PI * uniform());
    return Math.abs(z) > 3 ? standardNormal() : z;
  };
  return {
    uniform,
    between: (low, high) => low + (high - low) * uniform(),
    normal: (mean, sd) => mean + sd * standardNormal(),
    chance: (probability) => uniform() < probability,
    pick: (items) => items[Math.floor(uniform() * items.length)] ?? items[0],
    shuffled: (items) => shuffle([...items], uniform),
  };
}

function shuffle<T>(items: T[], uniform: () => number): T[] {
  for (let i = items.length - 1; i > 0; i--) {
    const j = Math.floor(uniform() * (i + 1));
    const moved = items.splice(j, 1);
    items.splice(i, 0, ...moved);
  }
  return items;
}

/** The stream of one part of a practice pull, so that no draw of one part shifts those of another. */
export function practiceStream(seed: number, part: string): Random {
  return stream(seed, `practice/${part}`);
}
