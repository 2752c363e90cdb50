import {
  type Descriptor,
  descriptorName,
  descriptorSchema,
  nearest,
  packageFormatKey,
  type TableName,
  tables,
} from '@provinghouse/contract';
import { fileFault, type PackageFault } from './fault.ts';
import { pathFault } from './path.ts';

/** A file the descriptor lists. */
export interface ListedFile {
  readonly path: string;
  /** The table it holds; null for a trace, a photograph, an own specification or any other file. */
  readonly table: TableName | null;
  readonly hash: string | null;
  readonly bytes: number | null;
}

export interface Listing {
  readonly files: readonly ListedFile[];
  readonly faults: readonly PackageFault[];
}

/** Folders whose files belong to the package whether the descriptor lists them or not. */
export const evidenceFolders = ['traces/', 'photographs/', 'specifications/'] as const;

export function isEvidence(path: string): boolean {
  return evidenceFolders.some((folder) => path.startsWith(folder));
}

/** What the bytes of a `datapackage.json` list. */
export function readListing(bytes: Uint8Array): Listing {
  const json = parseJson(bytes);
  if (!json.ok) return { files: [], faults: [fileFault(descriptorName, json.fault)] };
  const checked = descriptorSchema.safeParse(json.value);
  if (!checked.success) {
    const faults = checked.error.issues.map(({ path, message }) => descriptorFault(path, message));
    return { files: [], faults };
  }
  return listFiles(checked.data);
}

function descriptorFault(path: readonly PropertyKey[], message: string): PackageFault {
  const [first] = path;
  const place = path.map((step) => (typeof step === 'number' ? step + 1 : String(step))).join(' ');
  const column = first === undefined ? null : first === packageFormatKey ? packageFormatKey : place;
  return { file: descriptorName, row: null, column, fault: message };
}

export type JsonReading =
  | { readonly ok: true; readonly value: unknown }
  | { readonly ok: false; readonly fault: string };

/** JSON in UTF-8; a fault says where it stops being JSON, as the parser tells it. */
export function parseJson(bytes: Uint8Array): JsonReading {
  try {
    return { ok: true, value: JSON.parse(new TextDecoder('utf-8', { fatal: true }).decode(bytes)) };
  } catch (error) {
    const words = error instanceof SyntaxError ? error.message : 'not UTF-8';
    return { ok: false, fault: `is not JSON (${words})` };
  }
}

function listFiles({ resources }: Descriptor): Listing {
  const files: ListedFile[] = [];
  const faults: PackageFault[] = [];
  for (const { path: given, name, hash, bytes } of resources) {
    const path = (typeof given === 'string' ? given : given[0]).normalize('NFC');
    const table = tableOf(path, name);
    const fault = pathFault(path) ?? repeatFault(files, path, table) ?? strangeTable(path, table);
    if (fault) faults.push(fileFault(path, fault));
    else files.push({ path, table, hash: hash ?? null, bytes: bytes ?? null });
  }
  return { files, faults };
}

/** A resource holds the table it is named after, else the table its file is named after. */
function tableOf(path: string, name: string | undefined): TableName | null {
  if (isEvidence(path)) return null;
  const stem = /([^/]+)\.csv$/i.exec(path)?.[1];
  const found = [name, stem].find((candidate) => candidate !== undefined && Object.hasOwn(tables, candidate));
  return (found as TableName | undefined) ?? null;
}

function repeatFault(files: readonly ListedFile[], path: string, table: TableName | null): string | null {
  if (files.some((file) => file.path === path)) return `is listed twice in ${descriptorName}`;
  const other = table && files.find((file) => file.table === table);
  return other ? `is listed as table ${table}, but so is ${other.path}; put the rows into one file` : null;
}

/** A CSV beside the tables that is none of them is most likely a table with its name misspelt. */
function strangeTable(path: string, table: TableName | null): string | null {
  if (table || path.includes('/') || !path.toLowerCase().endsWith('.csv')) return null;
  const near = nearest(path.slice(0, -4), Object.keys(tables));
  const cure = near ? `the nearest is ${near}.csv` : `the tables are ${Object.keys(tables).join(', ')}`;
  return `is no table of a package; ${cure}; a file that is no table belongs into a folder`;
}
