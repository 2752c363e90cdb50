import assert from 'node:assert/strict';
import { existsSync, globSync, readFileSync } from 'node:fs';
import { dirname, join } from 'node:path';
import { test } from 'node:test';
import { fileURLToPath } from 'node:url';

const root = fileURLToPath(new URL('../', import.meta.url));
const pages = globSync(['*.md', 'docs/**/*.md', 'examples/*.md'], { cwd: root });

test('every link between pages leads somewhere', () => {
  assert.ok(pages.length > 10);
  const broken = pages.flatMap((page) =>
    [...readFileSync(join(root, page), 'utf8').matchAll(/\]\(([^)#\s]+)(?:#[^)]*)?\)/g)]
      .map((match) => match[1] ?? '')
      .filter((target) => !/^[a-z]+:/.test(target))
      .filter((target) => !existsSync(join(root, dirname(page), target)))
      .map((target) => `${page}: ${target}`),
  );
  assert.deepEqual(broken, []);
});

test('every page of the documentation is reached from its index', () => {
  const index = readFileSync(join(root, 'docs/README.md'), 'utf8');
  const missing = pages
    .filter((page) => page.startsWith('docs/') && page !== 'docs/README.md')
    .filter((page) => !index.includes(page.slice('docs/'.length)));
  assert.deepEqual(missing, []);
});
