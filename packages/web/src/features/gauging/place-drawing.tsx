import '../../components/link-drawing.css';
import type { GaugingPlace } from '@provinghouse/core';
import { edgePath, linkOutline, ringPath, weldPath } from '../../components/link-drawing-outline.ts';
import type { LinkProportion } from '../../components/link-drawing-proportion.ts';
import { type DimensionLine, dimensionLine } from './dimension-line.ts';

const size = 100;
/** Links drawn for a length over several. */
const most = 5;

/** A link with the dimension at hand marked on it; beside a bar, its section with the way the calliper lies across it. */
export function PlaceDrawing({
  place,
  proportion,
}: {
  readonly place: GaugingPlace;
  readonly proportion: LinkProportion;
}) {
  const outline = linkOutline(proportion, size);
  const upset = proportion.weld * size;
  const line = dimensionLine(place, outline, upset);
  if (line === null) return <ChainLength proportion={proportion} links={Math.min(place.overLinks ?? most, most)} />;
  const { reach, outerRadius } = outline;
  const isBar = place.quantity === 'diameter' || place.quantity === 'weldDiameter';
  const width = 2 * reach + 120 + (isBar ? 260 : 0);
  return (
    <svg
      className="gauging-drawing draw"
      viewBox={`${-reach - 60} ${-outerRadius - 70} ${width} ${2 * outerRadius + 140}`}
      aria-hidden="true"
    >
      <path className="draw-axis" d={`M${-reach - 50} 0H${reach + 50}`} />
      <path className="draw-steel" fillRule="evenodd" d={ringPath(outline)} />
      <path className="draw-steel" d={weldPath(outline, upset)} />
      {isBar && place.direction === 2 ? <EndOn line={line} /> : <Dimension line={line} />}
      {isBar ? (
        <Section
          x={reach + 150}
          radius={place.quantity === 'weldDiameter' ? upset / 2 : size / 2}
          isTurned={place.direction === 2}
        />
      ) : null}
    </svg>
  );
}

/** A dimension that runs towards the reader: its arrow seen from the tip. */
function EndOn({ line: { from, to } }: { readonly line: DimensionLine }) {
  const [cx, cy] = [(from.x + to.x) / 2, (from.y + to.y) / 2];
  return (
    <g>
      <circle className="gauging-end-on" cx={cx} cy={cy} r={26} />
      <circle className="gauging-end-on-middle" cx={cx} cy={cy} r={9} />
    </g>
  );
}

/** The bar cut across: upright lies the plane of the link. */
function Section({ x, radius, isTurned }: { readonly x: number; readonly radius: number; readonly isTurned: boolean }) {
  const scale = 1.35;
  const half = radius * scale;
  const line = isTurned
    ? { from: { x: x - half, y: 0 }, to: { x: x + half, y: 0 }, isAcross: true }
    : { from: { x, y: -half }, to: { x, y: half }, isAcross: true };
  return (
    <g>
      <path className="draw-axis" d={`M${x} ${-half - 60}V${half + 60}`} />
      <circle className="draw-steel" cx={x} cy={0} r={half} />
      <Dimension line={line} />
    </g>
  );
}

function ChainLength({ proportion, links }: { readonly proportion: LinkProportion; readonly links: number }) {
  const outline = linkOutline(proportion, size);
  const pitch = proportion.pitch * size;
  const { reach, outerRadius } = outline;
  const all = Array.from({ length: links }, (_, at) => at);
  const from = -pitch / 2;
  const to = from + links * pitch;
  const y = outerRadius + 70;
  return (
    <svg
      className="gauging-drawing draw"
      viewBox={`${-reach - 30} ${-outerRadius - 30} ${(links - 1) * pitch + 2 * reach + 60} ${2 * outerRadius + 160}`}
      aria-hidden="true"
    >
      {all
        .toSorted((a, b) => (b % 2) - (a % 2))
        .map((at) => (
          <path
            key={at}
            className="draw-steel"
            fillRule="evenodd"
            transform={`translate(${at * pitch})`}
            d={at % 2 === 1 ? edgePath(outline, size) : ringPath(outline)}
          />
        ))}
      <path className="draw-thin" d={`M${from} 0V${y + 20}M${to} 0V${y + 20}`} />
      <Dimension line={{ from: { x: from, y }, to: { x: to, y }, isAcross: false }} />
    </svg>
  );
}

/** A thick line with an arrow at each end; across something small the arrows stand outside and point at it. */
function Dimension({ line }: { readonly line: DimensionLine }) {
  const { from, to, isAcross } = line;
  const length = Math.hypot(to.x - from.x, to.y - from.y);
  const [ux, uy] = [(to.x - from.x) / length, (to.y - from.y) / length];
  const head = 34;
  const arrow = (x: number, y: number, turn: number) => {
    const [bx, by] = [x + turn * head * ux, y + turn * head * uy];
    return `M${x} ${y}L${bx - 13 * uy} ${by + 13 * ux}L${bx + 13 * uy} ${by - 13 * ux}Z`;
  };
  const tail = isAcross ? 58 : 0;
  return (
    <g className="gauging-dimension">
      <path d={`M${from.x - tail * ux} ${from.y - tail * uy}L${to.x + tail * ux} ${to.y + tail * uy}`} />
      <path
        className="gauging-arrow"
        d={arrow(from.x, from.y, isAcross ? -1 : 1) + arrow(to.x, to.y, isAcross ? 1 : -1)}
      />
    </g>
  );
}
