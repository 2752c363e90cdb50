import { InputError } from '@provinghouse/core';

/** Steps into a JSON value: names of members and places in lists. */
export type JsonPath = readonly (string | number)[];

/**
 * Reads a path such as `load.kN` or `values[0].f`.
 * @throws InputError source/json-path
 */
export function jsonPath(text: string): JsonPath {
  const steps: (string | number)[] = [];
  let rest = text.trim();
  while (rest !== '') {
    const found = /^(?:\.?([A-Za-z_][\w-]*)|\[(\d{1,6})\])/.exec(rest);
    if (!found)
      throw new InputError('source/json-path', `"${text}" is no path; write it like load.kN or values[0].`, {});
    steps.push(found[1] ?? Number(found[2]));
    rest = rest.slice(found[0].length);
  }
  return steps;
}

/** What lies at the path; undefined when there is nothing. Only a value's own members are looked at. */
export function atPath(value: unknown, path: JsonPath): unknown {
  let here = value;
  for (const step of path) {
    if (typeof here !== 'object' || here === null || !Object.hasOwn(here, step)) return undefined;
    here = Reflect.get(here, step);
  }
  return here;
}

const NUMBER = { '.': /^[+-]?(\d+\.?\d*|\.\d+)(e[+-]?\d{1,3})?$/i, ',': /^[+-]?(\d+,?\d*|,\d+)(e[+-]?\d{1,3})?$/i };

/** A number, or text that is one and nothing else; null for everything else, NaN and infinity among it. */
export function plainNumber(value: unknown, decimal: '.' | ',' = '.'): number | null {
  if (typeof value === 'number') return Number.isFinite(value) ? value : null;
  if (typeof value !== 'string') return null;
  const text = value.trim();
  if (!NUMBER[decimal].test(text)) return null;
  const number = Number(text.replace(',', '.'));
  return Number.isFinite(number) ? number : null;
}
