import { readFileSync, writeFileSync } from 'node:fs';

/** Puts new text between `<!-- name -->` and `<!-- /name -->` of a page under docs. */
export function writePagePart(page: string, name: string, text: string): void {
  const path = new URL(`../docs/${page}`, import.meta.url);
  const old = readFileSync(path, 'utf8');
  const from = old.indexOf(`<!-- ${name} -->`);
  const to = old.indexOf(`<!-- /${name} -->`);
  if (from < 0 || to < from) throw new Error(`${page} has no part ${name}`);
  writeFileSync(path, `${old.slice(0, from)}<!-- ${name} -->\n${text}\n${old.slice(to)}`);
}
