/// <reference lib="dom" />
import type { FigureSetting } from '@provinghouse/figure';
import { parseHTML } from 'linkedom';
import { literal, type Typst, verbatim } from '../typst/escape.ts';
import { figureWidth } from './pen.ts';

/** The page that figures of the report are drawn on; nothing is kept on it. */
const page = parseHTML('<!doctype html><html><body></body></html>').document;

/**
 * A figure of the common room for figures, as a vector image in the report's own type. Its words go through the same door as
 * all others: what the font cannot show is printed as its code point.
 */
export function onPaper(draw: (setting: FigureSetting) => SVGSVGElement): Typst {
  // A DOM by another hand than the browser's.
  const drawn = draw({ document: page as unknown as Document, width: figureWidth, theme: 'paper' });
  const alternative = drawn.getAttribute('aria-label') ?? '';
  drawn.removeAttribute('aria-label');
  drawn.setAttribute('font-family', 'Source Sans 3');
  return `#drawing(${figureWidth}, ${literal(alternative)}, ${verbatim(drawn.outerHTML)})`;
}
