/**
 * Moves places along a line until each is at least `gap` from the next, each as little as it may be, and none beyond the
 * ends; returned in the order given. Places that cannot all fit are spread evenly.
 */
export function apart(
  places: readonly number[],
  room: { readonly gap: number; readonly from: number; readonly to: number },
): readonly number[] {
  const gap = Math.min(room.gap, places.length < 2 ? room.gap : (room.to - room.from) / (places.length - 1));
  const order = places.map((place, index) => ({ place, index })).sort((a, b) => a.place - b.place);
  const blocks: Block[] = [];
  for (const { place } of order) {
    blocks.push({ middle: place, count: 1 });
    mergeBack(blocks, gap, room);
  }
  const moved: number[] = [];
  let rank = 0;
  for (const block of blocks) {
    const first = startOf(block, gap, room);
    for (let step = 0; step < block.count; step += 1) moved[order[rank++]?.index ?? 0] = first + step * gap;
  }
  return moved;
}

/** Neighbours that touch move as one, about the mean of the places they wish for. */
interface Block {
  readonly middle: number;
  readonly count: number;
}

type Ends = { readonly from: number; readonly to: number };

function startOf({ middle, count }: Block, gap: number, ends: Ends): number {
  const length = (count - 1) * gap;
  return Math.min(Math.max(middle - length / 2, ends.from), ends.to - length);
}

function mergeBack(blocks: Block[], gap: number, ends: Ends): void {
  for (;;) {
    const [before, last] = [blocks.at(-2), blocks.at(-1)];
    if (!before || !last) return;
    if (startOf(before, gap, ends) + before.count * gap <= startOf(last, gap, ends) + 1e-9) return;
    const count = before.count + last.count;
    blocks.splice(-2, 2, { middle: (before.middle * before.count + last.middle * last.count) / count, count });
  }
}
