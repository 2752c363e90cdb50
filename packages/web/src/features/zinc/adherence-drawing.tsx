import { useId } from 'react';
import { Hatch } from '../../components/link-drawing-link.tsx';
import { flakes, patchPath, strip } from './flake-mesh.ts';

/** A strained length of bar as its zinc looks at one grade of the adherence scale. */
export function AdherenceDrawing({ grade }: { readonly grade: number }) {
  const hatch = useId().replaceAll(/[^\w-]/g, '');
  const { x, y, width, height } = strip;
  const bare = flakes(grade).map(patchPath).join('');
  return (
    <svg viewBox="0 0 240 80" aria-hidden="true" className="draw draw-zinc">
      <Hatch id={hatch} step={4} />
      <rect className="zinc-skin" {...strip} />
      <path className="draw-thin" d={`M${x + 6} ${y + 13}H${x + width - 6}`} />
      {grade === 1 ? <path className="zinc-craze" d={crazes()} /> : null}
      {grade >= 2 && grade <= 4 ? <path className="zinc-crack" d={cracks(grade === 2 ? 8 : 5)} /> : null}
      {bare === '' ? null : (
        <>
          <path className="zinc-rim" d={bare} />
          <path className="zinc-bare" d={bare} />
          <path d={bare} fill={`url(#${hatch})`} />
        </>
      )}
      <path className="zinc-edge" d={`M${x} ${y}H${x + width}M${x} ${y + height}H${x + width}`} />
      <path className="draw-thin" d={`${brokenOff(x)}${brokenOff(x + width)}`} />
    </svg>
  );
}

/** Hair lines across the bar. */
function crazes(): string {
  return Array.from({ length: 30 }, (_, at) => {
    const x = strip.x + 8 + at * 6.8;
    const from = strip.y + 5 + ((at * 17) % 29);
    return `M${x} ${from}l${at % 2 === 0 ? 1.5 : -1.5} ${9 + ((at * 7) % 9)}`;
  }).join('');
}

/** Open cracks from edge to edge. */
function cracks(count: number): string {
  return Array.from({ length: count }, (_, at) => {
    const x = strip.x + ((at + 0.6) * strip.width) / count;
    const turn = at % 2 === 0 ? 1 : -1;
    return `M${x} ${strip.y}l${3 * turn} 14 ${-5 * turn} 13 ${4 * turn} 15 ${-3 * turn} 14`;
  }).join('');
}

/** The wavy line where a bar is broken off on a drawing. */
function brokenOff(x: number): string {
  return `M${x} ${strip.y - 6}v12c-5 8 5 18 0 26s3 16 0 ${strip.height - 26}`;
}
