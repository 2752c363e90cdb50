import type { Typst } from '../typst/escape.ts';
import { asWritten, decimals } from '../words/number.ts';
import { canvas, figureWidth, label, mark, stroke } from './pen.ts';
import { position, type Scale, scaleOver } from './scale.ts';

/** One piece on a strip. */
export interface StripDot {
  readonly value: number;
  readonly kind: 'value' | 'at least' | 'excluded';
  readonly expandedUncertainty: number | null;
}

/** One product: its dots, its mean over the dots that count, and the minimum asked of it. */
export interface Strip {
  readonly name: string;
  readonly dots: readonly StripDot[];
  readonly mean: number | null;
  readonly minimum: number | null;
}

const nameWidth = 84;
const wordsWidth = 74;
const rowHeight = 27;
const footHeight = 28;

/**
 * Products of one size under each other on one force scale: every piece is a dot with its U as a whisker, nothing is hidden
 * behind a mean. Shapes tell values, censored values and values left out apart.
 */
export function dotStrips(strips: readonly Strip[], unit: string): Typst {
  const values = strips.flatMap((strip) => [
    ...strip.dots.flatMap((dot) => [
      dot.value - (dot.expandedUncertainty ?? 0),
      dot.value + (dot.expandedUncertainty ?? 0),
    ]),
    ...(strip.minimum === null ? [] : [strip.minimum]),
  ]);
  const scale = scaleOver(values, { start: nameWidth, end: figureWidth - wordsWidth, ticks: 7 });
  const bottom = strips.length * rowHeight + 4;
  return canvas({
    width: figureWidth,
    height: bottom + footHeight,
    alternative: strips.map((strip) => stripInWords(strip, unit)).join(' '),
    drawing: [
      ...axis(scale, bottom, `breaking force, ${unit}`),
      ...strips.flatMap((strip, row) => drawStrip(strip, scale, row * rowHeight + 4)),
    ],
  });
}

function axis(scale: Scale, bottom: number, words: string): Typst[] {
  const ticks = scale.ticks.flatMap((tick) => {
    const x = position(scale, tick);
    return [
      stroke('grid', { x, y: 0 }, { x, y: bottom }),
      label({ x, y: bottom + 8 }, decimals(tick, scale.places), { across: 0.5 }),
    ];
  });
  const middle = (scale.start + scale.end) / 2;
  return [
    ...ticks,
    stroke('axis', { x: scale.start, y: bottom }, { x: scale.end, y: bottom }),
    label({ x: middle, y: bottom + 19 }, words, { across: 0.5, weight: 'quiet' }),
  ];
}

function drawStrip(strip: Strip, scale: Scale, top: number): Typst[] {
  const middle = top + rowHeight / 2;
  const drawing = [
    label({ x: 0, y: middle }, strip.name, { weight: 'strong', size_pt: 7.6 }),
    stroke('grid', { x: 0, y: top + rowHeight }, { x: figureWidth, y: top + rowHeight }),
  ];
  if (strip.minimum !== null) {
    const x = position(scale, strip.minimum);
    drawing.push(stroke('minimum', { x, y: top + 1.5 }, { x, y: top + rowHeight - 1.5 }));
    drawing.push(label({ x: scale.end + 8, y: middle }, `minimum ${asWritten(strip.minimum)}`));
  }
  if (strip.mean !== null) {
    const x = position(scale, strip.mean);
    drawing.push(stroke('proof', { x, y: top + 3.5 }, { x, y: top + rowHeight - 3.5 }));
  }
  return [
    ...drawing,
    ...strip.dots.flatMap((dot, index) => drawDot(dot, scale, middle + offset(index, strip.dots.length))),
  ];
}

/** Dots are spread over the height of the strip in the order of the pieces, so that equal values stay apart. */
function offset(index: number, count: number): number {
  return count < 2 ? 0 : ((index / (count - 1)) * 2 - 1) * Math.min(8, 2.4 * (count - 1));
}

function drawDot(dot: StripDot, scale: Scale, y: number): Typst[] {
  const x = position(scale, dot.value);
  const spread = dot.expandedUncertainty ?? 0;
  const whisker =
    spread > 0
      ? [
          stroke(
            'whisker',
            { x: position(scale, dot.value - spread), y },
            { x: position(scale, dot.value + spread), y },
          ),
        ]
      : [];
  const kind = dot.kind === 'value' ? 'disc' : dot.kind === 'at least' ? 'arrow' : 'ring';
  return [...whisker, mark(kind, { x, y }, kind === 'arrow' ? 2.2 : 1.9)];
}

function stripInWords(strip: Strip, unit: string): string {
  const dots = strip.dots.map(
    (dot) => `${Number(dot.value.toPrecision(4))}${dot.kind === 'value' ? '' : ` (${dot.kind})`}`,
  );
  const minimum = strip.minimum === null ? '' : `, minimum ${strip.minimum} ${unit}`;
  return `${strip.name}: ${dots.length === 0 ? 'no values' : dots.join(', ')} ${unit}${minimum}.`;
}
