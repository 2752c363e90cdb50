import type { WatchSample } from './state.ts';

/** Length of a block: what the eye takes for one moment. */
export const BLOCK_S = 0.1;
/** Blocks kept: six seconds and some. */
const KEPT = 64;

/** Means of the readings of one tenth of a second; slower sources give one block a reading. */
export interface Block {
  time_s: number;
  force_kN: number;
  /** NaN where no reading had a table. */
  table_mm: number;
  readings: number;
}

/** The block being filled and a ring of the last ones. */
export interface Blocks {
  index: number;
  readings: number;
  sumTime: number;
  sumForce: number;
  tables: number;
  sumTable: number;
  readonly ring: readonly Block[];
  /** Blocks closed so far. */
  closed: number;
}

export function startBlocks(): Blocks {
  return {
    index: Number.NEGATIVE_INFINITY,
    readings: 0,
    sumTime: 0,
    sumForce: 0,
    tables: 0,
    sumTable: 0,
    ring: Array.from({ length: KEPT }, () => ({ time_s: 0, force_kN: 0, table_mm: Number.NaN, readings: 0 })),
    closed: 0,
  };
}

/** Closes the block that a reading no longer belongs to; true when there was one. */
export function closeBlock(blocks: Blocks, index: number): boolean {
  if (index === blocks.index) return false;
  blocks.index = index;
  if (blocks.readings === 0) return false;
  const block = blocks.ring[blocks.closed % KEPT] as Block;
  block.time_s = blocks.sumTime / blocks.readings;
  block.force_kN = blocks.sumForce / blocks.readings;
  block.table_mm = blocks.tables > 0 ? blocks.sumTable / blocks.tables : Number.NaN;
  block.readings = blocks.readings;
  blocks.closed++;
  blocks.readings = 0;
  blocks.sumTime = 0;
  blocks.sumForce = 0;
  blocks.tables = 0;
  blocks.sumTable = 0;
  return true;
}

export function addToBlock(blocks: Blocks, sample: WatchSample): void {
  blocks.readings++;
  blocks.sumTime += sample.time_s;
  blocks.sumForce += sample.force_kN;
  if (sample.table_mm === null || Number.isNaN(sample.table_mm)) return;
  blocks.tables++;
  blocks.sumTable += sample.table_mm;
}

/** The block closed `back` before the last; null when there is none or it is no longer kept. */
export function blockBack(blocks: Blocks, back: number): Block | null {
  if (back >= blocks.closed || back >= KEPT) return null;
  return blocks.ring[(blocks.closed - 1 - back) % KEPT] ?? null;
}
