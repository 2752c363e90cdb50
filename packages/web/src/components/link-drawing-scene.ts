import {
  crownPath,
  edgePath,
  type LinkOutline,
  legPath,
  linkOutline,
  ringPath,
  weldPath,
} from './link-drawing-outline.ts';
import type { LinkProportion } from './link-drawing-proportion.ts';

/** Nominal size d in the unit of the large drawing. */
export const sceneSize = 100;

/** Places on a link, as they are written into the record. */
export const linkPlaces = ['crown', 'shank', 'weld', 'beside weld', 'in grip'] as const;
export type LinkPlace = (typeof linkPlaces)[number];

export interface ScenePoint {
  readonly x: number;
  readonly y: number;
}

/** A letter in a ring outside the link, and where its leader ends. */
export interface Balloon {
  readonly place: LinkPlace;
  readonly ring: ScenePoint;
  readonly tips: readonly ScenePoint[];
}

/** One link between its neighbours, the left one held in a grip. */
export interface LinkScene {
  readonly outline: LinkOutline;
  readonly viewBox: string;
  /** Left, top, width and height of the grip. */
  readonly grip: { readonly x: number; readonly y: number; readonly width: number; readonly height: number };
  /** The part of the drawing that stands for each place. */
  readonly regions: Readonly<Record<LinkPlace, string>>;
  readonly balloons: readonly Balloon[];
  readonly pitch: number;
  readonly weld: string;
}

export const balloonRadius = 25;

/** Lays out the large drawing of a link. */
export function linkScene(proportion: LinkProportion): LinkScene {
  const outline = linkOutline(proportion, sceneSize);
  const { reach, outerRadius } = outline;
  const grip = { x: -reach - 175, y: -115, width: 120, height: 230 };
  const top = -outerRadius - 105;
  const weld = weldPath(outline, proportion.weld * sceneSize);
  const left = grip.x - 20;
  return {
    outline,
    viewBox: `${left} ${top} ${reach + 120 - left} ${2 * outerRadius + 242}`,
    grip,
    regions: regionsOf(outline, grip, weld),
    balloons: balloonsOf(outline, grip),
    pitch: proportion.pitch * sceneSize,
    weld,
  };
}

function regionsOf(outline: LinkOutline, grip: LinkScene['grip'], weld: string): LinkScene['regions'] {
  const { straight, weldHalf, besideHalf } = outline;
  return {
    crown: crownPath(outline, 'left') + crownPath(outline, 'right'),
    shank:
      legPath(outline, 'lower', [-straight, straight]) +
      legPath(outline, 'upper', [-straight, -besideHalf]) +
      legPath(outline, 'upper', [besideHalf, straight]),
    weld,
    'beside weld':
      legPath(outline, 'upper', [-besideHalf, -weldHalf]) + legPath(outline, 'upper', [weldHalf, besideHalf]),
    'in grip': `M${grip.x} ${grip.y}h${grip.width}v${grip.height}h${-grip.width}Z`,
  };
}

function balloonsOf(outline: LinkOutline, grip: LinkScene['grip']): readonly Balloon[] {
  const { straight, outerRadius, innerRadius, weldHalf, besideHalf } = outline;
  const bar = (outerRadius + innerRadius) / 2;
  const above = -outerRadius - 70;
  const below = outerRadius + 108;
  const slant = bar * Math.SQRT1_2;
  const beside = (weldHalf + besideHalf) / 2;
  return [
    {
      place: 'crown',
      ring: { x: straight + outerRadius, y: -outerRadius + 5 },
      tips: [{ x: straight + slant, y: -slant }],
    },
    {
      place: 'shank',
      ring: { x: -straight, y: below },
      tips: [{ x: -straight * 0.6, y: bar }],
    },
    { place: 'weld', ring: { x: -38, y: above }, tips: [{ x: -2, y: -bar }] },
    { place: 'beside weld', ring: { x: beside + 60, y: above }, tips: [{ x: beside, y: -bar }] },
    {
      place: 'in grip',
      ring: { x: grip.x + grip.width / 2, y: grip.y - 60 },
      tips: [{ x: grip.x + grip.width / 2, y: grip.y + 22 }],
    },
  ];
}

/** A link on edge that hangs in this one at the left or right, from its round end to where the drawing breaks it off. */
export function neighbourPath({ outline, pitch }: LinkScene, side: 'left' | 'right', reach: number): string {
  const turn = side === 'left' ? -1 : 1;
  const radius = sceneSize / 2;
  const end = turn * (pitch - outline.reach + radius);
  const sweep = side === 'left' ? 1 : 0;
  return `M${turn * reach} ${-radius}H${end}A${radius} ${radius} 0 0 ${sweep} ${end} ${radius}H${turn * reach}`;
}

/** Measures of the small drawing of a piece: its free links in a row, one gripped link at each end. */
export interface ChainScene {
  readonly viewBox: string;
  readonly size: number;
  readonly outline: LinkOutline;
  readonly ring: string;
  readonly edge: string;
  /** Where each free link lies, counted from the fixed end; every second one is seen on edge. */
  readonly links: readonly { readonly link: number; readonly x: number; readonly isOnEdge: boolean }[];
  /** Middles of the two gripped links. */
  readonly gripped: readonly [number, number];
  readonly grips: readonly [GripBox, GripBox];
}

export interface GripBox {
  readonly x: number;
  readonly y: number;
  readonly width: number;
  readonly height: number;
}

/** Lays out the small drawing of a piece with `links` free links. */
export function chainScene(proportion: LinkProportion, links: number): ChainScene {
  const size = 20;
  const outline = linkOutline(proportion, size);
  const pitch = proportion.pitch * size;
  const { reach, outerRadius } = outline;
  const [first, last] = [-pitch, links * pitch];
  // A grip takes hold of the outer half of its link.
  const height = 2 * outerRadius + 6;
  const box = (x: number) => ({ x, y: -height / 2, width: reach + 14, height });
  const grips = [box(first - reach - 14), box(last)] as const;
  const [left, right] = [grips[0].x - 4, last + reach + 18];
  return {
    viewBox: `${left} ${-height / 2 - 4} ${right - left} ${height + 38}`,
    size,
    outline,
    ring: ringPath(outline),
    edge: edgePath(outline, size),
    links: Array.from({ length: links }, (_, at) => ({ link: at + 1, x: at * pitch, isOnEdge: at % 2 === 1 })),
    gripped: [first, last],
    grips,
  };
}
