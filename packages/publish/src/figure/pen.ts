import { literal, type Typst } from '../typst/escape.ts';
import { type Point, simplified } from './point.ts';

/** Width of the text block, in points: figures fill it. */
export const figureWidth = 447;

export type Pen = 'axis' | 'grid' | 'curve' | 'unused' | 'minimum' | 'proof' | 'whisker' | 'link';

/** A hundredth of a point is finer than any printer. */
function coordinate(value: number): string {
  return String(Number(value.toFixed(2)));
}

export function stroke(pen: Pen, from: Point, to: Point): Typst {
  const ends = [from.x, from.y, to.x, to.y].map(coordinate).join(', ');
  return `stroke("${pen}", ${ends})`;
}

/** A line through many points; fewer than two draw nothing. */
export function polyline(pen: Pen, points: readonly Point[]): Typst[] {
  const drawn = simplified(points, 0.12);
  if (drawn.length < 2) return [];
  return [`trace("${pen}", ${drawn.map((point) => `${coordinate(point.x)}, ${coordinate(point.y)}`).join(', ')})`];
}

export type Mark = 'disc' | 'ring' | 'block' | 'open block' | 'arrow' | 'arrow up' | 'cross';

const marks: Readonly<Record<Mark, (place: string, radius: number) => Typst>> = {
  disc: (place, radius) => `disc(${place}, ${radius}, true)`,
  ring: (place, radius) => `disc(${place}, ${radius}, false)`,
  block: (place, radius) => `block-mark(${place}, ${radius}, true)`,
  'open block': (place, radius) => `block-mark(${place}, ${radius}, false)`,
  arrow: (place, radius) => `arrow(${place}, ${radius})`,
  'arrow up': (place, radius) => `arrow-up(${place}, ${radius})`,
  cross: (place, radius) => `cross-mark(${place}, ${radius})`,
};

export function mark(kind: Mark, point: Point, radius: number): Typst {
  return marks[kind](`${coordinate(point.x)}, ${coordinate(point.y)}`, radius);
}

export interface LabelStyle {
  /** Share of the words left of the point: 0 starts there, 1 ends there. */
  readonly across?: number;
  /** Share of the words above the point. */
  readonly down?: number;
  readonly size_pt?: number;
  readonly weight?: 'strong' | 'quiet';
}

export function label(point: Point, words: string, style: LabelStyle = {}): Typst {
  const body = style.weight === undefined ? literal(words) : `${style.weight}(${literal(words)})`;
  const options = [
    style.across === undefined ? '' : `, across: ${style.across}`,
    style.down === undefined ? '' : `, down: ${style.down}`,
    style.size_pt === undefined ? '' : `, size: ${style.size_pt}pt`,
  ];
  return `label(${coordinate(point.x)}, ${coordinate(point.y)}, ${body}${options.join('')})`;
}

/** A figure of a fixed size with words for who cannot see it. */
export function canvas(options: {
  readonly width: number;
  readonly height: number;
  readonly alternative: string;
  readonly drawing: readonly Typst[];
}): Typst {
  const { width, height, alternative, drawing } = options;
  return [`#canvas(${width}, ${height}, ${literal(alternative)}, {`, ...drawing.map((line) => `  ${line}`), '})'].join(
    '\n',
  );
}
