import type { PreviewColumn } from '@provinghouse/contract';

/**
 * The piece whose code stands in the name of a file, letter for letter but for their case, with nothing of a word around it. Null where none
 * does, or several that are not parts of one another: then there is nothing to propose.
 */
export function pieceInName(name: string, pieces: readonly string[]): string | null {
  const said = name.toLowerCase();
  const found = pieces.filter((piece) => standsIn(said, piece.toLowerCase()));
  const longest = found.toSorted((a, b) => b.length - a.length)[0];
  if (longest === undefined) return null;
  return found.every((piece) => standsIn(longest.toLowerCase(), piece.toLowerCase())) ? longest : null;
}

function standsIn(said: string, code: string): boolean {
  for (let at = said.indexOf(code); at >= 0; at = said.indexOf(code, at + 1)) {
    const [before, after] = [said[at - 1] ?? ' ', said[at + code.length] ?? ' '];
    if (!isOfWord(before) && !isOfWord(after)) return true;
  }
  return false;
}

function isOfWord(letter: string): boolean {
  return /[\p{L}\p{N}]/u.test(letter);
}

/** The first code of the kind P-001 that is free and comes after all of that kind. */
export function nextPull(taken: Iterable<string>): string {
  const numbers = [...taken].map((code) => Number(/^P-(\d+)$/.exec(code)?.[1] ?? 0));
  return `P-${String(Math.max(0, ...numbers) + 1).padStart(3, '0')}`;
}

/** Where a recording is kept in the campaign: under the code of its pull, with the ending it had. A path that is taken gets a number. */
export function tracePath(pull: string, name: string, taken: readonly string[]): string {
  const ending = (/\.([A-Za-z0-9]{1,8})$/.exec(name)?.[1] ?? 'txt').toLowerCase();
  const stem = pull.trim().replace(/[^\p{L}\p{N}._-]+/gu, '-');
  const held = new Set(taken);
  let path = `traces/${stem}.${ending}`;
  for (let count = 2; held.has(path); count += 1) path = `traces/${stem}-${count}.${ending}`;
  return path;
}

/** How a column is named in a row of pulls: by its name where only it has that name, else by its number; with a unit where one is given. */
export function columnWord(columns: readonly PreviewColumn[], column: number, unit: string | null): string {
  const name = columns.find((one) => one.column === column)?.name.trim() ?? '';
  const alike = columns.filter((one) => one.name.trim().toLowerCase() === name.toLowerCase());
  const isPlain = alike.length === 1 && /^[^[\]\p{Cc}]+$/u.test(name) && !/^(\d+|none)$/i.test(name);
  return `${isPlain ? name : column}${unit === null ? '' : `[${unit}]`}`;
}
