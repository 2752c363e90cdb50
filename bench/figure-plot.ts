/** A plain SVG plot with a logarithmic abscissa, readable in black and white: lines by their dashes, data as marks. */

export interface Line {
  readonly label: string;
  /** Stroke pattern; empty for a full line. */
  readonly dash: string;
  readonly points: readonly { readonly x: number; readonly y: number }[];
}

export interface Mark {
  readonly x: number;
  readonly y: number;
  readonly low: number | null;
  readonly high: number | null;
}

export interface Plot {
  readonly title: string;
  readonly xLabel: string;
  readonly yLabel: string;
  readonly xTicks: readonly number[];
  readonly yTicks: readonly number[];
  readonly lines: readonly Line[];
  readonly marks: readonly Mark[];
  readonly markLabel: string;
}

const width = 680;
const height = 400;
const left = 56;
const right = 660;
const top = 40;
const bottom = 352;
const ink = '#1f2a2c';
const accent = '#0f5c63';

/** The whole figure as SVG text. */
export function plot(figure: Plot): string {
  const xs = figure.lines.flatMap((line) => line.points.map((point) => Math.log(point.x)));
  const ys = [...figure.yTicks, ...figure.lines.flatMap((line) => line.points.map((point) => point.y))];
  const [x0, x1] = [Math.min(...xs), Math.max(...xs)];
  const [y0, y1] = [Math.min(...ys), Math.max(...ys)];
  const atX = (x: number) => round(left + ((Math.log(x) - x0) / (x1 - x0)) * (right - left));
  const atY = (y: number) => round(bottom - ((y - y0) / (y1 - y0)) * (bottom - top));
  const parts = [
    `<svg xmlns="http://www.w3.org/2000/svg" viewBox="0 0 ${width} ${height}" font-family="sans-serif" font-size="12" fill="${ink}" role="img" aria-label="${figure.title}">`,
    `<rect width="${width}" height="${height}" fill="#fbfaf6"/>`,
    `<text x="${left}" y="22" font-size="13" font-weight="bold">${figure.title}</text>`,
    ...figure.yTicks.map(
      (tick) =>
        `<line x1="${left}" x2="${right}" y1="${atY(tick)}" y2="${atY(tick)}" stroke="${ink}" stroke-opacity="0.15"/><text x="${left - 6}" y="${atY(tick) + 4}" text-anchor="end">${tick}</text>`,
    ),
    ...figure.xTicks.map(
      (tick) =>
        `<line x1="${atX(tick)}" x2="${atX(tick)}" y1="${bottom}" y2="${bottom + 5}" stroke="${ink}"/><text x="${atX(tick)}" y="${bottom + 19}" text-anchor="middle">${tick}</text>`,
    ),
    `<line x1="${left}" x2="${right}" y1="${bottom}" y2="${bottom}" stroke="${ink}"/>`,
    `<text x="${(left + right) / 2}" y="${height - 10}" text-anchor="middle">${figure.xLabel}</text>`,
    `<text transform="translate(14 ${(top + bottom) / 2}) rotate(-90)" text-anchor="middle">${figure.yLabel}</text>`,
    ...figure.lines.map(
      (line) =>
        `<polyline fill="none" stroke="${accent}" stroke-width="1.6" stroke-dasharray="${line.dash}" points="${line.points.map(({ x, y }) => `${atX(x)},${atY(y)}`).join(' ')}"/>`,
    ),
    ...figure.marks.map((mark) => markText(mark, atX, atY)),
    ...legend(figure),
    '</svg>\n',
  ];
  return parts.join('\n');
}

function markText(mark: Mark, atX: (x: number) => number, atY: (y: number) => number): string {
  const x = atX(mark.x);
  const bar =
    mark.low === null || mark.high === null
      ? ''
      : `<path d="M${x} ${atY(mark.low)}V${atY(mark.high)}M${x - 5} ${atY(mark.low)}h10M${x - 5} ${atY(mark.high)}h10" stroke="${ink}" stroke-width="1.4" fill="none"/>`;
  return `${bar}<circle cx="${x}" cy="${atY(mark.y)}" r="3.6" fill="${ink}"/>`;
}

function legend({ lines, markLabel }: Plot): string[] {
  const x = 420;
  const entries = lines.map(
    (line, k) =>
      `<line x1="${x}" x2="${x + 34}" y1="${top + 14 + 18 * k}" y2="${top + 14 + 18 * k}" stroke="${accent}" stroke-width="1.6" stroke-dasharray="${line.dash}"/><text x="${x + 42}" y="${top + 18 + 18 * k}">${line.label}</text>`,
  );
  const y = top + 14 + 18 * lines.length;
  return [
    ...entries,
    `<circle cx="${x + 17}" cy="${y}" r="3.6" fill="${ink}"/><text x="${x + 42}" y="${y + 4}">${markLabel}</text>`,
  ];
}

function round(value: number): number {
  return Math.round(10 * value) / 10;
}
