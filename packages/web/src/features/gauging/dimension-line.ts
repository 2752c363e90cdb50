import type { GaugingPlace } from '@provinghouse/core';
import type { LinkOutline } from '../../components/link-drawing-outline.ts';

interface Point {
  readonly x: number;
  readonly y: number;
}

/** A dimension on the drawing of a link: the line between the jaws, and what they touch. */
export interface DimensionLine {
  readonly from: Point;
  readonly to: Point;
  /** True for a small thing measured from outside: the arrows point at it. */
  readonly isAcross: boolean;
}

/**
 * Where a place lies on a link face on, its middle at the origin, long side along x, weld on the upper leg.
 *
 * @param upset greatest diameter at the weld, in the unit of the outline
 * @returns null for a length over several links, which one link cannot show
 */
export function dimensionLine(
  { quantity, position }: GaugingPlace,
  outline: LinkOutline,
  upset: number,
): DimensionLine | null {
  const { straight, innerRadius: inner, outerRadius: outer, reach } = outline;
  const upright = (x: number, top: number, bottom: number, isAcross = false) => ({
    from: { x, y: top },
    to: { x, y: bottom },
    isAcross,
  });
  const level = (y: number, half: number) => ({ from: { x: -half, y }, to: { x: half, y }, isAcross: false });
  switch (quantity) {
    case 'diameter':
      if (position !== 'crown') return upright(-0.4 * straight, inner, outer, true);
      return { from: { x: straight + inner, y: 0 }, to: { x: straight + outer, y: 0 }, isAcross: true };
    case 'weldDiameter': {
      const middle = -(inner + outer) / 2;
      return upright(0, middle - upset / 2, middle + upset / 2, true);
    }
    case 'pitch':
      return level(0, straight + inner);
    case 'innerWidth':
      return upright(0.45 * straight, -inner, inner);
    case 'outerWidth':
      return upright(-0.45 * straight, -outer, outer);
    case 'outerLength':
      return level(0.35 * inner, reach);
    default:
      return null;
  }
}
