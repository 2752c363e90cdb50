const isoDay = /^(\d{4})-(\d{2})-(\d{2})/;
const months = [
  'January',
  'February',
  'March',
  'April',
  'May',
  'June',
  'July',
  'August',
  'September',
  'October',
  'November',
  'December',
];

/** `2 March 2026` from an ISO date or time; other text stays as it is. */
export function day(iso: string): string {
  const match = isoDay.exec(iso);
  const month = months[Number(match?.[2]) - 1];
  return match === null || month === undefined ? iso : `${Number(match[3])} ${month} ${match[1]}`;
}

/** First and last day of a list of ISO times, as one day or a span; null for an empty list. */
export function span(times: readonly (string | null)[]): string | null {
  const known = times
    .filter((time) => time !== null)
    .map((time) => time.slice(0, 10))
    .sort();
  const first = known[0];
  const last = known.at(-1);
  if (first === undefined || last === undefined) return null;
  return first === last ? day(first) : `${day(first)} to ${day(last)}`;
}
