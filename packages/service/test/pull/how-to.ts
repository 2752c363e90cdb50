import assert from 'node:assert/strict';
import { readFileSync } from 'node:fs';

type Plain = Record<string, unknown>;

/** Where a wire is to be found, in place of what the page names. */
export type WirePlace = Plain;

const page = new URL('../../../../docs/how-to/watch-a-pull.md', import.meta.url);

/** The files of Kit that the page on live pulls shows, by the kind of their one source. */
function examples(): Map<string, Plain> {
  const blocks = [...readFileSync(page, 'utf8').matchAll(/^```json\n([\s\S]*?)^```/gm)].map(([, block]) => block ?? '');
  const found = new Map<string, Plain>();
  for (const block of blocks) {
    // Those of the page itself, which the tests below hold it to.
    const file = JSON.parse(block) as { readonly sources: readonly [Plain, ...Plain[]] };
    found.set(String(file.sources[0].kind), file);
  }
  return found;
}

export const exampleKinds = [...examples().keys()];

/** The example of one kind of wire with another address in it; a practice rig in a hurry has a clock that runs faster than ours. */
export function exampleAt(kind: string, place: WirePlace): string {
  const file = examples().get(kind) as { readonly sources: readonly Plain[] } | undefined;
  assert.ok(file, `the page shows no file for ${kind}`);
  return JSON.stringify({ ...file, sources: [{ ...file.sources[0], ...place, isClockFree: true }] });
}
