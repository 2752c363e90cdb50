/**
 * Advance widths of Source Sans 3 Regular in thousandths of an em, by classes near enough to keep labels apart: no DOM off
 * the screen can measure text. Numerals are tabular in this face.
 */
const classes: readonly (readonly [characters: string, width: number])[] = [
  [" .,:;ijlI'|", 250],
  ['ft()-/', 325],
  ['rs', 385],
  ['ckvxyzJ', 460],
  ['0123456789±−–', 497],
  ['aegbdhnopquEFLPSTVXYZ', 530],
  ['ABCDGHKNOQRU', 615],
  ['mwMW%', 770],
];

const widths: ReadonlyMap<string, number> = new Map(
  classes.flatMap(([characters, width]) => [...characters].map((character) => [character, width] as const)),
);

/** Width of `text` set at `em`, in the unit of `em`; characters out of the list count as wide letters. */
export function textWidth(text: string, em: number): number {
  return ([...text].reduce((sum, character) => sum + (widths.get(character) ?? 620), 0) / 1000) * em;
}

/** The same in the semi-bold face. */
export function strongWidth(text: string, em: number): number {
  return 1.06 * textWidth(text, em);
}

/** `text` as it is when it fits into `width`, else cut in the middle, so that the ends of codes stay. */
export function fitted(text: string, em: number, width: number): string {
  const letters = [...text];
  if (textWidth(text, em) <= width) return text;
  for (let kept = letters.length - 2; kept > 2; kept -= 1) {
    const head = Math.ceil(kept / 2);
    const short = `${letters.slice(0, head).join('')}…${letters.slice(head - kept).join('')}`;
    if (textWidth(short, em) <= width) return short;
  }
  return letters.slice(0, 2).join('');
}
