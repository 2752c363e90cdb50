import { readFileSync, writeFileSync } from 'node:fs';

/** What stands between `<!-- name -->` and `<!-- /name -->` of a page under docs. */
export function readPagePart(page: string, name: string): string {
  const text = readFileSync(new URL(`../docs/${page}`, import.meta.url), 'utf8');
  return text.slice(text.indexOf(`<!-- ${name} -->`) + name.length + 9, text.indexOf(`<!-- /${name} -->`));
}

/** Puts new text between `<!-- name -->` and `<!-- /name -->` of a page under docs. */
export function writePagePart(page: string, name: string, text: string): void {
  const path = new URL(`../docs/${page}`, import.meta.url);
  const old = readFileSync(path, 'utf8');
  const from = old.indexOf(`<!-- ${name} -->`);
  const to = old.indexOf(`<!-- /${name} -->`);
  if (from < 0 || to < from) throw new Error(`${page} has no part ${name}`);
  writeFileSync(path, `${old.slice(0, from)}<!-- ${name} -->\n${text}\n${old.slice(to)}`);
}
