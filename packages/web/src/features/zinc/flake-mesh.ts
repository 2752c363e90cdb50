/** The strained part of a bar in the drawings of the adherence scale. */
export const strip = { x: 14, y: 12, width: 212, height: 56 };
const columns = 12;
const rows = 4;

interface Point {
  readonly x: number;
  readonly y: number;
}

/** Cells of the mesh that have flaked off at each grade of the scale, counted along the rows. */
const flaked: readonly (readonly number[])[] = [
  [],
  [],
  [],
  [15, 28, 33],
  [2, 3, 14, 15, 16, 27, 20, 21, 32, 33, 34, 22, 9, 41, 36],
  [
    0, 1, 2, 3, 12, 13, 14, 15, 16, 24, 25, 26, 27, 37, 38, 39, 40, 6, 7, 8, 9, 18, 19, 20, 21, 22, 30, 31, 32, 33, 34,
    42, 43, 44, 11, 46,
  ],
];

/** Patches of bare steel at a grade of the adherence scale, as four-sided cells of one uneven mesh. */
export function flakes(grade: number): readonly (readonly Point[])[] {
  return (flaked[grade] ?? []).map((cell) => {
    const [column, row] = [cell % columns, Math.floor(cell / columns)];
    return [knot(column, row), knot(column + 1, row), knot(column + 1, row + 1), knot(column, row + 1)];
  });
}

/** Bare share of the strip at a grade, %. */
export function drawnShare_pct(grade: number): number {
  const bare = flakes(grade).reduce((sum, patch) => sum + areaOf(patch), 0);
  return (100 * bare) / (strip.width * strip.height);
}

export function patchPath(patch: readonly Point[]): string {
  return `M${patch.map(({ x, y }) => `${x} ${y}`).join('L')}Z`;
}

/** A knot of the mesh, moved a little off its place so that flakes have no square edges; those on the rim stay on it. */
function knot(column: number, row: number): Point {
  const [across, up] = [strip.width / columns, strip.height / rows];
  const isRim = column === 0 || column === columns;
  const isEdge = row === 0 || row === rows;
  const dx = isRim ? 0 : Math.sin(column * 7.3 + row * 3.1) * across * 0.32;
  const dy = isEdge ? 0 : Math.cos(column * 4.7 + row * 9.2) * up * 0.3;
  return { x: round(strip.x + column * across + dx), y: round(strip.y + row * up + dy) };
}

function areaOf(patch: readonly Point[]): number {
  let sum = 0;
  patch.forEach((a, at) => {
    const b = patch[(at + 1) % patch.length] ?? a;
    sum += a.x * b.y - b.x * a.y;
  });
  return Math.abs(sum) / 2;
}

function round(value: number): number {
  return Math.round(value * 10) / 10;
}
