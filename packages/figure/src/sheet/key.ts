import { element } from './element.ts';
import type { FigureSetting, Ink } from './setting.ts';
import { inkOf } from './setting.ts';
import { arrowRight, arrowUp, bracket, type DrawnSymbol, pathOf } from './symbol.ts';
import { textWidth } from './text-width.ts';

/** One sign of a figure and what it means. */
export interface KeyEntry {
  readonly symbol: DrawnSymbol | 'band' | 'stroke';
  readonly words: string;
  readonly paint?: 'accent' | 'hollow' | 'line';
  readonly dash?: string;
  readonly weight?: number;
}

export interface Key {
  readonly height: number;
  readonly drawn: readonly SVGElement[];
}

/** Room for a sign, in heights of the type. */
const signWidth = 2;

/** Signs and words in lines over the figure: it explains itself when it is saved alone. */
export function keyOver(entries: readonly KeyEntry[], setting: FigureSetting): Key {
  const ink = inkOf(setting);
  const { em } = ink;
  const drawn: SVGElement[] = [];
  let x = 0;
  let y = 0.8 * em;
  for (const entry of entries) {
    const own = signWidth * em + textWidth(entry.words, em);
    if (x > 0 && x + own > setting.width) {
      x = 0;
      y += 1.6 * em;
    }
    drawn.push(
      signOf(entry, { x: x + 0.75 * em, y }, { setting, ink }),
      words(entry.words, { x: x + signWidth * em, y }, { setting, ink }),
    );
    x += own + 1.5 * em;
  }
  return { height: entries.length === 0 ? 0.5 * em : y + 1.3 * em, drawn };
}

interface Place {
  readonly x: number;
  readonly y: number;
}

interface On {
  readonly setting: FigureSetting;
  readonly ink: Ink;
}

function words(text: string, { x, y }: Place, { setting, ink }: On): SVGElement {
  return element(setting.document, 'text', { x, y: y + 0.33 * ink.em, 'text-anchor': 'start', fill: ink.soft }, [text]);
}

function signOf(entry: KeyEntry, { x, y }: Place, { setting, ink }: On): SVGElement {
  const { em } = ink;
  const isLine = entry.paint === 'line' || entry.symbol === 'stroke';
  const paint = entry.paint === 'accent' ? ink.accent : ink.ink;
  if (entry.symbol === 'band') {
    const box = { x: x - 0.7 * em, y: y - 0.5 * em, width: 1.4 * em, height: em };
    return element(setting.document, 'rect', {
      ...box,
      fill: ink.band,
      stroke: ink.soft,
      'stroke-width': 0.4 * ink.line,
    });
  }
  const pen = {
    stroke: paint,
    'stroke-width': (entry.weight ?? 1) * ink.line,
    ...(entry.dash ? { 'stroke-dasharray': entry.dash } : {}),
  };
  if (entry.symbol === 'stroke') {
    return element(setting.document, 'path', { d: `M${x - 0.75 * em},${y}h${1.5 * em}`, fill: 'none', ...pen });
  }
  const fill = isLine ? 'none' : entry.paint === 'hollow' ? ink.ground : paint;
  const r = 0.34 * em;
  return element(setting.document, 'path', {
    d: pathOf(entry.symbol, r),
    transform: `translate(${placed(entry.symbol, { x, y }, r)})`,
    fill,
    ...pen,
  });
}

/** Symbols stand on their point; in the key they stand in the middle of their room. */
function placed(symbol: DrawnSymbol, { x, y }: Place, r: number): string {
  const across = symbol === arrowRight ? 2 * r : symbol === bracket ? 0.4 * r : 0;
  const up = symbol === arrowUp ? 2 * r : 0;
  return [x - across, y + up].map((at) => Number(at.toFixed(2))).join(',');
}
