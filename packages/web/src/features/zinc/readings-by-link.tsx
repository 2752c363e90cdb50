import type { Row, RowHeld } from '@provinghouse/contract';
import { useState } from 'react';
import { Correction, Withdrawal } from '../../components/correction.tsx';
import { Figure } from '../../components/figure.tsx';
import type { AskedColumn } from '../../components/row-form.tsx';
import { text } from '../../lib/text.ts';
import { surveyOf, type ZincRows } from './zinc-rows.ts';

interface ReadingsByLinkProps {
  readonly code: string;
  readonly piece: Row<'pieces'>;
  readonly rows: ZincRows;
  /** All readings of the piece, those on their way among them. */
  readonly readings: readonly Row<'zinc'>[];
}

const words = text.zinc.thickness;

const asked: readonly AskedColumn[] = [
  { column: 'thickness_um', label: words.value, unit: words.unit },
  { column: 'note', label: words.note },
];

/** The thicknesses of each link and their mean; each opens to be corrected. */
export function ReadingsByLink({ code, piece, rows, readings }: ReadingsByLinkProps) {
  const [sheet, setSheet] = useState<{ readonly held: RowHeld<'zinc'>; readonly isOut: boolean } | null>(null);
  const thick = readings.filter(({ thickness_um }) => thickness_um !== null);
  const links = [...Map.groupBy(thick, ({ link }) => link)].sort(([a], [b]) => a - b);
  if (links.length === 0) return <p className="soft">{words.none}</p>;
  const what = sheet === null ? '' : words.what(piece.piece, sheet.held.body.link, sheet.held.body.reading);
  return (
    <div>
      <table className="leaf survey-table">
        <thead>
          <tr>
            <th scope="col">{words.column.link}</th>
            <th scope="col">{words.column.readings}</th>
            <th scope="col" className="num">
              {words.column.mean}
            </th>
          </tr>
        </thead>
        <tbody>
          {links.map(([link, group]) => (
            <tr key={link}>
              <th scope="row">{link}</th>
              <td>
                <span className="survey-values">
                  {group
                    .toSorted((a, b) => a.reading - b.reading)
                    .map((reading) => (
                      <Value
                        key={reading.reading}
                        reading={reading}
                        held={heldOf(reading, rows)}
                        onOpen={(held) => setSheet({ held, isOut: false })}
                      />
                    ))}
                </span>
              </td>
              <td className="num">
                <Figure value={Math.round((surveyOf(group)?.mean_um ?? 0) * 10) / 10} unit="um" />
              </td>
            </tr>
          ))}
        </tbody>
      </table>
      {sheet?.isOut === false ? (
        <Correction
          book={code}
          kind="zinc"
          held={sheet.held}
          asked={asked}
          what={what}
          onDone={() => setSheet(null)}
          note={
            <button type="button" className="press" onClick={() => setSheet({ ...sheet, isOut: true })}>
              {words.takeOut}
            </button>
          }
        />
      ) : null}
      {sheet?.isOut === true ? (
        <Withdrawal book={code} kind="zinc" held={sheet.held} what={what} onDone={() => setSheet(null)} />
      ) : null}
    </div>
  );
}

interface ValueProps {
  readonly reading: Row<'zinc'>;
  /** As the record has it; null while it is on its way. */
  readonly held: RowHeld<'zinc'> | null;
  readonly onOpen: (held: RowHeld<'zinc'>) => void;
}

function Value({ reading, held, onOpen }: ValueProps) {
  const value = `${reading.thickness_um}`;
  if (held === null)
    return (
      <span className="survey-waiting">
        {value} <span className="for-ears">{words.waiting}</span>
      </span>
    );
  return (
    <button
      type="button"
      className="survey-value"
      aria-label={words.correctNamed(reading.link, reading.reading, value)}
      onClick={() => onOpen(held)}
    >
      {value}
    </button>
  );
}

function heldOf(reading: Row<'zinc'>, { zinc }: ZincRows): RowHeld<'zinc'> | null {
  return (
    zinc.find(
      ({ body }) => body.piece === reading.piece && body.link === reading.link && body.reading === reading.reading,
    ) ?? null
  );
}
