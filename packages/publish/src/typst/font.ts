import { readFileSync } from 'node:fs';
import { createRequire } from 'node:module';
import { coverageOf } from './coverage.ts';

/** Family name inside the font files. */
export const fontFamily = 'Source Sans 3';

const faces = ['400Regular', '400Regular_Italic', '600SemiBold'] as const;

const resolve = createRequire(import.meta.url).resolve;

let loaded: readonly Buffer[] | null = null;
let covered: readonly ReadonlySet<number>[] | null = null;

/** The font files of the report, from the font package; the system's fonts are never asked for. */
export function fontFiles(): readonly Buffer[] {
  loaded ??= faces.map((face) =>
    readFileSync(resolve(`@expo-google-fonts/source-sans-3/${face}/SourceSans3_${face}.ttf`)),
  );
  return loaded;
}

/** True when every face of the report can show the code point. */
export function isCovered(codePoint: number): boolean {
  covered ??= fontFiles().map(coverageOf);
  return covered.every((face) => face.has(codePoint));
}
