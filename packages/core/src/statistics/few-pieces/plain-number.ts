/** A number for a sentence: four significant digits, no trailing zeros, the unit behind it where one is told. */
export function plainNumber(value: number, unit?: string): string {
  const figure = Math.abs(value) >= 10_000 ? value.toFixed(0) : String(Number(value.toPrecision(4)));
  return unit === undefined ? figure : `${figure} ${unit}`;
}

/** A share of one as a percentage for a sentence; digits are kept near 0 and 100 %, so that 99.95 % is never told as 100 %. */
export function plainPercent(share: number): string {
  const away = Math.min(share, 1 - share);
  const digits = away <= 0 || away >= 0.1 ? 3 : 2 + Math.ceil(-Math.log10(away));
  return `${Number((100 * share).toPrecision(Math.min(digits, 15)))} %`;
}

/** "one piece", "5 pieces". */
export function plainPieces(n: number): string {
  if (n === 0) return 'no piece';
  return n === 1 ? 'one piece' : `${n} pieces`;
}
