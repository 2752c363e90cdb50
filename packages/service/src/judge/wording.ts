import type { Summary } from '@provinghouse/core';

/** A number for a sentence: three significant figures are what a handful of pieces can carry. */
export function figure(value: number, digits = 3): string {
  const magnitude = value === 0 ? 0 : Math.floor(Math.log10(Math.abs(value)));
  return value.toFixed(Math.max(0, Math.min(6, digits - 1 - magnitude)));
}

/** `a`, `a and b`, `a, b and c`. */
export function list(words: readonly string[]): string {
  if (words.length < 2) return words.join('');
  return `${words.slice(0, -1).join(', ')} and ${words[words.length - 1]}`;
}

export function plural(count: number, one: string, many: string): string {
  return `${count} ${count === 1 ? one : many}`;
}

interface SummaryWords {
  readonly what: string;
  readonly unit: string;
  readonly atLeast: number;
  readonly excluded: number;
}

/** What a summary says to a reader who is no statistician. */
export function summarySentence(summary: Summary, words: SummaryWords): string {
  const left = [
    words.atLeast > 0
      ? `${plural(words.atLeast, 'piece is', 'pieces are')} known only as "at least" and ${words.atLeast === 1 ? 'is' : 'are'} not in the mean`
      : '',
    words.excluded > 0 ? `${plural(words.excluded, 'piece is', 'pieces are')} left out with the reason given` : '',
  ].filter((part) => part !== '');
  const tail = left.length === 0 ? '' : ` ${capital(list(left))}.`;
  return `${core(summary, words)}${tail}`;
}

function core(summary: Summary, { what, unit }: SummaryWords): string {
  const { n, mean, sd, least, greatest } = summary;
  if (mean === null || least === null || greatest === null) return `No ${what} can be summarised.`;
  if (sd === null)
    return `${capital(what)} ${figure(mean)} ${unit} from one piece: one piece has no scatter, so nothing is known of the next one.`;
  return `${capital(what)}: mean ${figure(mean)} ${unit} over ${n} pieces, from ${figure(least)} to ${figure(greatest)}, standard deviation ${figure(sd, 2)} ${unit}.`;
}

export function capital(text: string): string {
  return text.charAt(0).toUpperCase() + text.slice(1);
}
