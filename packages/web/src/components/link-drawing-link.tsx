import { useId } from 'react';
import { ringPath } from './link-drawing-outline.ts';
import { type Balloon, balloonRadius, type LinkPlace, type LinkScene, neighbourPath } from './link-drawing-scene.ts';

interface LinkDrawingProps {
  readonly scene: LinkScene;
  /** Letter in the ring of each place. */
  readonly letters: Readonly<Record<LinkPlace, string>>;
  /** What is written at the pitch. */
  readonly pitchWords: string;
}

/** The large drawing of one link between its neighbours: weld with its upset and trim marks on the upper leg, a grip at the left. */
export function LinkDrawing({ scene, letters, pitchWords }: LinkDrawingProps) {
  const { outline, grip, weld } = scene;
  const hatch = useId().replaceAll(/[^\w-]/g, '');
  const { reach, outerRadius, innerRadius, weldHalf, besideHalf } = outline;
  return (
    <g className="draw">
      <Hatch id={hatch} />
      <path className="draw-axis" d={`M${grip.x - 10} 0H${reach + 100}`} />
      <path className="draw-steel" fillRule="evenodd" d={ringPath(outline)} />
      <path className="draw-steel" d={weld} />
      <path className="draw-thin" d={`M0 ${-outerRadius - 22}V${-innerRadius + 22}`} />
      <TrimMarks at={weldHalf} {...{ outerRadius, innerRadius }} />
      <path className="draw-zone" d={zoneMarks(besideHalf, outerRadius, innerRadius)} />
      <path className="draw-phantom" d={neighbourPath(scene, 'left', reach + 55)} />
      <path className="draw-phantom" d={neighbourPath(scene, 'right', reach + 80)} />
      <path className="draw-thin" d={breakLine(reach + 80)} />
      <rect className="draw-steel" {...grip} />
      <rect className="draw-hatch" {...grip} fill={`url(#${hatch})`} />
      <path className="draw-steel draw-bare" d={teethPath(grip)} />
      <PitchLine scene={scene} words={pitchWords} />
      {scene.balloons.map((balloon) => (
        <BalloonMark key={balloon.place} balloon={balloon} letter={letters[balloon.place]} />
      ))}
    </g>
  );
}

/** Lines at 45 degrees: material that is cut, or clamped. */
export function Hatch({ id, step = 14 }: { readonly id: string; readonly step?: number }) {
  return (
    <defs>
      <pattern id={id} width={step} height={step} patternUnits="userSpaceOnUse" patternTransform="rotate(45)">
        <path className="draw-hatching" d={`M0 0V${step}`} />
      </pattern>
    </defs>
  );
}

interface TrimMarksProps {
  readonly at: number;
  readonly outerRadius: number;
  readonly innerRadius: number;
}

/** What the trimming of the upset leaves on the bar: a curved line on each side of it. */
function TrimMarks({ at, outerRadius, innerRadius }: TrimMarksProps) {
  const line = (x: number, bend: number) =>
    `M${x} ${-outerRadius}C${x + bend} ${-outerRadius + 30} ${x + bend} ${-innerRadius - 30} ${x} ${-innerRadius}`;
  return <path className="draw-thin" d={line(-at, -9) + line(at, 9)} />;
}

/** Ends of the zone beside the weld: short strokes across the edges of the bar. */
function zoneMarks(half: number, outerRadius: number, innerRadius: number): string {
  return [-half, half].map((x) => `M${x} ${-outerRadius - 9}v18M${x} ${-innerRadius - 9}v18`).join('');
}

/** A thin line with a kink: the drawing is broken off here. */
function breakLine(x: number): string {
  return `M${x} -68V-14l-12 8 24 12-12 8V68`;
}

/** Teeth of the grip on the side that holds. */
function teethPath({ x, y, width, height }: LinkScene['grip']): string {
  const right = x + width;
  const step = height / 10;
  return `M${right} ${y}${Array.from({ length: 10 }, () => `l9 ${step / 2}l-9 ${step / 2}`).join('')}Z`;
}

function PitchLine({ scene, words }: { readonly scene: LinkScene; readonly words: string }) {
  const { outline, pitch } = scene;
  const y = outline.outerRadius + 46;
  const half = pitch / 2;
  const arrow = (x: number, turn: number) => `M${x} ${y}l${turn * 18} -5v10Z`;
  return (
    <g>
      <path className="draw-thin" d={`M${-half} 12V${y + 12}M${half} 12V${y + 12}M${-half} ${y}H${half}`} />
      <path className="draw-solid" d={arrow(-half, 1) + arrow(half, -1)} />
      <text className="draw-words" x={half - 24} y={y - 11} textAnchor="end">
        {words}
      </text>
    </g>
  );
}

function BalloonMark({ balloon, letter }: { readonly balloon: Balloon; readonly letter: string }) {
  const { ring, tips } = balloon;
  return (
    <g>
      {tips.map((tip) => {
        const [dx, dy] = [tip.x - ring.x, tip.y - ring.y];
        const share = balloonRadius / Math.hypot(dx, dy);
        return (
          <g key={`${tip.x} ${tip.y}`}>
            <path className="draw-thin" d={`M${ring.x + dx * share} ${ring.y + dy * share}L${tip.x} ${tip.y}`} />
            <circle className="draw-solid" cx={tip.x} cy={tip.y} r={5} />
          </g>
        );
      })}
      <circle className="draw-ring" cx={ring.x} cy={ring.y} r={balloonRadius} />
      <text className="draw-letter" x={ring.x} y={ring.y + 11} textAnchor="middle">
        {letter}
      </text>
    </g>
  );
}
