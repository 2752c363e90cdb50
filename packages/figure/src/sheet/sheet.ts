import { type PlotOptions, plot } from '@observablehq/plot';
import { element } from './element.ts';
import { type KeyEntry, keyOver } from './key.ts';
import { type FigureSetting, inkOf } from './setting.ts';

export interface Sheet {
  /** What a figure shows, for who cannot see it. */
  readonly label: string;
  readonly key: readonly KeyEntry[];
  /** Height of the drawing below the key, axis and its words included. */
  readonly height: number;
  readonly margin: { readonly left: number; readonly right: number; readonly top?: number; readonly bottom: number };
  readonly plot: Omit<PlotOptions, 'document' | 'width' | 'height' | 'title' | 'caption'>;
}

/**
 * A figure by Observable Plot as one SVG element that stands on its own: no style sheet and no classes (the page's policy
 * allows no inline style, paper knows none), type and inks as attributes, a name for a reader's ear.
 */
export function sheet({ label, key, height, margin, plot: options }: Sheet, setting: FigureSetting): SVGSVGElement {
  const ink = inkOf(setting);
  const over = keyOver(key, setting);
  const drawn = plot({
    ...options,
    document: setting.document,
    width: setting.width,
    height: over.height + height,
    marginLeft: margin.left,
    marginRight: margin.right,
    marginTop: over.height + (margin.top ?? 0),
    marginBottom: margin.bottom,
    className: 'figure',
  }) as SVGSVGElement; // without title, caption and legend Plot makes an svg, no figure
  for (const styled of drawn.querySelectorAll('style')) styled.remove();
  for (const part of drawn.querySelectorAll('*')) clean(part);
  clean(drawn);
  const attributes = {
    role: 'img',
    'aria-label': label,
    xmlns: 'http://www.w3.org/2000/svg',
    'font-family': ink.family,
    'font-size': String(ink.em),
    'font-variant': 'tabular-nums',
    fill: ink.ink,
  };
  for (const [name, value] of Object.entries(attributes)) drawn.setAttribute(name, value);
  drawn.append(element(setting.document, 'g', {}, over.drawn));
  return drawn;
}

/** What Plot adds for a style sheet or for tools; the name of the whole figure serves the ear. */
const dropped = ['class', 'style', 'aria-label', 'aria-description', 'aria-hidden', 'font-variant'] as const;

function clean(part: Element): void {
  for (const name of dropped) part.removeAttribute(name);
  for (const name of part.getAttributeNames()) {
    const value = part.getAttribute(name) ?? '';
    if (coordinates.has(name))
      part.setAttribute(
        name,
        value.replaceAll(/-?\d+\.\d{3,}/g, (digits) => String(Number(Number(digits).toFixed(2)))),
      );
  }
}

const coordinates: ReadonlySet<string> = new Set([
  'd',
  'x',
  'y',
  'x1',
  'x2',
  'y1',
  'y2',
  'cx',
  'cy',
  'width',
  'height',
  'transform',
  'dx',
  'dy',
  'stroke-dasharray',
  'stroke-width',
]);
