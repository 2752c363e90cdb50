import { line, type Markish, text } from '@observablehq/plot';
import type { LongChainCurve } from './long-chain-curve.ts';
import { type Reach, reachStretches } from './long-chain-stretch.ts';
import type { Ink } from './sheet/setting.ts';
import { strongWidth } from './sheet/text-width.ts';

/** How lines are broken by what they rest on; null for a whole line. */
export const reachDashes: Readonly<Record<Reach, (em: number) => string | null>> = {
  pieces: () => null,
  form: (em) => `${0.7 * em} ${0.35 * em}`,
  prior: (em) => `${0.18 * em} ${0.3 * em}`,
};

/** From the fullest words to the shortest, for what room there is. */
const reachWords: Readonly<Record<Reach, readonly string[]>> = {
  pieces: ['carried by the pieces', 'carried'],
  form: ['longer than any piece: rests on the Weibull form', 'rests on the Weibull form', 'Weibull form'],
  prior: ['the pieces cannot carry this: rests on the assumed shape', 'rests on the assumed shape', 'assumed shape'],
};

/** Below the axis, how far the pieces carry: a bar in the dash of the lines, with its words. */
export function reachMarks({ finding, pieces }: LongChainCurve, ink: Ink, plotWidth: number): Markish[] {
  const { em } = ink;
  const stretches = reachStretches({ finding, pieces });
  const decades = Math.log10((finding.curve.at(-1)?.length_m ?? 1) / (finding.curve[0]?.length_m ?? 1));
  return stretches.flatMap(({ reach, curve }) => {
    const [first, last] = [curve[0], curve.at(-1)];
    if (first === undefined || last === undefined || last.length_m <= first.length_m) return [];
    const dash = reachDashes[reach](em);
    const room = (plotWidth * Math.log10(last.length_m / first.length_m)) / decades - 0.6 * em;
    const words = reachWords[reach].find((said) => strongWidth(said, em) < room) ?? '';
    return [
      line([first, last], {
        x: 'length_m',
        y: () => 0,
        dy: 3.5 * em,
        stroke: reach === 'pieces' ? ink.ink : ink.soft,
        strokeWidth: 1.4 * ink.line,
        strokeLinecap: 'butt',
        ...(dash === null ? {} : { strokeDasharray: dash }),
      }),
      text([Math.sqrt(first.length_m * last.length_m)], {
        x: (at: number) => at,
        frameAnchor: 'bottom',
        dy: 4.6 * em,
        lineAnchor: 'middle',
        text: () => words,
        fontWeight: reach === 'pieces' ? 400 : 600,
        fill: ink.ink,
      }),
    ];
  });
}
