/**
 * Writes docs/reference/data-package.md: the introduction written by hand, then every field from the table definitions.
 * Run it after a change to either: `node packages/contract/make-reference.ts`.
 */
import { readFileSync, writeFileSync } from 'node:fs';
import { fileURLToPath } from 'node:url';
import type { Field, Table } from './src/package/index.ts';
import { keyFields, tables } from './src/package/index.ts';

export const pageFile = new URL('../../docs/reference/data-package.md', import.meta.url);

/** The whole page. */
export function referencePage(): string {
  const introduction = readFileSync(new URL('data-package-introduction.md', import.meta.url), 'utf8');
  return `${[introduction.trimEnd(), ...Object.values(tables).map(tableSection)].join('\n\n')}\n`;
}

function tableSection(table: Table): string {
  const rows = Object.entries(table.fields).map(([name, field]) => fieldRow(name, field));
  return [
    `### ${table.name}.csv`,
    '',
    table.about,
    `Key: ${keyFields(table).map(code).join(', ')}.`,
    '',
    '| column | type | must be filled | what it is | allowed | example |',
    '|---|---|---|---|---|---|',
    ...rows,
  ].join('\n');
}

function fieldRow(name: string, field: Field): string {
  const examples = [...new Set([field.example, field.example2 ?? ''])].filter((example) => example !== '');
  const cells = [
    code(name),
    field.type,
    field.required ? 'yes' : 'no',
    field.description,
    allowed(field),
    examples.map(code).join(', '),
  ];
  return `| ${cells.map((cell) => cell.replaceAll('|', '\\|')).join(' | ')} |`;
}

function allowed(field: Field): string {
  const bounds = [
    ...(field.exclusiveMinimum === undefined ? [] : [`more than ${field.exclusiveMinimum}`]),
    ...(field.minimum === undefined ? [] : [`at least ${field.minimum}`]),
    ...(field.maximum === undefined ? [] : [`at most ${field.maximum}`]),
  ];
  return [
    ...(field.choices ? [field.choices.map(code).join(', ')] : []),
    ...(field.pattern ? [field.pattern.words] : []),
    ...(bounds.length > 0 ? [bounds.join(' and ')] : []),
    ...(field.references ? [`a code of ${code(field.references)}`] : []),
  ].join('; ');
}

function code(text: string): string {
  return `\`${text}\``;
}

if (process.argv[1] === fileURLToPath(import.meta.url)) writeFileSync(pageFile, referencePage());
