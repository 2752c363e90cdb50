import {
  type CampaignRows,
  consistencyFaults,
  descriptorName,
  readSheet,
  type Sheet,
  type TableName,
  tables,
} from '@provinghouse/contract';
import type { OwnStandard } from '@provinghouse/core';

import { checkBytes } from './checksum.ts';
import { readCsv } from './csv-text.ts';
import { faultsError, fileFault, type PackageFault } from './fault.ts';
import { type PackageLimits, packageLimits } from './limit.ts';
import { isEvidence, type ListedFile, readListing } from './listing.ts';
import { openPackage } from './open-package.ts';
import { readOwnStandards } from './own-standard.ts';
import { ruleFaults } from './rule-reference.ts';
import { type PackageSource, SourceFault } from './source.ts';
import { traceFaults } from './trace-fault.ts';
import type { WorkEffects } from './work-effects.ts';

/** A package that was read and found without a fault. */
export interface PackageReading {
  /** Code of its campaign. */
  readonly campaign: string;
  readonly rows: CampaignRows;
  /** Every file that is not a table, by its path. */
  readonly files: ReadonlyMap<string, Uint8Array>;
  readonly ownStandards: readonly OwnStandard[];
  /** SHA-256 of every file read, tables included, by path. */
  readonly hashes: ReadonlyMap<string, string>;
  /** What a reader should know although it is no fault. */
  readonly notes: readonly string[];
}

export interface ReadOptions {
  readonly limits?: PackageLimits;
}

/**
 * Reads a data package from a folder or a ZIP and checks all of it.
 * @throws InputError `package/faults` whose `context.faults` lists every fault found ({@link PackageFault});
 * `package/not-found`
 */
export async function readPackage(
  path: string,
  effects: WorkEffects,
  options: ReadOptions = {},
): Promise<PackageReading> {
  let source: PackageSource | null = null;
  const work: Work = emptyWork();
  try {
    source = await openPackage(path, options.limits ?? packageLimits);
    work.faults.push(...source.faults);
    await readFiles(work, source, effects);
    checkContent(work, source);
  } catch (error) {
    if (!(error instanceof SourceFault)) throw error;
    work.faults.push(error.fault);
  } finally {
    source?.close();
  }
  if (work.faults.length > 0) throw faultsError(path, inOrder(work));
  return finish(work);
}

/** What has been read so far. */
interface Work {
  listed: readonly ListedFile[];
  readonly faults: PackageFault[];
  readonly notes: string[];
  readonly sheets: Partial<Record<TableName, Sheet>>;
  readonly tableFiles: Partial<Record<TableName, string>>;
  readonly files: Map<string, Uint8Array>;
  readonly hashes: Map<string, string>;
  standards: readonly OwnStandard[];
}

function emptyWork(): Work {
  return {
    listed: [],
    faults: [],
    notes: [],
    sheets: {},
    tableFiles: {},
    files: new Map(),
    hashes: new Map(),
    standards: [],
  };
}

async function readFiles(work: Work, source: PackageSource, effects: WorkEffects): Promise<void> {
  if (!source.paths.has(descriptorName)) {
    const fault = `is missing; it lists the files: {"resources": [{"path": "campaign.csv"}, ...]}`;
    work.faults.push(fileFault(descriptorName, fault));
    return;
  }
  const listing = readListing(await source.read(descriptorName));
  work.listed = listing.files;
  work.faults.push(...listing.faults);
  if (work.listed.length === 0) return;
  const unlisted = sortUnlisted(work, source.paths);
  const all = [...work.listed, ...unlisted];
  for (const [index, file] of all.entries()) {
    effects.signal?.throwIfAborted();
    effects.progress('reading the package', index, all.length);
    await readFile(work, source, file);
  }
  effects.progress('reading the package', all.length, all.length);
  noteHashes(work, all);
}

/** Evidence that is not listed is taken all the same; an unlisted table is a fault; anything else is passed over aloud. */
function sortUnlisted(work: Work, paths: ReadonlySet<string>): ListedFile[] {
  const known = new Set([
    descriptorName,
    ...work.listed.map(({ path }) => path),
    ...work.faults.map(({ file }) => file),
  ]);
  const evidence: ListedFile[] = [];
  const passed: string[] = [];
  for (const path of [...paths].sort()) {
    if (known.has(path)) continue;
    const stem = path.replace(/\.csv$/i, '');
    if (isEvidence(path)) evidence.push({ path, table: null, hash: null, bytes: null });
    else if (stem !== path && Object.hasOwn(tables, stem))
      work.faults.push(fileFault(path, `is not listed; add {"path": "${path}"} to the resources of ${descriptorName}`));
    else passed.push(path);
  }
  if (passed.length > 0) work.notes.push(`not listed in ${descriptorName}, so not kept: ${passed.join(', ')}`);
  return evidence;
}

async function readFile(work: Work, source: PackageSource, file: ListedFile): Promise<void> {
  const { path, table } = file;
  if (!source.paths.has(path)) {
    // A file that was refused for itself has its fault already.
    if (!source.faults.some((fault) => fault.file === path))
      work.faults.push(
        fileFault(
          path,
          `is listed in ${descriptorName} but is not in the package; put it there or take it off the list`,
        ),
      );
    return;
  }
  const bytes = await source.read(path).catch((error: unknown) => {
    if (!(error instanceof SourceFault) || error.final) throw error;
    work.faults.push(error.fault);
    return null;
  });
  if (!bytes) return;
  const checksum = checkBytes(bytes, file);
  if (checksum.fault) work.faults.push(fileFault(path, checksum.fault));
  work.hashes.set(path, checksum.sha256);
  if (table) readTable(work, { path, table, bytes });
  else work.files.set(path, bytes);
}

interface TableFile {
  readonly path: string;
  readonly table: TableName;
  readonly bytes: Uint8Array;
}

function readTable(work: Work, { path, table, bytes }: TableFile): void {
  work.tableFiles[table] = path;
  const csv = readCsv(bytes);
  if (!csv.ok) {
    work.faults.push({ file: path, row: csv.row, column: null, fault: csv.fault });
    return;
  }
  const sheet = readSheet(tables[table], csv.records);
  work.sheets[table] = sheet;
  work.faults.push(...sheet.faults.map((fault) => ({ file: path, ...fault })));
}

function checkContent(work: Work, source: PackageSource): void {
  if (work.listed.length === 0) return;
  const listed = new Set(work.listed.map(({ table }) => table));
  if (!listed.has('campaign') && !work.faults.some(({ file }) => file === 'campaign.csv'))
    work.faults.push(fileFault('campaign.csv', 'is missing; a package needs it with exactly one row'));
  // A table left out is an empty table; one that was listed but could not be read stays unknown.
  for (const name of Object.keys(tables) as TableName[])
    if (!listed.has(name) && name !== 'campaign') work.sheets[name] ??= { rows: [], faults: [] };
  for (const { table, ...fault } of consistencyFaults({ sheets: work.sheets, files: source.paths }))
    work.faults.push({ file: work.tableFiles[table] ?? `${table}.csv`, ...fault });
  const own = readOwnStandards(work.files);
  work.standards = own.standards;
  work.faults.push(
    ...own.faults,
    ...ruleFaults(work.tableFiles.products ?? 'products.csv', work.sheets.products, own.standards),
    ...traceFaults(work.tableFiles.pulls ?? 'pulls.csv', work.sheets.pulls, work.files),
  );
}

function noteHashes(work: Work, all: readonly ListedFile[]): void {
  const bare = all.filter(({ hash }) => hash === null).map(({ path }) => path);
  if (bare.length === 0) return;
  const which = bare.length === all.length ? 'no file has a' : `${bare.length} of ${all.length} files have no`;
  work.notes.push(`${which} hash in ${descriptorName}: nothing tells whether they were changed on the way`);
}

/** By file as listed, then by row. */
function inOrder({ faults, listed }: Work): PackageFault[] {
  const place = new Map(listed.map(({ path }, index) => [path as string | null, index]));
  const order = (fault: PackageFault) => place.get(fault.file) ?? -1;
  return faults.toSorted((a, b) => order(a) - order(b) || (a.row ?? 0) - (b.row ?? 0));
}

function finish(work: Work): PackageReading {
  const names = Object.keys(tables) as TableName[];
  const entries = names.map((name) => [name, work.sheets[name]?.rows.map(({ cells }) => cells) ?? []]);
  // Every cell was read against its table without a fault.
  const rows = Object.fromEntries(entries) as unknown as CampaignRows;
  const { files, hashes, standards: ownStandards } = work;
  const notes = [...work.notes, ...unnamedTraces(rows, files)];
  return { campaign: rows.campaign[0]?.campaign ?? '', rows, files, ownStandards, hashes, notes };
}

function unnamedTraces(rows: CampaignRows, files: ReadonlyMap<string, unknown>): string[] {
  const named = new Set(rows.pulls.map(({ trace }) => trace));
  const unnamed = [...files.keys()].filter((path) => path.startsWith('traces/') && !named.has(path));
  return unnamed.length > 0 ? [`kept, but no pull names: ${unnamed.join(', ')}`] : [];
}
