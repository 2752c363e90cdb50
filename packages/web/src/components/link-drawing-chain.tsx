import { useId } from 'react';
import { Hatch } from './link-drawing-link.tsx';
import { edgePath, ovalPath } from './link-drawing-outline.ts';
import type { ChainScene, GripBox } from './link-drawing-scene.ts';

interface ChainDrawingProps {
  readonly scene: ChainScene;
  /** The link at hand, drawn strong; 0 for the gripped ones, null for none. */
  readonly at?: number | null;
  /** Links with something to be told of, marked with a dot. */
  readonly marked?: ReadonlySet<number>;
}

/** The piece in its grips, fixed end at the left: links face on and on edge in turn, numbered. */
export function ChainDrawing({ scene, at = null, marked }: ChainDrawingProps) {
  const hatch = useId().replaceAll(/[^\w-]/g, '');
  const { links, gripped, outline, ring, edge } = scene;
  const all = [
    { link: 0, x: gripped[0], isOnEdge: true },
    ...links,
    { link: 0, x: gripped[1], isOnEdge: links.length % 2 === 1 },
  ];
  const numberY = outline.outerRadius + 25;
  return (
    <g className="draw draw-chain">
      <Hatch id={hatch} step={6} />
      <path className="draw-axis" d={`M${scene.grips[0].x} 0H${scene.grips[1].x + scene.grips[1].width}`} />
      {all
        .toSorted((a, b) => Number(a.isOnEdge) - Number(b.isOnEdge))
        .map(({ link, x, isOnEdge }) => (
          <path
            key={x}
            className={link === at ? 'draw-steel draw-at' : 'draw-steel'}
            transform={`translate(${x})`}
            fillRule="evenodd"
            d={isOnEdge ? edge : ring}
          />
        ))}
      {scene.grips.map((grip) => (
        <Grip key={grip.x} grip={grip} hatch={hatch} isAt={at === 0} />
      ))}
      {all.map(({ link, x }) => (
        <g key={x}>
          <text className="draw-number" x={x} y={numberY} textAnchor="middle">
            {link}
          </text>
          {link > 0 && marked?.has(link) ? <circle className="draw-solid" cx={x + 12} cy={numberY - 6} r={3} /> : null}
        </g>
      ))}
    </g>
  );
}

interface GripProps {
  readonly grip: GripBox;
  readonly hatch: string;
  readonly isAt: boolean;
}

function Grip({ grip, hatch, isAt }: GripProps) {
  return (
    <g>
      <rect className={isAt ? 'draw-grip draw-at' : 'draw-grip'} {...grip} />
      <rect className="draw-hatch" {...grip} fill={`url(#${hatch})`} />
    </g>
  );
}

/** The region of a link in the drawing of the piece; 0 stands for both gripped links and their grips. */
export function chainRegion(scene: ChainScene, link: number): string {
  const { outline, size, grips, gripped } = scene;
  if (link === 0) {
    const held = gripped.map((x) => movedPath(edgePath(outline, size), x));
    return [...grips.map(({ x, y, width, height }) => `M${x} ${y}h${width}v${height}h${-width}Z`), ...held].join('');
  }
  const found = scene.links.find((one) => one.link === link);
  if (found === undefined) return '';
  const path = found.isOnEdge ? edgePath(outline, size) : ovalPath(outline, outline.outerRadius);
  return movedPath(path, found.x);
}

/** Moves a path of M, H, V and A along x. */
function movedPath(path: string, by: number): string {
  return path.replaceAll(/([MHA])([^MHVAZ]*)/g, (_, command: string, words: string) => {
    const numbers = words.trim().split(/[ ,]+/).map(Number);
    const place = command === 'A' ? 5 : 0;
    return `${command}${numbers.map((value, at) => (at === place ? value + by : value)).join(' ')}`;
  });
}
