import { joined, literal, type Typst } from './escape.ts';

export interface Column {
  readonly heading: string;
  readonly unit?: string;
  /** A Typst track size; left out it is as wide as its content. */
  readonly width?: string;
  readonly align?: 'left' | 'right' | 'center';
}

/** A row of cells, or a line of text across all columns that heads the rows below it. */
export type TableRow = readonly Typst[] | { readonly across: Typst };

/** A table whose header is repeated on each page it runs over. Cells are Typst expressions. */
export function table(columns: readonly Column[], rows: readonly TableRow[]): Typst {
  const widths = columns.map((column) => column.width ?? 'auto');
  const aligns = columns.map((column) => column.align ?? 'left');
  const heads = columns.map((column) =>
    column.unit === undefined
      ? `head(${literal(column.heading)})`
      : `head(${literal(column.heading)}, per: ${literal(column.unit)})`,
  );
  return [
    '#ledger(',
    `  columns: ${tuple(widths)},`,
    `  align: ${tuple(aligns)},`,
    `  heads: ${tuple(heads)},`,
    ...rows.map((row) => ('across' in row ? `  across(${columns.length}, ${row.across}),` : `  ${row.join(', ')},`)),
    ')',
  ].join('\n');
}

/** A Typst array, of one element too. */
export function tuple(items: readonly Typst[]): Typst {
  return items.length === 1 ? `(${items[0]},)` : `(${items.join(', ')})`;
}

/** Name and content, one pair a line. */
export function facts(pairs: readonly { readonly name: string; readonly content: Typst }[]): Typst {
  return ['#facts(', ...pairs.map((pair) => `  ${literal(pair.name)}, ${pair.content},`), ')'].join('\n');
}

export function section(title: string): Typst {
  return `#section(${literal(title)})`;
}

export function subsection(title: string): Typst {
  return `#subsection(${literal(title)})`;
}

export function paragraph(...parts: readonly Typst[]): Typst {
  return `#para(${joined(parts)})`;
}

/** Small print below a table or figure. */
export function note(...parts: readonly Typst[]): Typst {
  return `#note(${joined(parts)})`;
}

export function bullets(items: readonly Typst[]): Typst {
  return ['#bullets(', ...items.map((item) => `  ${item},`), ')'].join('\n');
}

/** A line above a table or figure that says what it shows and stays with it. */
export function caption(...parts: readonly Typst[]): Typst {
  return `#caption(${joined(parts)})`;
}

/** Lines that stay on one page together: for what is surely shorter than a page. */
export function whole(lines: readonly Typst[]): Typst[] {
  return ['#whole[', ...lines, ']'];
}
