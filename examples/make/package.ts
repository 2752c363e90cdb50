import { createHash } from 'node:crypto';
import { mkdirSync, rmSync, writeFileSync } from 'node:fs';
import { dirname, join } from 'node:path';
import { type CampaignRows, describePackage, type PackageFile, type TableName, tables } from '@provinghouse/contract';

export interface PackageContent {
  readonly rows: CampaignRows;
  /** Recordings by path in the package. */
  readonly traces: ReadonlyMap<string, Buffer>;
}

/** Writes a data package into a folder, replacing what was there: tables, traces, and the descriptor with their hashes. */
export function writePackage(folder: string, { rows, traces }: PackageContent): PackageFile[] {
  rmSync(folder, { recursive: true, force: true });
  const files: PackageFile[] = [];
  const put = (path: string, bytes: Buffer, more: Pick<PackageFile, 'mediatype' | 'table'>): void => {
    writeInto(folder, path, bytes);
    files.push({ path, bytes: bytes.length, sha256: createHash('sha256').update(bytes).digest('hex'), ...more });
  };
  for (const name of Object.keys(tables) as TableName[]) {
    if (rows[name].length > 0) put(`${name}.csv`, tableText(name, rows), { mediatype: 'text/csv', table: name });
  }
  for (const [path, bytes] of [...traces].sort(([a], [b]) => (a < b ? -1 : 1))) {
    put(path, bytes, { mediatype: path.endsWith('.csv') ? 'text/csv' : 'text/plain' });
  }
  const { campaign, title } = rows.campaign[0] ?? { campaign: '', title: '' };
  const descriptor = describePackage({ campaign, title, files });
  writeInto(folder, 'datapackage.json', Buffer.from(`${JSON.stringify(descriptor, null, 2)}\n`));
  return files;
}

function writeInto(folder: string, path: string, bytes: Buffer): void {
  const target = join(folder, path);
  mkdirSync(dirname(target), { recursive: true });
  writeFileSync(target, bytes);
}

/** CSV after RFC 4180, but with LF, as Git keeps it on every system. */
function tableText(name: TableName, rows: CampaignRows): Buffer {
  const columns = Object.keys(tables[name].fields);
  const lines = rows[name].map((row) => {
    const cells: Readonly<Record<string, unknown>> = row;
    return columns.map((column) => cell(cells[column])).join(',');
  });
  return Buffer.from(`${[columns.join(','), ...lines].join('\n')}\n`);
}

function cell(value: unknown): string {
  const text = value === null || value === undefined ? '' : String(value);
  return /[",\r\n]/.test(text) ? `"${text.replaceAll('"', '""')}"` : text;
}
