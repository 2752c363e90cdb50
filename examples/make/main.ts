import { mkdirSync, writeFileSync } from 'node:fs';
import { join, resolve } from 'node:path';
import { bookPulls, bookRows } from './bench-book.ts';
import { writePackage } from './package.ts';
import { demoSeed, pullAllPieces } from './story.ts';
import { writeTrace } from './trace-file.ts';
import { truthOf } from './truth.ts';
import { instruments } from './words.ts';

/** Makes the demonstration campaign below `folder` (`node examples/make/main.ts [folder]`; default: examples/). */
export function makeDemo(folder: string): { readonly files: number; readonly bytes: number } {
  const pulls = bookPulls(demoSeed, pullAllPieces(demoSeed));
  const traces = new Map(
    pulls.map(({ pull, pulledAt, trace, pulled }) => {
      const context = {
        piece: pulled.piece,
        pull,
        rig: pulled.rig,
        startedAt: pulledAt.slice(0, 16).replace('T', ' '),
        resolution_kN: instruments.find((i) => i.instrument === pulled.rig)?.resolution ?? 0.01,
      };
      return [trace, writeTrace(pulled.recording, pulled.story.form, context)] as const;
    }),
  );
  mkdirSync(folder, { recursive: true });
  const files = writePackage(join(folder, 'sallow-reach'), { rows: bookRows(demoSeed, pulls), traces });
  writeFileSync(join(folder, 'sallow-reach-truth.json'), jsonText(truthOf(pulls)));
  return { files: files.length, bytes: files.reduce((sum, file) => sum + file.bytes, 0) };
}

/** JSON with lists of plain numbers on one line, as the formatter of this repository wants it. */
function jsonText(value: object): string {
  const text = JSON.stringify(value, null, 2);
  return `${text.replace(/\[\s+((?:-?[\d.]+,?\s+)+)\]/g, (_, list: string) => `[${list.trim().replace(/\s+/g, ' ')}]`)}\n`;
}

if (import.meta.main) {
  const folder = resolve(process.argv[2] ?? join(import.meta.dirname, '..'));
  const made = makeDemo(folder);
  console.log(`${made.files} files, ${(made.bytes / 1e6).toFixed(2)} MB, in ${join(folder, 'sallow-reach')}`);
}
