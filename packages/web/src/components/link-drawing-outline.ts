import type { LinkProportion } from './link-drawing-proportion.ts';

/** A link face on, its middle at the origin and its long side along x, in the unit of `size`. */
export interface LinkOutline {
  /** Half the straight part of a leg. */
  readonly straight: number;
  readonly outerRadius: number;
  readonly innerRadius: number;
  /** Half the length outside. */
  readonly reach: number;
  readonly weldHalf: number;
  /** Half the weld and the zone beside it. */
  readonly besideHalf: number;
}

/** Measures of the outline of a link with bars of `size`: two straight legs between two half circles. */
export function linkOutline({ pitch, outerWidth }: LinkProportion, size: number): LinkOutline {
  const innerRadius = ((outerWidth - 2) * size) / 2;
  // A link shorter than wide cannot be made of half circles; it is drawn round.
  const straight = Math.max(0, (pitch * size) / 2 - innerRadius);
  const weldHalf = Math.min(0.2 * size, straight / 3);
  return {
    straight,
    outerRadius: innerRadius + size,
    innerRadius,
    reach: straight + innerRadius + size,
    weldHalf,
    besideHalf: Math.min(weldHalf + 0.32 * size, (straight + weldHalf) / 2 + 0.06 * size, straight),
  };
}

/** The crown on one side: half a ring. */
export function crownPath({ straight, outerRadius, innerRadius }: LinkOutline, side: 'left' | 'right'): string {
  const at = side === 'right' ? straight : -straight;
  const turn = side === 'right' ? 1 : 0;
  return (
    `M${at} ${-outerRadius}A${outerRadius} ${outerRadius} 0 0 ${turn} ${at} ${outerRadius}` +
    `V${innerRadius}A${innerRadius} ${innerRadius} 0 0 ${1 - turn} ${at} ${-innerRadius}Z`
  );
}

/** A length of a leg between two places along it; the upper leg carries the weld. */
export function legPath(
  { outerRadius, innerRadius }: LinkOutline,
  leg: 'upper' | 'lower',
  [from, to]: readonly [number, number],
): string {
  const [near, far] = leg === 'upper' ? [-innerRadius, -outerRadius] : [innerRadius, outerRadius];
  return `M${from} ${far}H${to}V${near}H${from}Z`;
}

/** The weld on the upper leg: the bar swollen to the diameter of the upset. */
export function weldPath({ weldHalf, outerRadius, innerRadius }: LinkOutline, upset: number): string {
  const middle = -(outerRadius + innerRadius) / 2;
  const [top, bottom] = [middle - upset / 2, middle + upset / 2];
  const bend = weldHalf * 0.45;
  return (
    `M${-weldHalf} ${-outerRadius}C${-bend} ${-outerRadius} ${-weldHalf} ${top} 0 ${top}` +
    `S${bend} ${-outerRadius} ${weldHalf} ${-outerRadius}V${-innerRadius}` +
    `C${bend} ${-innerRadius} ${weldHalf} ${bottom} 0 ${bottom}` +
    `S${-bend} ${-innerRadius} ${-weldHalf} ${-innerRadius}Z`
  );
}

/** The whole link, without its weld; the opening is cut out (fill rule even-odd). */
export function ringPath(outline: LinkOutline): string {
  return `${ovalPath(outline, outline.outerRadius)}${ovalPath(outline, outline.innerRadius)}`;
}

/** An oval of two half circles about the ends of the straight legs. */
export function ovalPath({ straight }: LinkOutline, radius: number): string {
  return (
    `M${-straight} ${-radius}H${straight}A${radius} ${radius} 0 0 1 ${straight} ${radius}` +
    `H${-straight}A${radius} ${radius} 0 0 1 ${-straight} ${-radius}Z`
  );
}

/** A link seen on edge: a bar as long as the link, with round ends. */
export function edgePath({ reach }: LinkOutline, size: number): string {
  const [end, radius] = [reach - size / 2, size / 2];
  return `M${-end} ${-radius}H${end}A${radius} ${radius} 0 0 1 ${end} ${radius}H${-end}A${radius} ${radius} 0 0 1 ${-end} ${-radius}Z`;
}
