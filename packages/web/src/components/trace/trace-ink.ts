/** Colours and type of the figure, read from the style sheet so that it follows the ground. */
export interface TraceInk {
  readonly ink: string;
  readonly soft: string;
  readonly hair: string;
  readonly strong: string;
  readonly teal: string;
  readonly brick: string;
  readonly paper: string;
  /** Size of one CSS pixel on the canvas. */
  readonly ratio: number;
  readonly fontSize: number;
  readonly family: string;
}

export function readInk(element: HTMLElement): TraceInk {
  const style = getComputedStyle(element);
  const colour = (name: string) => style.getPropertyValue(name).trim();
  return {
    ink: colour('--ink'),
    soft: colour('--ink-soft'),
    hair: colour('--hair'),
    strong: colour('--hair-strong'),
    teal: colour('--teal'),
    brick: colour('--brick'),
    paper: colour('--paper'),
    ratio: window.devicePixelRatio || 1,
    fontSize: Number.parseFloat(style.fontSize) * 0.9,
    family: style.fontFamily,
  };
}

export function fontOf(ink: TraceInk, weight = 400): string {
  return `${weight} ${ink.fontSize * ink.ratio}px ${ink.family}`;
}
