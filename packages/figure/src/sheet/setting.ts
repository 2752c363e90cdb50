/// <reference lib="dom" />

/** Paper is white and black and set small; a screen has a light or a dark ground. */
export type Theme = 'paper' | 'screen-light' | 'screen-dark';

/** Where a figure is drawn and for whom. The same data and setting give the same SVG. */
export interface FigureSetting {
  /** The page on screen, any DOM elsewhere. */
  readonly document: Document;
  /** In points on paper, in CSS pixels on screen. */
  readonly width: number;
  readonly theme: Theme;
  /** Height of the type where the page around has its own; every measure of the figure goes with it. */
  readonly em?: number;
}

/** Inks and type of a theme. Every ink but the bands and hairs has at least 4.5 to 1 on its ground. */
export interface Ink {
  readonly ground: string;
  readonly ink: string;
  readonly soft: string;
  readonly hair: string;
  readonly accent: string;
  readonly band: string;
  /** Height of the type; every other measure is a multiple of it. */
  readonly em: number;
  /** Width of a plain line. */
  readonly line: number;
  readonly family: string;
}

const screenType = {
  em: 13.5,
  line: 1.5,
  family: "'Source Sans 3 Variable', 'Source Sans 3', sans-serif",
} as const;

const inks: Readonly<Record<Theme, Ink>> = {
  paper: {
    ground: '#ffffff',
    ink: '#1b2120',
    soft: '#59625f',
    hair: '#c9cfcd',
    accent: '#0b5057',
    band: '#dde3e1',
    em: 7.2,
    line: 0.8,
    family: "'Source Sans 3', sans-serif",
  },
  'screen-light': {
    ground: '#f8f7f2',
    ink: '#1a2225',
    soft: '#505c60',
    hair: '#d5d2c6',
    accent: '#0b5057',
    band: '#d9e3e0',
    ...screenType,
  },
  'screen-dark': {
    ground: '#12181a',
    ink: '#e9e6da',
    soft: '#a9b3b2',
    hair: '#334044',
    accent: '#79c7c9',
    band: '#24393c',
    ...screenType,
  },
};

export function inkOf({ theme, em }: Pick<FigureSetting, 'theme' | 'em'>): Ink {
  const ink = inks[theme];
  return em === undefined ? ink : { ...ink, em, line: (ink.line * em) / ink.em };
}
