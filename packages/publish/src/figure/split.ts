import type { Typst } from '../typst/escape.ts';
import { asWritten, decimals, significant } from '../words/number.ts';
import { canvas, figureWidth, label, mark, stroke } from './pen.ts';
import { position, type Scale, scaleOver } from './scale.ts';

/** The mean piece of one product: its stress over the area it was sold as and over the area it has. */
export interface SplitRow {
  readonly name: string;
  readonly overNominal_N_per_mm2: number;
  readonly overMeasured_N_per_mm2: number;
  readonly expandedUncertainty_N_per_mm2: number | null;
  /** Stress of the grade claimed; null where the specification defines none. */
  readonly claimed_N_per_mm2: number | null;
}

const nameWidth = 84;
const wordsWidth = 74;
const rowHeight = 24;

/**
 * Steel against size: a hollow square for the stress over the nominal area, a filled one over the gauged steel. A filled
 * square left of the hollow one is a fat bar; left of the upright line, steel below the grade claimed.
 */
export function splitFigure(rows: readonly SplitRow[]): Typst {
  const values = rows.flatMap((row) => {
    const spread = row.expandedUncertainty_N_per_mm2 ?? 0;
    const measured = [row.overMeasured_N_per_mm2 - spread, row.overMeasured_N_per_mm2 + spread];
    return [...measured, row.overNominal_N_per_mm2, ...(row.claimed_N_per_mm2 === null ? [] : [row.claimed_N_per_mm2])];
  });
  const scale = scaleOver(values, { start: nameWidth, end: figureWidth - wordsWidth, ticks: 7 });
  const bottom = rows.length * rowHeight + 4;
  return canvas({
    width: figureWidth,
    height: bottom + 28,
    alternative: rows.map(inWords).join(' '),
    drawing: [...axis(scale, bottom), ...rows.flatMap((row, index) => drawRow(row, scale, index * rowHeight + 4))],
  });
}

function axis(scale: Scale, bottom: number): Typst[] {
  const ticks = scale.ticks.flatMap((tick) => {
    const x = position(scale, tick);
    return [
      stroke('grid', { x, y: 0 }, { x, y: bottom }),
      label({ x, y: bottom + 8 }, decimals(tick, scale.places), { across: 0.5 }),
    ];
  });
  const words = 'mean stress over both legs at the breaking force, N/mm²';
  return [
    ...ticks,
    stroke('axis', { x: scale.start, y: bottom }, { x: scale.end, y: bottom }),
    label({ x: (scale.start + scale.end) / 2, y: bottom + 19 }, words, { across: 0.5, weight: 'quiet' }),
  ];
}

function drawRow(row: SplitRow, scale: Scale, top: number): Typst[] {
  const y = top + rowHeight / 2;
  const nominal = { x: position(scale, row.overNominal_N_per_mm2), y: y - 3.4 };
  const measured = { x: position(scale, row.overMeasured_N_per_mm2), y: y + 3.4 };
  const spread = row.expandedUncertainty_N_per_mm2;
  return [
    label({ x: 0, y }, row.name, { weight: 'strong', size_pt: 7.6 }),
    stroke('grid', { x: 0, y: top + rowHeight }, { x: figureWidth, y: top + rowHeight }),
    ...(row.claimed_N_per_mm2 === null ? [] : claimLine(row.claimed_N_per_mm2, scale, top)),
    stroke('link', nominal, measured),
    ...(spread === null
      ? []
      : [
          stroke(
            'whisker',
            { x: position(scale, row.overMeasured_N_per_mm2 - spread), y: measured.y },
            { x: position(scale, row.overMeasured_N_per_mm2 + spread), y: measured.y },
          ),
        ]),
    mark('open block', nominal, 2.1),
    mark('block', measured, 2.1),
  ];
}

function claimLine(stress: number, scale: Scale, top: number): Typst[] {
  const x = position(scale, stress);
  return [
    stroke('minimum', { x, y: top + 1.5 }, { x, y: top + rowHeight - 1.5 }),
    label({ x: scale.end + 8, y: top + rowHeight / 2 }, `claimed ${asWritten(stress)}`),
  ];
}

function inWords(row: SplitRow): string {
  const claimed = row.claimed_N_per_mm2 === null ? '' : `, claimed ${asWritten(row.claimed_N_per_mm2)}`;
  return `${row.name}: ${significant(row.overNominal_N_per_mm2)} N/mm² over the nominal area, ${significant(row.overMeasured_N_per_mm2)} over the gauged steel${claimed}.`;
}
