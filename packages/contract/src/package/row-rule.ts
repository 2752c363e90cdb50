import type { CellValue } from './field.ts';
import type { TableName } from './tables.ts';

type Cells = Readonly<Record<string, CellValue | undefined>>;

export interface RowFault {
  readonly column: string;
  readonly fault: string;
}

type Rule = (cells: Cells) => RowFault[];

/**
 * Faults between the cells of one row. A cell that could not be read (undefined) has its own fault already and breaks
 * no rule here.
 */
export function rowFaults(table: TableName, cells: Cells): RowFault[] {
  return rules[table]?.(cells) ?? [];
}

const rules: Partial<Record<TableName, Rule>> = {
  campaign: (cells) =>
    ordered(cells, 'table_speed_min_mm_per_min', 'table_speed_max_mm_per_min', 'must not be less than'),
  instruments: (cells) => [
    ...ordered(cells, 'range_minimum', 'range_maximum', 'must not be less than'),
    ...oneOf(cells, 'class', [0.5, 1, 2, 3], 'ISO 7500-1'),
    ...oneOf(cells, 'extension_class', [0.2, 0.5, 1, 2], 'ISO 9513'),
  ],
  calibrations: (cells) => [
    ...ordered(cells, 'calibrated_on', 'due_on', 'must not be before'),
    ...needs(
      cells,
      'expanded_uncertainty',
      'coverage_factor',
      'an expanded uncertainty says nothing without its factor',
    ),
  ],
  products: (cells) => needs(cells, 'price_per_metre', 'currency', 'a price needs its currency'),
  gauging: (cells) =>
    cells.quantity === 'lengthOverLinks' && cells.over_links === null
      ? [{ column: 'over_links', fault: 'is empty, but a lengthOverLinks needs the number of links' }]
      : [],
  pulls: (cells) => [...validPull(cells), ...readPull(cells)],
  zinc: (cells) =>
    cells.thickness_um === null && cells.adherence === null && cells.flaked_share_pct === null
      ? [{ column: 'thickness_um', fault: 'the row reads nothing; fill thickness_um, adherence or flaked_share_pct' }]
      : [],
};

function oneOf(cells: Cells, column: string, classes: readonly number[], standard: string): RowFault[] {
  const value = cells[column];
  return typeof value !== 'number' || classes.includes(value)
    ? []
    : [{ column, fault: `holds ${value}, which is no class of ${standard}; it must be one of: ${classes.join(', ')}` }];
}

function validPull(cells: Cells): RowFault[] {
  return cells.valid === false && cells.invalid_reason === null
    ? [{ column: 'invalid_reason', fault: 'is empty, but valid is false; say why the pull must not be used' }]
    : [];
}

function readPull(cells: Cells): RowFault[] {
  return cells.trace === null && cells.panel_maximum_kN === null
    ? [
        {
          column: 'trace',
          fault: 'is empty and so is panel_maximum_kN; give the recording or the maximum off the panel',
        },
      ]
    : [];
}

/** Numbers by size; dates as text, which sorts as time does. */
function ordered(cells: Cells, first: string, second: string, words: string): RowFault[] {
  const [a, b] = [cells[first], cells[second]];
  if (a === undefined || b === undefined || a === null || b === null || a <= b) return [];
  return [{ column: second, fault: `holds ${b}; it ${words} ${first}, which is ${a}` }];
}

function needs(cells: Cells, given: string, needed: string, words: string): RowFault[] {
  return cells[given] != null && cells[needed] === null
    ? [{ column: needed, fault: `is empty, but ${given} is filled: ${words}` }]
    : [];
}
