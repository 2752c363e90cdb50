import { nearest } from './nearest.ts';
import { rowFaults } from './row-rule.ts';
import type { Sheet, SheetFault } from './sheet.ts';
import { type Table, type TableName, tables } from './tables.ts';

export interface TableFault extends SheetFault {
  readonly table: TableName;
}

export interface PackageSheets {
  /** The tables that could be read; a table that was left out has a sheet without rows, an unreadable one none. */
  readonly sheets: Readonly<Partial<Record<TableName, Sheet>>>;
  /** Paths of all files in the package. */
  readonly files: ReadonlySet<string>;
}

/** Every fault between cells of one row, between tables, and between tables and files. */
export function consistencyFaults({ sheets, files }: PackageSheets): TableFault[] {
  const faults: TableFault[] = [];
  for (const name of Object.keys(tables) as TableName[]) {
    const sheet = sheets[name];
    if (!sheet) continue;
    const found = [
      ...referenceFaults(tables[name], sheet, sheets),
      ...sheet.rows.flatMap(({ row, cells }) => rowFaults(name, cells).map((fault) => ({ row, ...fault }))),
    ];
    faults.push(...found.map((fault) => ({ table: name, ...fault })));
  }
  return [
    ...faults,
    ...campaignFaults(sheets),
    ...breakFaults(sheets),
    ...instrumentFaults(sheets),
    ...fileFaults({ sheets, files }),
  ];
}

function campaignFaults({ campaign }: PackageSheets['sheets']): TableFault[] {
  if (!campaign || campaign.rows.length === 1 || campaign.faults.some(({ row }) => row === 1)) return [];
  const fault = `holds ${campaign.rows.length} rows; a package is one campaign, so it must hold exactly one`;
  return [{ table: 'campaign', row: campaign.rows[1]?.row ?? null, column: null, fault }];
}

function referenceFaults(table: Table, sheet: Sheet, sheets: PackageSheets['sheets']): SheetFault[] {
  const faults: SheetFault[] = [];
  for (const [column, field] of Object.entries(table.fields)) {
    if (!field.references) continue;
    const known = knownCodes(field.references as TableName, sheets);
    // Where the other table could not be read, its absence is the fault; each row that needs it is not another.
    if (!known) continue;
    for (const { row, cells } of sheet.rows) {
      const code = cells[column];
      if (typeof code !== 'string' || known.has(code)) continue;
      faults.push({ row, column, fault: unknownCode(code, field.references, known) });
    }
  }
  return faults;
}

function unknownCode(code: string, table: string, known: ReadonlySet<string>): string {
  const near = nearest(code, known);
  const cure = near ? `the nearest there is "${near}"` : `add it to ${table} or write one that is there`;
  return `names "${code}", which is not in ${table}; ${cure}`;
}

function knownCodes(name: TableName, sheets: PackageSheets['sheets']): Set<string> | null {
  const sheet = sheets[name];
  if (!sheet) return null;
  const key = Object.entries(tables[name].fields as Table['fields']).find(([, field]) => field.key)?.[0] ?? '';
  return new Set(sheet.rows.map(({ cells }) => cells[key]).filter((code) => typeof code === 'string'));
}

function lookup(sheet: Sheet | undefined, key: string): Map<unknown, Sheet['rows'][number]['cells']> {
  return new Map(sheet?.rows.map(({ cells }) => [cells[key], cells]) ?? []);
}

/** A link that the piece does not have cannot have parted. */
function breakFaults({ breaks, pulls, pieces }: PackageSheets['sheets']): TableFault[] {
  const pullOf = lookup(pulls, 'pull');
  const pieceOf = lookup(pieces, 'piece');
  return (breaks?.rows ?? []).flatMap(({ row, cells }) => {
    const links = pieceOf.get(pullOf.get(cells.pull)?.piece)?.links;
    if (typeof links !== 'number' || typeof cells.link !== 'number' || cells.link <= links) return [];
    const fault = `names link ${cells.link}, but the piece has ${links} free links; write 1 to ${links}, or 0 for a gripped link`;
    return [{ table: 'breaks' as const, row, column: 'link', fault }];
  });
}

const reading = [
  { table: 'pulls', column: 'rig', kinds: ['rig'], units: ['kN'] },
  { table: 'gauging', column: 'instrument', kinds: null, units: ['mm', 'um'] },
  { table: 'zinc', column: 'instrument', kinds: null, units: ['mm', 'um'] },
] as const;

/** A force is read on a rig in kN, a length with something that shows a length. */
function instrumentFaults(sheets: PackageSheets['sheets']): TableFault[] {
  const instrumentOf = lookup(sheets.instruments, 'instrument');
  return reading.flatMap(({ table, column, kinds, units }) =>
    (sheets[table]?.rows ?? []).flatMap(({ row, cells }) => {
      const instrument = instrumentOf.get(cells[column]);
      if (!instrument) return [];
      const { kind, unit } = instrument;
      const wrongKind = kinds && kind !== undefined && !(kinds as readonly unknown[]).includes(kind);
      const wrongUnit = unit !== undefined && !(units as readonly unknown[]).includes(unit);
      if (!wrongKind && !wrongUnit) return [];
      const fault = `names "${cells[column]}", which is a ${kind} in ${unit}; write ${kinds ? `a ${kinds.join(' or ')}` : 'an instrument'} in ${units.join(' or ')}`;
      return [{ table, row, column, fault }];
    }),
  );
}

const pathColumns = [
  { table: 'pulls', column: 'trace', folder: 'traces/' },
  { table: 'photographs', column: 'file', folder: 'photographs/' },
] as const;

function fileFaults({ sheets, files }: PackageSheets): TableFault[] {
  return pathColumns.flatMap(({ table, column, folder }) =>
    (sheets[table]?.rows ?? []).flatMap(({ row, cells }) => {
      const path = cells[column];
      if (typeof path !== 'string') return [];
      const fault = pathFault(path, folder, files);
      return fault ? [{ table, row, column, fault }] : [];
    }),
  );
}

function pathFault(path: string, folder: string, files: ReadonlySet<string>): string | null {
  if (!path.startsWith(folder) || path.split('/').includes('..'))
    return `holds "${path}"; it must be a path in this package that begins with ${folder}`;
  if (files.has(path)) return null;
  const near = nearest(
    path,
    [...files].filter((file) => file.startsWith(folder)),
  );
  return `names "${path}", which is not in the package; ${near ? `the nearest there is "${near}"` : 'put the file there or empty the cell'}`;
}
