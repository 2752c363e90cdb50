/** Angle between neighbours on a sunflower: points laid by it spread evenly over a disc. */
const goldenAngle = Math.PI * (3 - Math.sqrt(5));

interface Disc {
  readonly x: number;
  readonly y: number;
  readonly radius: number;
}

interface Texture extends Disc {
  readonly count: number;
  readonly length: number;
  /** Where strokes may stand; everywhere on the disc where it is left out. */
  readonly where?: (x: number, y: number) => boolean;
  /** Direction of the stroke at a place, in radians; turning from one to the next where it is left out. */
  readonly turn?: (x: number, y: number, at: number) => number;
}

/** Short strokes spread evenly over a disc: the grain of a fracture face. */
export function strokesPath({ x, y, radius, count, length, where, turn }: Texture): string {
  let path = '';
  for (let at = 0; at < count; at += 1) {
    const reach = (radius - length / 2) * Math.sqrt((at + 0.5) / count);
    const px = x + reach * Math.cos(at * goldenAngle);
    const py = y + reach * Math.sin(at * goldenAngle);
    if (where && !where(px, py)) continue;
    const angle = turn ? turn(px, py, at) : at * 1.9;
    const [dx, dy] = [(Math.cos(angle) * length) / 2, (Math.sin(angle) * length) / 2];
    path += `M${round(px - dx)} ${round(py - dy)}L${round(px + dx)} ${round(py + dy)}`;
  }
  return path;
}

/** Strokes that run from a ring outwards: a rim that tore off aslant. */
export function rimPath(disc: Disc, inner: number, count: number): string {
  return Array.from({ length: count }, (_, at) => {
    const angle = (2 * Math.PI * at) / count;
    const [cos, sin] = [Math.cos(angle), Math.sin(angle)];
    const at_ = (radius: number) => `${round(disc.x + radius * cos)} ${round(disc.y + radius * sin)}`;
    return `M${at_(inner + 1.5)}L${at_(disc.radius - 1)}`;
  }).join('');
}

/** Rays from an origin on the edge of a disc to its other side. */
export function raysPath(disc: Disc, count: number): string {
  const origin = { x: disc.x, y: disc.y + disc.radius };
  return Array.from({ length: count }, (_, at) => {
    const angle = -Math.PI * ((at + 1) / (count + 1));
    const chord = -2 * disc.radius * Math.sin(angle);
    // Rays of a brittle break are seen from a little way off the origin, every second one later.
    const from = chord * (at % 2 === 0 ? 0.16 : 0.42);
    const place = (reach: number) =>
      `${round(origin.x + reach * Math.cos(angle))} ${round(origin.y + reach * Math.sin(angle))}`;
    return `M${place(from)}L${place(chord * 0.96)}`;
  }).join('');
}

/** Bands about an origin on the edge of a disc, as far as they lie inside it. */
export function bandsPath(disc: Disc, radii: readonly number[]): string {
  return radii
    .map((radius) => {
      // Where two circles meet whose middles lie the radius of the disc apart.
      const half = Math.acos(radius / (2 * disc.radius));
      const at = (turn: number) => {
        const angle = -Math.PI / 2 + turn * half;
        return `${round(disc.x + radius * Math.cos(angle))} ${round(disc.y + disc.radius + radius * Math.sin(angle))}`;
      };
      return `M${at(-1)}A${radius} ${radius} 0 0 1 ${at(1)}`;
    })
    .join('');
}

function round(value: number): number {
  return Math.round(value * 10) / 10;
}
