import { type RandomSource, seededRandom } from '../statistics/random.ts';

/** A piece to be pulled; pieces of one product are spread over the blocks. */
export interface OrderedPiece {
  readonly piece: string;
  readonly product: string;
}

export interface PullOrderInput {
  readonly pieces: readonly OrderedPiece[];
  /** Sessions within which the rig and the hands are taken as steady: days, half days. */
  readonly blocks: number;
  readonly seed: number;
}

export interface PullOrder {
  readonly order: readonly (OrderedPiece & { readonly position: number; readonly block: number })[];
  readonly blocks: number;
  readonly seed: number;
  /** How the order came about, to be kept with it: with it and the seed anybody gets the same order again. */
  readonly method: string;
  readonly doubts: readonly string[];
  readonly sentence: string;
}

/**
 * A randomised order in blocks: the pieces of each product are shuffled and dealt over the blocks as evenly as they go, the product's
 * first block drawn so that blocks stay of even size, then each block is shuffled. The same pieces (in any sequence) and seed give the
 * same order.
 * @throws RangeError for blocks not a whole number from 1, or a piece named twice
 */
export function pullOrder({ pieces, blocks, seed }: PullOrderInput): PullOrder {
  if (!(Number.isInteger(blocks) && blocks >= 1)) throw new RangeError('blocks are counted in whole numbers from 1');
  if (new Set(pieces.map(({ piece }) => piece)).size < pieces.length) throw new RangeError('a piece is named twice');
  const random = seededRandom(seed);
  const dealt = deal(pieces, blocks, random);
  const order = dealt
    .flatMap((block, index) => shuffled(block, random).map((piece) => ({ ...piece, block: index + 1 })))
    .map((piece, index) => ({ ...piece, position: index + 1 }));
  const products = new Set(pieces.map(({ product }) => product)).size;
  return {
    order,
    blocks,
    seed,
    method:
      'Randomised blocks: products shuffled and dealt over the blocks in turn, blocks shuffled (Fisher and Yates); xoshiro128** from the seed',
    doubts: doubtsOf(pieces, blocks),
    sentence: `${pieces.length} pieces of ${products} products are pulled in ${blocks} ${blocks === 1 ? 'block' : 'blocks'} in an order drawn by lot (seed ${seed}), so that drift of the rig or of the day cannot favour a product.`,
  };
}

/** Goes on with the block after the last one dealt to, so that no block is ahead by more than one piece. */
function deal(pieces: readonly OrderedPiece[], blocks: number, random: RandomSource): readonly OrderedPiece[][] {
  const sorted = pieces.toSorted((a, b) => compare(a.product, b.product) || compare(a.piece, b.piece));
  const products = shuffled([...Map.groupBy(sorted, ({ product }) => product).values()], random);
  const dealt: OrderedPiece[][] = Array.from({ length: blocks }, () => []);
  let next = random.integer(blocks);
  for (const group of products) {
    for (const piece of shuffled(group, random)) {
      dealt[next]?.push(piece);
      next = (next + 1) % blocks;
    }
  }
  return dealt;
}

/** By code unit: the same in every language of the machine. */
function compare(a: string, b: string): number {
  return a < b ? -1 : Number(a > b);
}

function shuffled<T>(list: readonly T[], random: RandomSource): T[] {
  const mixed = [...list];
  for (let last = mixed.length - 1; last > 0; last--) {
    const drawn = random.integer(last + 1);
    const kept = mixed[last] as T; // both inside, by the loop's bound
    mixed[last] = mixed[drawn] as T;
    mixed[drawn] = kept;
  }
  return mixed;
}

function doubtsOf(pieces: readonly OrderedPiece[], blocks: number): string[] {
  const groups = [...Map.groupBy(pieces, ({ product }) => product)];
  const missing = groups.filter(([, group]) => group.length < blocks).map(([product]) => product);
  if (missing.length === 0) return [];
  return [`Fewer pieces than blocks, so not in every block: ${missing.toSorted(compare).join(', ')}.`];
}
