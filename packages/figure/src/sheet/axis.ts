import { axisX, axisY, gridX, gridY, type Markish } from '@observablehq/plot';
import { tickWords } from './number-words.ts';
import type { Ink } from './setting.ts';

interface Across {
  readonly label: string;
  readonly ticks?: number | readonly number[];
  readonly words?: (value: number) => string;
}

/** The axis across the foot with its hairs: round numbers, the quantity with its unit in the middle below. */
export function acrossAxis({ label, ticks = 7, words = tickWords }: Across, ink: Ink): Markish[] {
  const at = typeof ticks === 'number' ? ticks : [...ticks];
  return [
    gridX({ ticks: at, stroke: ink.hair, strokeOpacity: 1, strokeWidth: 0.5 * ink.line }),
    axisX({
      ticks: at,
      // Plot's own format leaves out labels of a logarithmic axis that are no powers of ten.
      text: words,
      tickSize: 0.35 * ink.em,
      tickPadding: 0.25 * ink.em,
      stroke: ink.soft,
      fill: ink.soft,
      label,
      labelAnchor: 'center',
      labelArrow: 'none',
      labelOffset: 2.9 * ink.em,
      fontSize: ink.em,
    }),
  ];
}

/** The axis up the left side; its words run up beside it. */
export function upAxis({ label, ticks = 6, words = tickWords }: Across, ink: Ink, labelOffset: number): Markish[] {
  const at = typeof ticks === 'number' ? ticks : [...ticks];
  return [
    gridY({ ticks: at, stroke: ink.hair, strokeOpacity: 1, strokeWidth: 0.5 * ink.line }),
    axisY({
      ticks: at,
      text: words,
      tickSize: 0.35 * ink.em,
      tickPadding: 0.25 * ink.em,
      stroke: ink.soft,
      fill: ink.soft,
      label,
      labelAnchor: 'center',
      labelArrow: 'none',
      labelOffset,
      fontSize: ink.em,
    }),
  ];
}
