/** A linear scale from values to points on paper, with ticks at round numbers. */
export interface Scale {
  readonly from: number;
  readonly to: number;
  readonly start: number;
  readonly end: number;
  readonly ticks: readonly number[];
  /** Decimals that tell the ticks apart. */
  readonly places: number;
}

interface Extent {
  readonly start: number;
  readonly end: number;
  /** About how many ticks; the step is 1, 2 or 5 times a power of ten. */
  readonly ticks: number;
}

/** Values nearer together than this are one value: no bench quantity is told apart finer. */
const narrowest = 1e-9;

/** A scale over `values` padded to round ticks at both ends. No finite value at all gives 0 to 1. */
export function scaleOver(values: readonly number[], extent: Extent): Scale {
  const finite = values.filter(Number.isFinite);
  const least = finite.length === 0 ? 0 : finite.reduce((a, b) => Math.min(a, b));
  const greatest = finite.length === 0 ? 1 : finite.reduce((a, b) => Math.max(a, b));
  const spread = greatest - least > narrowest ? greatest - least : Math.max(Math.abs(greatest), 1);
  const step = roundStep(spread / extent.ticks);
  const first = Math.floor(least / step + 1e-9);
  const last = Math.max(Math.ceil(greatest / step - 1e-9), first + 1);
  const ticks = Array.from({ length: last - first + 1 }, (_, index) => (first + index) * step);
  return {
    from: first * step,
    to: last * step,
    start: extent.start,
    end: extent.end,
    ticks,
    places: Math.max(0, -Math.floor(Math.log10(step) + 1e-9)),
  };
}

function roundStep(rough: number): number {
  const power = 10 ** Math.floor(Math.log10(rough));
  const factor = [1, 2, 5, 10].find((candidate) => candidate * power >= rough * (1 - 1e-9)) ?? 10;
  return factor * power;
}

/** Where a value stands on paper, in points. */
export function position(scale: Scale, value: number): number {
  return scale.start + ((value - scale.from) / (scale.to - scale.from)) * (scale.end - scale.start);
}
