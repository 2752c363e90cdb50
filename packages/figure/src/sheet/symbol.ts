/** The part of a canvas path that symbols use. */
export interface Pen {
  moveTo(x: number, y: number): void;
  lineTo(x: number, y: number): void;
  closePath(): void;
  arc(x: number, y: number, r: number, from: number, to: number): void;
}

/** A mark about the origin; `size` is the area of a disc of the same weight. The form Plot takes for a symbol of one's own. */
export interface DrawnSymbol {
  draw(pen: Pen, size: number): void;
}

type Corner = readonly [x: number, y: number];

/** Open lines through corners given in radii. */
function strokes(...lines: readonly (readonly Corner[])[]): DrawnSymbol {
  return {
    draw(pen, size) {
      for (const line of lines) along(pen, line, Math.sqrt(size / Math.PI));
    },
  };
}

function outline(...corners: readonly Corner[]): DrawnSymbol {
  return {
    draw(pen, size) {
      along(pen, corners, Math.sqrt(size / Math.PI));
      pen.closePath();
    },
  };
}

function along(pen: Pen, line: readonly Corner[], r: number): void {
  for (const [index, [x, y]] of line.entries()) {
    if (index === 0) pen.moveTo(x * r, y * r);
    else pen.lineTo(x * r, y * r);
  }
}

export const disc: DrawnSymbol = {
  draw(pen, size) {
    const r = Math.sqrt(size / Math.PI);
    pen.moveTo(r, 0);
    pen.arc(0, 0, r, 0, 2 * Math.PI);
    pen.closePath();
  },
};
export const square = outline([-0.9, -0.9], [0.9, -0.9], [0.9, 0.9], [-0.9, 0.9]);
export const triangle = outline([0, -1.3], [1.2, 0.85], [-1.2, 0.85]);
export const diamond = outline([0, -1.3], [1.3, 0], [0, 1.3], [-1.3, 0]);
const downwards = outline([0, 1.3], [1.2, -0.85], [-1.2, -0.85]);
const lozenge = outline([0, -1.5], [0.9, 0], [0, 1.5], [-0.9, 0]);

/** A shaft with an open head: the true value lies that way. */
export const arrowRight = strokes(
  [
    [0, 0],
    [4, 0],
  ],
  [
    [2.6, -1.2],
    [4, 0],
    [2.6, 1.2],
  ],
);
export const arrowUp = strokes(
  [
    [0, 0],
    [0, -4],
  ],
  [
    [-1.2, -2.6],
    [0, -4],
    [1.2, -2.6],
  ],
);
/** Heads alone, for an interval that runs on beyond the figure. */
export const headRight = strokes([
  [-1.3, -1.3],
  [0, 0],
  [-1.3, 1.3],
]);
export const headLeft = strokes([
  [1.3, -1.3],
  [0, 0],
  [1.3, 1.3],
]);
/** An opening bracket: from here upwards. */
export const bracket = strokes([
  [0.9, -1.9],
  [0, -1.9],
  [0, 1.9],
  [0.9, 1.9],
]);
export const upright = strokes([
  [0, -1.9],
  [0, 1.9],
]);
/** A short stroke across the end of an interval. */
export const stop = strokes([
  [0, -1],
  [0, 1],
]);

const known: Readonly<Record<string, DrawnSymbol>> = { bar: disc, any: disc, weld: square, 'beside weld': triangle };
const others = [diamond, downwards, lozenge] as const;

/** The shape of a break mode: the same in every figure, whatever else broke. */
export function modeShape(mode: string): DrawnSymbol {
  const sum = [...mode].reduce((total, letter) => total + (letter.codePointAt(0) ?? 0), 0);
  return known[mode] ?? others[sum % others.length] ?? diamond;
}

/** A symbol as the data of a path. */
export function pathOf(symbol: DrawnSymbol, r: number): string {
  const steps: string[] = [];
  const at = (x: number, y: number) => `${Number(x.toFixed(3))},${Number(y.toFixed(3))}`;
  symbol.draw(
    {
      moveTo: (x, y) => steps.push(`M${at(x, y)}`),
      lineTo: (x, y) => steps.push(`L${at(x, y)}`),
      closePath: () => steps.push('Z'),
      // Only whole discs are drawn, and an arc of a path must not end where it begins.
      arc: (x, y, radius) =>
        steps.push(
          `A${at(radius, radius)},0,1,1,${at(x - radius, y)}A${at(radius, radius)},0,1,1,${at(x + radius, y)}`,
        ),
    },
    Math.PI * r * r,
  );
  return steps.join('');
}
