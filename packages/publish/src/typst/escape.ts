import { isCovered } from './font.ts';

/** A Typst code expression: what may stand after `#`, or as an argument. */
export type Typst = string;

/** A run of letters longer than this gets places where a line may end. */
const longestRun = 24;
const breakEvery = 12;
const zeroWidthSpace = '\u200b';

/**
 * User text as a Typst string literal: it is shown as it stands and can never be read as markup or code.
 *
 * Blanks and line ends become one space. A character that the font cannot show, and every control, format or
 * bidirectional character, appears as its code point in brackets, such as [U+202E]: nothing is lost, nothing acts.
 * Runs without a place to break get zero-width spaces, so that no cell overflows.
 */
export function literal(value: string): Typst {
  return quoted(breakable(shown(value)));
}

/** As {@link literal}, for hashes and codes that are to be copied whole: no places to break. */
export function verbatim(value: string): Typst {
  return quoted(shown(value));
}

/** The text as the report shows it, before quoting. */
export function shown(value: string): string {
  const plain = value.toWellFormed().normalize('NFC').replaceAll(/\s+/gu, ' ').trim();
  return Array.from(plain, showCharacter).join('');
}

function showCharacter(character: string): string {
  const codePoint = character.codePointAt(0) ?? 0;
  const acts = /[\p{Cc}\p{Cf}\p{Co}\p{Cn}\p{Zl}\p{Zp}]/u.test(character);
  return acts || !isCovered(codePoint) ? `[U+${codePoint.toString(16).toUpperCase().padStart(4, '0')}]` : character;
}

function breakable(text: string): string {
  return text.replaceAll(new RegExp(`[^\\s/?&-]{${longestRun + 1},}`, 'gu'), (run) => {
    const characters = Array.from(run);
    return characters
      .map((character, at) => (at > 0 && at % breakEvery === 0 ? zeroWidthSpace : '') + character)
      .join('');
  });
}

function quoted(text: string): Typst {
  return `"${text.replaceAll('\\', '\\\\').replaceAll('"', '\\"')}"`;
}

/** Expressions one after the other as one. */
export function joined(parts: readonly Typst[]): Typst {
  return parts.length === 1 && parts[0] !== undefined ? parts[0] : `{ ${parts.join('; ')} }`;
}
