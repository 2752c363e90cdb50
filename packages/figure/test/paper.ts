import assert from 'node:assert/strict';
import { existsSync, readFileSync, writeFileSync } from 'node:fs';
import { parseHTML } from 'linkedom';
import type { FigureSetting, Theme } from '../src/index.ts';

/** Width of the text block of the report, in points. */
const paperWidth = 447;

/** On a screen the type is larger, and the sheet as much wider. */
const widths: Readonly<Record<Theme, number>> = {
  paper: paperWidth,
  'screen-light': (paperWidth * 13.5) / 7.2,
  'screen-dark': (paperWidth * 13.5) / 7.2,
};

export function settingOf(theme: Theme = 'paper'): FigureSetting {
  const { document } = parseHTML('<!doctype html><html><body></body></html>');
  return { document: document as unknown as Document, theme, width: widths[theme] }; // a DOM by another hand
}

/** Every word of a figure, in the order drawn. */
export function wordsOf(svg: SVGSVGElement): string[] {
  return [...svg.querySelectorAll('text')].map((text) => text.textContent ?? '');
}

/** The forms of the marks, whatever their size: `M#,#L#,#` is a stroke. */
export function formsOf(svg: SVGSVGElement): string[] {
  return [...svg.querySelectorAll('path')].map((path) =>
    (path.getAttribute('d') ?? '').replaceAll(/-?\d+(\.\d+)?/g, '#'),
  );
}

/** Compares with the figure kept, an element a line, numbers to two decimals; a new one is put beside it. */
export function matchesGolden(name: string, svg: SVGSVGElement): void {
  const file = new URL(`./golden/${name}.svg`, import.meta.url);
  const drawn = svg.outerHTML
    .replaceAll(/-?\d+\.\d{3,}/g, (digits) => String(Number(Number(digits).toFixed(2))))
    .replaceAll('><', '>\n<');
  if (existsSync(file) && readFileSync(file, 'utf8') === `${drawn}\n`) return;
  writeFileSync(new URL(`./golden/${name}-changed.svg`, import.meta.url), `${drawn}\n`);
  assert.fail(`${name}.svg is not what it was: look at ${name}-changed.svg, and take it over if it is better`);
}
