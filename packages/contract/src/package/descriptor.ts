import { z } from 'zod';
import type { Field, Fields } from './field.ts';
import { keyFields } from './key.ts';
import { type Table, type TableName, tables } from './tables.ts';

/** Version of this layout. A package of a higher version is refused; a lower one is read as it was meant. */
export const packageFormat = 1;
/** The descriptor's own key for it; names with a prefix are free for such use in a Data Package. */
export const packageFormatKey = 'provinghouse:format';
export const descriptorName = 'datapackage.json';

export interface TableSchema {
  readonly fields: readonly Readonly<Record<string, unknown>>[];
  readonly missingValues: readonly string[];
  readonly primaryKey?: readonly string[];
  readonly foreignKeys?: readonly Readonly<Record<string, unknown>>[];
}

/** A file of a package, with what the descriptor says of it. */
export interface PackageFile {
  readonly path: string;
  readonly bytes: number;
  /** 64 hexadecimal digits. */
  readonly sha256: string;
  readonly mediatype: string;
  readonly table?: TableName;
}

export interface PackageSummary {
  /** Code of the campaign. */
  readonly campaign: string;
  readonly title: string;
  readonly files: readonly PackageFile[];
}

/**
 * The Table Schema of a table (Frictionless Table Schema). A primary key is stated only where none of its fields may be
 * empty: the standard takes fields of a primary key as required.
 */
export function tableSchema(table: Table): TableSchema {
  const key = keyFields(table);
  const keyIsFilled = key.every((name) => table.fields[name]?.required);
  const foreignKeys = Object.entries(table.fields).flatMap(([name, field]) => foreignKey(name, field));
  return {
    fields: Object.entries(table.fields).map(([name, field]) => fieldSchema(name, field)),
    missingValues: [''],
    ...(keyIsFilled ? { primaryKey: key } : {}),
    ...(foreignKeys.length > 0 ? { foreignKeys } : {}),
  };
}

function fieldSchema(name: string, field: Field): Record<string, unknown> {
  const constraints = {
    ...(field.required ? { required: true } : {}),
    ...(field.choices ? { enum: field.choices } : {}),
    ...(field.pattern ? { pattern: field.pattern.expression } : {}),
    ...(field.minimum !== undefined ? { minimum: field.minimum } : {}),
    ...(field.exclusiveMinimum !== undefined ? { exclusiveMinimum: field.exclusiveMinimum } : {}),
    ...(field.maximum !== undefined ? { maximum: field.maximum } : {}),
  };
  return {
    name,
    type: field.type,
    // The standard's own format for times demands a zone and no fraction; ours allows both to differ.
    ...(field.type === 'datetime' ? { format: 'any' } : {}),
    description: field.description,
    ...(field.example === '' ? {} : { example: field.example }),
    ...(Object.keys(constraints).length > 0 ? { constraints } : {}),
  };
}

function foreignKey(name: string, field: Field): Record<string, unknown>[] {
  if (!field.references) return [];
  const target: Table<Fields> = tables[field.references as TableName];
  return [{ fields: [name], reference: { resource: target.name, fields: keyFields(target) } }];
}

/** The descriptor (`datapackage.json`) of a package with these files. */
export function describePackage({ campaign, title, files }: PackageSummary): Record<string, unknown> {
  return {
    profile: 'data-package',
    name: resourceName(campaign),
    title,
    [packageFormatKey]: packageFormat,
    'provinghouse:campaign': campaign,
    resources: describeFiles(files),
  };
}

function describeFiles(files: readonly PackageFile[]): Record<string, unknown>[] {
  const taken = new Set<string>(Object.keys(tables));
  return files.map((file) => {
    const { path, bytes, sha256, mediatype } = file;
    const facts = { path, mediatype, bytes, hash: `sha256:${sha256}` };
    if (!file.table) return { profile: 'data-resource', name: freeName(resourceName(path), taken), ...facts };
    const table = tables[file.table];
    return {
      profile: 'tabular-data-resource',
      name: table.name,
      description: table.about,
      format: 'csv',
      encoding: 'utf-8',
      ...facts,
      schema: tableSchema(table),
    };
  });
}

/** Names in a descriptor: small letters, digits, points, underlines, dashes and slashes. */
function resourceName(text: string): string {
  return text.toLowerCase().replaceAll(/[^a-z0-9._/-]/g, '-');
}

function freeName(name: string, taken: Set<string>): string {
  let free = name;
  for (let n = 2; taken.has(free); n += 1) free = `${name}-${n}`;
  taken.add(free);
  return free;
}

const resource = z.looseObject({
  path: z.union([z.string(), z.tuple([z.string()])], {
    error: 'must be the path of one file in the package',
  }),
  name: z.string({ error: 'must be text' }).optional(),
  hash: z.string({ error: 'must be text such as sha256:...' }).optional(),
  bytes: z.int({ error: 'must be the whole number of bytes' }).optional(),
});

/** What is needed of a descriptor that comes in; whatever else it says is passed over. */
export const descriptorSchema = z.looseObject(
  {
    resources: z
      .array(resource, { error: 'must be the list of the files: [{"path": "campaign.csv"}, ...]' })
      .min(1, { error: 'lists no file' }),
    [packageFormatKey]: z
      .int({ error: 'must be a whole number' })
      .min(1, { error: 'must be 1 or more' })
      .max(packageFormat, {
        error: `is newer than this program reads (${packageFormat}); bring it in with a newer one`,
      })
      .optional(),
  },
  { error: 'must be a JSON object: {"resources": [{"path": "campaign.csv"}, ...]}' },
);

export type Descriptor = z.infer<typeof descriptorSchema>;
