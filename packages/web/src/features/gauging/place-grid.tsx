import type { Row } from '@provinghouse/contract';
import { placeKey } from '@provinghouse/core';
import { memo } from 'react';
import { text } from '../../lib/text.ts';
import { type PieceAtDesk, toInput } from './gauging-desk.ts';
import { isSamePlace, type PlaceGrid } from './gauging-progress.ts';
import { placeWords, quantityWords, readingText } from './place-words.ts';
import { SideShape, sideOf } from './side-mark.tsx';

const words = text.gaugingDesk.grid;

interface PlaceGridTableProps {
  readonly at: PieceAtDesk;
  readonly grid: PlaceGrid;
  /** The place at hand; null where all are read. */
  readonly index: number | null;
  readonly onChoose: (index: number) => void;
}

/** All places of the piece: links down, what is read on each across. A press on one asks for it. */
export const PlaceGridTable = memo(function PlaceGridTable({ at, grid, index, onChoose }: PlaceGridTableProps) {
  const cell = (place: number | null) =>
    place === null ? null : <PlaceCell at={at} place={place} isHere={place === index} onChoose={onChoose} />;
  return (
    <div className="pad-scroll">
      {grid.rows.length === 0 ? null : (
        <table className="gauging-grid">
          <caption className="for-ears">{words.caption}</caption>
          <thead>
            <tr>
              <th scope="col">{words.link}</th>
              {grid.columns.map((column) => (
                <th key={`${column.position} ${column.quantity} ${column.direction}`} scope="col">
                  {quantityWords({ ...column, overLinks: null })}
                </th>
              ))}
            </tr>
          </thead>
          <tbody>
            {grid.rows.map((row) => (
              <tr key={`${row.link} ${row.repeat}`}>
                <th scope="row">{row.repeat > 1 ? words.again(row.link) : row.link}</th>
                {row.at.map((place, column) => (
                  // biome-ignore lint/suspicious/noArrayIndexKey: columns keep their place
                  <td key={column}>{cell(place)}</td>
                ))}
              </tr>
            ))}
          </tbody>
        </table>
      )}
      {grid.lengths.length === 0 ? null : (
        <p className="gauging-lengths">
          {grid.lengths.map((place) => {
            const found = at.progress.places[place];
            return (
              <span key={place}>
                <span className="soft small">{found === undefined ? '' : quantityWords(found)}</span> {cell(place)}
              </span>
            );
          })}
        </p>
      )}
    </div>
  );
});

interface PlaceCellProps {
  readonly at: PieceAtDesk;
  readonly place: number;
  readonly isHere: boolean;
  readonly onChoose: (index: number) => void;
}

function PlaceCell({ at, place, isHere, onChoose }: PlaceCellProps) {
  const of = at.progress.places[place];
  if (of === undefined) return null;
  const found = at.readings.filter(({ row }) => isSamePlace(toInput(row), of));
  // A row read again stands in a row of its own; further readings stand with the first.
  const own = found.filter(({ row }) => row.repeat === of.repeat);
  const shown: Row<'gauging'> | null = own.at(-1)?.row ?? null;
  const side = shown === null ? null : (sideOf(shown, at)?.side ?? 'inside');
  const isSkipped = shown === null && at.progress.skipped.has(placeKey(of));
  const state = shown !== null ? `${readingText(shown.value_mm)} mm` : isSkipped ? words.skipped : words.empty;
  const outside = side === null || side === 'inside' ? '' : `, ${text.gaugingDesk.table.side[side]}`;
  return (
    <button
      type="button"
      className={isHere ? 'gauging-cell gauging-here' : 'gauging-cell'}
      aria-label={`${placeWords(of)}: ${state}${outside}`}
      aria-current={isHere ? 'step' : undefined}
      tabIndex={isHere ? 0 : -1}
      onClick={() => onChoose(place)}
    >
      {shown === null ? (isSkipped ? '·' : '') : readingText(shown.value_mm)}
      {side === null ? null : <SideShape side={side} />}
      {of.repeat === 1 && found.length > 1 ? <sup>{found.length}</sup> : null}
    </button>
  );
}
