import {
  type CampaignRows,
  type CellValue,
  describePackage,
  descriptorName,
  type PackageFile,
  type Table,
  type TableName,
  tables,
  writeCell,
} from '@provinghouse/contract';
import { mediaOf, sha256 } from '@provinghouse/store';
import { stringify } from 'csv-stringify/sync';

export interface PackageContent {
  readonly rows: CampaignRows;
  /** Every file that is not a table, by its path. */
  readonly files: ReadonlyMap<string, Uint8Array>;
}

/**
 * All files of the data package that holds these rows and files, by path, sorted: the same content gives the same bytes.
 * Every table is written, an empty one as its header.
 */
export function packageFiles({ rows, files }: PackageContent): Map<string, Uint8Array> {
  const written = new Map<string, Uint8Array>();
  const facts: PackageFile[] = [];
  for (const name of Object.keys(tables) as TableName[]) {
    const path = `${name}.csv`;
    // Every table's rows are cells by name; the union of their types is wider than TypeScript follows.
    const bytes = writeTable(tables[name], rows[name] as unknown as readonly TableRow[]);
    written.set(path, bytes);
    facts.push(factsOf(path, bytes, name));
  }
  for (const [path, bytes] of [...files].sort(byPath)) {
    written.set(path, bytes);
    facts.push(factsOf(path, bytes));
  }
  const [campaign] = rows.campaign;
  const descriptor = describePackage({
    campaign: campaign?.campaign ?? '',
    title: campaign?.title ?? '',
    files: facts,
  });
  written.set(descriptorName, Buffer.from(`${JSON.stringify(descriptor, null, 2)}\n`));
  return new Map([...written].sort(byPath));
}

type TableRow = Readonly<Record<string, CellValue>>;

/** A table as CSV: UTF-8, LF, cells quoted where they must be. */
function writeTable(table: Table, rows: readonly TableRow[]): Uint8Array {
  const names = Object.keys(table.fields);
  const records = rows.map((row) => names.map((name) => writeCell(row[name] ?? null)));
  return Buffer.from(stringify([names, ...records], { record_delimiter: '\n', quoted_match: /[\r\n]/ }));
}

function factsOf(path: string, bytes: Uint8Array, table?: TableName): PackageFile {
  return { path, bytes: bytes.length, sha256: sha256(bytes), mediatype: mediaOf(path), ...(table ? { table } : {}) };
}

function byPath([a]: readonly [string, unknown], [b]: readonly [string, unknown]): number {
  return a < b ? -1 : 1;
}
