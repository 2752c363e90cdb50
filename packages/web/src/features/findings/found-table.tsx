import { csvOf, type FigureCell, type FigureColumn } from '@provinghouse/figure';
import { type ReactNode, useId } from 'react';
import { save } from '../../lib/save-figure.ts';
import { text } from '../../lib/text.ts';

export interface FoundColumn {
  readonly heading: ReactNode;
  /** Names of its columns in the file, with their units: a value with its uncertainty has two. */
  readonly keys: readonly string[];
  readonly isNumber?: boolean;
  /** Only in the file: on the page a heading says it. */
  readonly isFileOnly?: boolean;
}

/** What a cell shows, and the same for the file. */
export interface FoundCell {
  readonly shown: ReactNode;
  readonly values: readonly FigureCell[];
}

export interface FoundRow {
  readonly key: string;
  /** The first that is shown names the row. */
  readonly cells: readonly FoundCell[];
}

export interface FoundGroup {
  readonly key: string;
  /** Over the rows, through the whole width. */
  readonly head?: ReactNode;
  readonly rows: readonly FoundRow[];
}

interface FoundTableProps {
  readonly title: string;
  readonly note?: ReactNode;
  /** What the file is called, without its ending. */
  readonly file: string;
  readonly columns: readonly FoundColumn[];
  readonly groups: readonly FoundGroup[];
  readonly className?: string;
  /** Below the rows, not in the file. */
  readonly foot?: ReactNode;
}

/** A table of findings with its title, and a way to take its numbers along. */
export function FoundTable({ title, note, file, columns, groups, className = '', foot }: FoundTableProps) {
  const id = useId();
  const shown = columns.flatMap((column, at) => (column.isFileOnly === true ? [] : [at]));
  return (
    <div className="found">
      <div className="found-head">
        <h3 id={id}>{title}</h3>
        <button type="button" className="press press-small" onClick={() => saveTable(file, columns, groups)}>
          {text.findings.table.save}
          <span className="for-ears">{text.findings.table.saveNamed(title)}</span>
        </button>
      </div>
      {note === undefined ? null : <div className="soft small found-note">{note}</div>}
      <div className="pad-scroll">
        <table className={`leaf ${className}`} aria-labelledby={id}>
          <thead>
            <tr>
              {shown.map((at) => (
                <th key={columns[at]?.keys[0] ?? at} scope="col" className={classOf(columns[at])}>
                  {columns[at]?.heading}
                </th>
              ))}
            </tr>
          </thead>
          {groups.map((group) => (
            <tbody key={group.key}>
              {group.head === undefined ? null : (
                <tr className="found-group">
                  <th scope="rowgroup" colSpan={shown.length}>
                    {group.head}
                  </th>
                </tr>
              )}
              {group.rows.map((row) => (
                <tr key={row.key}>
                  {shown.map((at, place) =>
                    place === 0 ? (
                      <th key={columns[at]?.keys[0] ?? at} scope="row" className={classOf(columns[at])}>
                        {row.cells[at]?.shown}
                      </th>
                    ) : (
                      <td key={columns[at]?.keys[0] ?? at} className={classOf(columns[at])}>
                        {row.cells[at]?.shown}
                      </td>
                    ),
                  )}
                </tr>
              ))}
            </tbody>
          ))}
          {foot}
        </table>
      </div>
    </div>
  );
}

function classOf(column: FoundColumn | undefined): string | undefined {
  return column?.isNumber === true ? 'num' : undefined;
}

function saveTable(file: string, columns: readonly FoundColumn[], groups: readonly FoundGroup[]): void {
  const table = {
    columns: columns.flatMap((column) => column.keys.map(columnOf)),
    rows: groups.flatMap((group) => group.rows.map((row) => row.cells.flatMap((cell) => cell.values))),
  };
  save(new Blob([csvOf(table)], { type: 'text/csv;charset=utf-8' }), `${file}.csv`);
}

/** The file names its columns and writes numbers to twelve digits: of how they are shown it needs nothing. */
function columnOf(key: string): FigureColumn {
  return { key, heading: key, unit: null, isNumber: false, shown: { digits: 4, of: 'largest' } };
}
