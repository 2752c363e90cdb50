import { roundByUncertainty } from '../../uncertainty/rounding.ts';

/** A probability as a count that can be pictured: "3 times in 1000". */
export function chanceWords(p: number): string {
  if (p >= 0.995) return 'nearly always';
  if (p >= 0.1) return `${Math.round(100 * p)} times in 100`;
  if (p >= 0.01) return times(Math.round(1000 * p), '1000');
  if (p >= 0.0001) return times(Math.round(10_000 * p), '10 000');
  return 'less than once in 10 000';
}

function times(count: number, of: string): string {
  return count === 1 ? `once in ${of}` : `${count} times in ${of}`;
}

/** "p = 0.012", "p < 0.0001". */
export function pWords(p: number): string {
  return p < 0.0001 ? 'p < 0.0001' : `p = ${Number(p.toPrecision(2))}`;
}

/** A share in per cent: whole numbers, finer near the ends. */
export function percentWords(share: number): string {
  const percent = 100 * share;
  if (percent > 0 && percent < 0.1) return 'under 0.1 %';
  if (percent < 100 && percent > 99.9) return 'over 99.9 %';
  return `${percent < 1 || percent > 99 ? Number(percent.toFixed(1)) : Math.round(percent)} %`;
}

/** A value told to the place that its uncertainty bears, with its unit. */
export function valueWords(value: number, by: { readonly uncertainty: number; readonly unit: string }): string {
  const rounded =
    by.uncertainty >= 1e-99 ? roundByUncertainty({ value, uncertainty: by.uncertainty }).value : `${value}`;
  return by.unit === '' ? rounded : `${rounded} ${by.unit}`;
}

/** "Ash, Birch and Cedar". */
export function listWords(names: readonly string[]): string {
  if (names.length < 2) return names.join('');
  return `${names.slice(0, -1).join(', ')} and ${names.at(-1)}`;
}

/** One sentence for a test of whether all groups are alike. */
export function spreadSentence(test: {
  readonly p: number | null;
  readonly groupCount: number;
  readonly what: string;
  readonly reason: string | null;
}): string {
  const { p, groupCount, what, reason } = test;
  if (p === null) return `The ${what} could not be tested: ${reason ?? 'the data do not carry it'}.`;
  return (
    `If nothing but scatter set the ${groupCount} groups apart, ${what} as different as these would come about ` +
    `${chanceWords(p)} (${pWords(p)}).`
  );
}
