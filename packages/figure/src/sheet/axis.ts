import { axisX, axisY, gridX, gridY, type Markish } from '@observablehq/plot';
import { tickWords } from './number-words.ts';
import type { Ink } from './setting.ts';

interface Across {
  readonly label: string;
  readonly ticks?: number | readonly number[];
  readonly words?: (value: number) => string;
}

/** The axis across the foot with its hairs: round numbers, the quantity with its unit in the middle below. */
export function acrossAxis(across: Across, ink: Ink): Markish[] {
  const { hairs, axis } = drawing({ ticks: 7, ...across }, ink, 2.9 * ink.em);
  return [gridX(hairs), axisX(axis)];
}

/** The axis up the left side; its words run up beside it. */
export function upAxis(up: Across, ink: Ink, labelOffset: number): Markish[] {
  const { hairs, axis } = drawing({ ticks: 6, ...up }, ink, labelOffset);
  return [gridY(hairs), axisY(axis)];
}

type Ticked = Across & Required<Pick<Across, 'ticks'>>;

/** What both axes and their hairs are drawn with. */
function drawing({ label, ticks, words = tickWords }: Ticked, ink: Ink, labelOffset: number) {
  const at = typeof ticks === 'number' ? ticks : [...ticks];
  return {
    hairs: { ticks: at, stroke: ink.hair, strokeOpacity: 1, strokeWidth: 0.5 * ink.line },
    axis: {
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
      labelOffset,
      fontSize: ink.em,
    },
  } as const;
}
