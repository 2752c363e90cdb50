import assert from 'node:assert/strict';
import { globSync, readFileSync } from 'node:fs';
import { test } from 'node:test';

const root = new URL('../', import.meta.url);
const rooms =
  'trace|chain|gauging|reckon|package|campaign|entry|template|file|report|store|server|pull|source|record|spool|watch|practice';

function codesIn(text: string, quote: string): string[] {
  return [...text.matchAll(new RegExp(`${quote}((?:${rooms})/[a-z-]+)${quote}`, 'g'))].map((match) => match[1] ?? '');
}

const used = new Set(
  globSync('packages/*/src/**/*.ts', { cwd: root }).flatMap((file) =>
    codesIn(readFileSync(new URL(file, root), 'utf8'), "'"),
  ),
);
const told = codesIn(readFileSync(new URL('docs/reference/errors.md', root), 'utf8'), '`');

test('every code a fault can carry is told in the reference, and the reference tells no other', () => {
  assert.ok(used.size > 50);
  assert.deepEqual([...used].sort(), [...told].sort());
});
