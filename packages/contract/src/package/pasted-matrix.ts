import { type GaugingPosition, type GaugingQuantity, quantityNames } from '@provinghouse/core';
import { writeCell } from './field.ts';
import type { PastedColumn, PastedSource, PastedTable } from './pasted.ts';
import { columnNamings, matchHeading, type Naming } from './pasted-heading.ts';
import { decimalSignOf } from './pasted-number.ts';
import { type PastedRecord, readRecords } from './pasted-record.ts';
import type { SheetFault } from './sheet.ts';
import type { Table } from './table.ts';

/** What is read in a column of the matrix. */
interface Place {
  readonly position: GaugingPosition;
  readonly quantity: GaugingQuantity;
}

/** A column of the matrix: a quantity, or one of the columns of the table that hold for the whole row. */
type MatrixColumn =
  | { readonly kind: 'quantity'; readonly place: Place; readonly direction: number; readonly overLinks: string | null }
  | { readonly kind: 'row'; readonly column: string };

const places: readonly { readonly place: Place; readonly names: readonly string[] }[] = [
  { place: { position: 'leg', quantity: 'diameter' }, names: ['bar', 'bar diameter', 'leg', 'd'] },
  { place: { position: 'crown', quantity: 'diameter' }, names: ['crown', 'crown diameter', 'diameter at crown'] },
  { place: { position: 'weld', quantity: 'weldDiameter' }, names: ['weld'] },
  { place: { position: 'link', quantity: 'pitch' }, names: ['p', 'inside length', 'inner length'] },
  { place: { position: 'link', quantity: 'innerWidth' }, names: ['inner width', 'width inside'] },
  { place: { position: 'link', quantity: 'outerWidth' }, names: ['outer width', 'width outside'] },
  { place: { position: 'link', quantity: 'outerLength' }, names: ['outer length', 'outside length', 'length outside'] },
  { place: { position: 'piece', quantity: 'lengthOverLinks' }, names: ['length over links'] },
];

/** Names of quantities as they stand in headings, the first table of {@link places} first. */
const namings: readonly Naming<Place>[] = places.map(({ place, names }) => ({
  meaning: place,
  name: place.position === 'crown' ? 'crown diameter' : place.quantity,
  names:
    place.position === 'crown'
      ? names
      : [...names, place.quantity, quantityNames[place.quantity], quantityNames[place.quantity].replace(/ \(.*/, '')],
  unit: 'mm',
}));

const rowColumns = ['piece', 'link', 'repeat', 'over_links', 'instrument', 'by', 'read_at'];

/** A gauging with a column for each quantity: it names quantities, and has no column of its own for quantity or value. */
export function looksLikeMatrix({ table, headings }: PastedSource): boolean {
  const columns = columnNamings(table);
  const isList = headings.some((heading) => {
    const match = matchHeading(heading, columns);
    return match !== null && 'meaning' in match && (match.meaning === 'quantity' || match.meaning === 'value_mm');
  });
  return !isList && headings.some((heading) => readQuantity(heading) !== null);
}

/** Reads a gauging matrix: each filled cell below a quantity becomes one reading. */
export function readMatrix(source: PastedSource): PastedTable {
  const { table, headings, headerRow, body, options } = source;
  const found = headings.map((heading, index) => ({ heading, ...columnOf(table, heading, index) }));
  const faults = found.flatMap(({ heading, column, fault }, index): SheetFault[] => {
    const name = heading === '' ? null : heading;
    if (column === null) return [{ row: headerRow, column: name, fault: fault ?? unknown(heading) }];
    const first = found.findIndex((other) => sameColumn(other.column, column));
    if (first === index) return [];
    const words = `reads the same as "${found[first]?.heading}"; number the directions, such as diameter 1 and diameter 2`;
    return [{ row: headerRow, column: name, fault: words }];
  });
  const pasted = found.flatMap(({ column }) => (column?.kind === 'row' ? [column.column] : []));
  const defaults = Object.entries({ repeat: 1, ...options.defaults }).filter(([name]) => !pasted.includes(name));
  const given = Object.fromEntries(
    defaults.map(([name, value]) => [name, { cell: writeCell(value), heading: null }] as const),
  );
  const records = body.flatMap(({ row, cells }) => recordsOfRow({ row, cells, found, given }));
  const numbers = body.flatMap(({ cells }) => cells.filter((_, index) => found[index]?.column?.kind === 'quantity'));
  const known = new Set([
    'position',
    'quantity',
    'direction',
    'value_mm',
    'link',
    'over_links',
    ...pasted,
    ...Object.keys(given),
  ]);
  const decimal = options.decimal ?? decimalSignOf(numbers);
  const read = readRecords({ table, records, known, decimal, headerRow });
  const columns = found.map(({ heading, column }): PastedColumn => ({ heading, column: nameOf(column) }));
  const hasLink = pasted.includes('link') || options.defaults?.link !== undefined;
  if (!hasLink) faults.push({ row: headerRow, column: 'link', fault: 'column is missing; each row is one link' });
  const notes = found.flatMap(({ note }) => note ?? []);
  return { layout: 'matrix', columns, rows: read.rows, faults: [...faults, ...read.faults], notes };
}

interface FoundColumn {
  readonly heading: string;
  readonly column: MatrixColumn | null;
  readonly note: string | null;
  readonly fault: string | null;
}

function recordsOfRow(source: {
  readonly row: number;
  readonly cells: readonly string[];
  readonly found: readonly FoundColumn[];
  readonly given: PastedRecord['cells'];
}): PastedRecord[] {
  const { row, cells, found, given } = source;
  const own = Object.fromEntries(
    found.flatMap(({ heading, column }, index) =>
      column?.kind === 'row' ? [[column.column, { cell: cells[index] ?? '', heading }] as const] : [],
    ),
  );
  return found.flatMap(({ heading, column }, index): PastedRecord[] => {
    const cell = cells[index] ?? '';
    if (column?.kind !== 'quantity' || cell === '') return [];
    const { place, direction, overLinks } = column;
    const at = (text: string) => ({ cell: text, heading });
    const isLength = place.quantity === 'lengthOverLinks';
    const length = isLength ? { link: at('') } : { over_links: at('') };
    const over = isLength && overLinks !== null ? { over_links: at(overLinks) } : {};
    const reading = { position: at(place.position), quantity: at(place.quantity), direction: at(`${direction}`) };
    return [{ row, cells: { ...given, ...own, ...length, ...over, ...reading, value_mm: at(cell) } }];
  });
}

function columnOf(table: Table, heading: string, index: number): Omit<FoundColumn, 'heading'> {
  // The corner of a matrix is often left blank: below it stand the links.
  if (heading === '' && index === 0) return { column: { kind: 'row', column: 'link' }, note: null, fault: null };
  const quantity = readQuantity(heading) ?? readQuantity(heading, true);
  if (quantity !== null && 'fault' in quantity) return { column: null, note: null, fault: quantity.fault };
  const row = matchHeading(
    heading,
    columnNamings(table).filter(({ meaning }) => rowColumns.includes(meaning)),
  );
  const isRow = row !== null && 'meaning' in row;
  // A heading that is exactly a column of the table is that column.
  if (isRow && (row.note === null || quantity === null)) {
    return { column: { kind: 'row', column: row.meaning }, note: row.note, fault: null };
  }
  if (quantity === null) return { column: null, note: null, fault: null };
  return { column: quantity.column, note: quantity.note, fault: null };
}

interface ReadQuantity {
  readonly column: MatrixColumn;
  readonly note: string | null;
}

/** `diameter 2 [mm]`, `pitch`, `length over 5 links`; with near misses only where asked. */
function readQuantity(heading: string, isNearEnough = false): ReadQuantity | { readonly fault: string } | null {
  const over = /over\s+(\d+)\s+links?/i.exec(heading)?.[1] ?? null;
  const text = over === null ? heading : heading.replace(/over\s+\d+\s+links?/i, 'over links');
  const numbered = /^(.*?[a-z)\]])[\s_]*([1-9])(?=$|[\s_([,/])(.*)$/i.exec(text);
  const bare = numbered === null ? text : `${numbered[1]}${numbered[3]}`;
  const match = matchHeading(bare, namings);
  if (match === null) return null;
  if ('fault' in match) return match;
  if (match.isNear && !isNearEnough) return null;
  const direction = numbered === null ? 1 : Number(numbered[2]);
  const note = match.note?.replaceAll(`"${bare}"`, `"${heading}"`) ?? null;
  return { column: { kind: 'quantity', place: match.meaning, direction, overLinks: over }, note };
}

function sameColumn(a: MatrixColumn | null, b: MatrixColumn): boolean {
  if (a === null || a.kind !== b.kind) return false;
  if (a.kind === 'row' || b.kind === 'row') return a.kind === 'row' && b.kind === 'row' && a.column === b.column;
  return a.place === b.place && a.direction === b.direction;
}

function nameOf(column: MatrixColumn | null): string | null {
  if (column === null) return null;
  if (column.kind === 'row') return column.column;
  const at = column.place.position === 'crown' ? 'crown ' : '';
  return `${at}${column.place.quantity} ${column.direction}`;
}

function unknown(heading: string): string {
  if (heading === '') return 'a column has no heading; name it or leave it out';
  return `is no quantity of a gauging; they are ${places.map(({ place }) => place.quantity).join(', ')}, crown`;
}
