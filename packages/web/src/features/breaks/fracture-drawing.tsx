import type { ReactNode } from 'react';
import { bandsPath, raysPath, rimPath, strokesPath } from './fracture-texture.ts';

/** How a link parts, as it is written into the record. */
export const breakModes = [
  'ductile cup-and-cone',
  'shear',
  'fibrous',
  'brittle',
  'fatigue',
  'weld not fused',
  'unclear',
] as const;
export type BreakMode = (typeof breakModes)[number];

const face = { x: 160, y: 46, radius: 34 };
const neck = { ...face, radius: 22 };
const dull = { ...face, radius: 29 };

interface FractureLook {
  /** Outlines of the two halves from the side, the bar along x. */
  readonly halves: readonly [string, string];
  readonly face: ReactNode;
}

/** A bar end that keeps its full diameter, with the given edge on the side of the break. */
const left = (edge: string) => `M4 24${edge}H4`;
const right = (edge: string) => `M116 24${edge}H116`;

function ring(radius: number) {
  return <circle className="draw-face" cx={face.x} cy={face.y} r={radius} />;
}

const whole = <circle className="draw-faint" cx={face.x} cy={face.y} r={face.radius} />;

const looks: Readonly<Record<BreakMode, FractureLook>> = {
  'ductile cup-and-cone': {
    halves: [
      left('H22C38 24 44 32 54 33L46 41 47 46 46 51 54 59C44 60 38 68 22 68'),
      right('H98C82 24 77 32 68 33L60 41 61 46 60 51 68 59C77 60 82 68 98 68'),
    ],
    face: (
      <>
        {whole}
        {ring(neck.radius)}
        <circle className="draw-fine" cx={face.x} cy={face.y} r={13} />
        <path className="draw-fine" d={rimPath(neck, 13, 40)} />
        <path className="draw-grain" d={strokesPath({ ...face, radius: 12.5, count: 34, length: 2.4 })} />
      </>
    ),
  },
  shear: {
    halves: [
      left('H30C36 24 38 26 40 28L76 66C72 68 68 68 64 68'),
      right('H58C54 24 50 25 50 27L86 65C90 68 92 68 96 68'),
    ],
    face: (
      <>
        {ring(33)}
        <path
          className="draw-fine"
          d={strokesPath({ ...face, radius: 33, count: 60, length: 13, turn: (_, y) => -0.12 + y * 0.0015 })}
        />
      </>
    ),
  },
  fibrous: {
    halves: [
      left('H26C38 24 44 27 50 29L55 32 48 35 56 39 50 43 57 47 49 51 55 56 50 62C44 65 38 68 26 68'),
      right('H96C84 24 76 27 68 30L61 33 66 37 59 41 64 46 58 50 63 54 58 58 67 62C76 65 84 68 96 68'),
    ],
    face: (
      <>
        {whole}
        {ring(dull.radius)}
        <path className="draw-grain" d={strokesPath({ ...dull, count: 150, length: 4.2 })} />
      </>
    ),
  },
  brittle: {
    halves: [left('H54L55 33 53 41 55 50 53 59 54 68'), right('H66L67 33 65 41 67 50 65 59 66 68')],
    face: (
      <>
        {ring(face.radius)}
        <path className="draw-fine" d={raysPath(face, 15)} />
        <circle className="draw-solid" cx={face.x} cy={face.y + face.radius - 2} r={3} />
      </>
    ),
  },
  fatigue: {
    halves: [left('H54V56L60 64 59 68'), right('H66V56L72 64 71 68')],
    face: (
      <>
        {ring(face.radius)}
        <path className="draw-fine" d={bandsPath(face, [9, 15, 21, 27, 33, 39, 44])} />
        <circle className="draw-solid" cx={face.x} cy={face.y + face.radius - 2} r={3} />
        <path
          className="draw-grain"
          d={strokesPath({
            ...face,
            count: 150,
            length: 3.6,
            where: (x, y) => Math.hypot(x - face.x, y - face.y - face.radius) > 47,
          })}
        />
      </>
    ),
  },
  'weld not fused': {
    halves: [left('H36C44 24 46 19 54 19V73C46 73 44 68 36 68'), right('H84C76 24 74 19 66 19V73C74 73 76 68 84 68')],
    face: (
      <>
        {ring(38)}
        <ellipse className="draw-flat" cx={face.x - 5} cy={face.y + 9} rx={25} ry={22} />
        <path
          className="draw-grain"
          d={strokesPath({
            ...face,
            radius: 37,
            count: 190,
            length: 3.8,
            where: (x, y) => Math.hypot((x - face.x + 5) / 28, (y - face.y - 9) / 25) > 1,
          })}
        />
      </>
    ),
  },
  unclear: {
    halves: [left('H50V68'), right('H70V68')],
    face: (
      <>
        {whole}
        <text className="draw-letter" x={face.x} y={face.y + 12} textAnchor="middle">
          ?
        </text>
      </>
    ),
  },
};

/** How a break of this mode looks: the two halves from the side, and one face. */
export function FractureDrawing({ mode }: { readonly mode: BreakMode }) {
  const { halves, face: seen } = looks[mode];
  return (
    <svg viewBox="0 4 202 84" aria-hidden="true" className="draw draw-fracture">
      <path className="draw-axis" d="M0 46H120" />
      {halves.map((path) => (
        <path key={path} className={mode === 'unclear' ? 'draw-steel draw-open' : 'draw-steel'} d={path} />
      ))}
      {seen}
    </svg>
  );
}
