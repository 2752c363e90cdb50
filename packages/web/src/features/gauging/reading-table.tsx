import type { RowHeld } from '@provinghouse/contract';
import { memo, useState } from 'react';
import { Correction, Withdrawal } from '../../components/correction.tsx';
import { limitText } from '../../lib/limit-text.ts';
import { text } from '../../lib/text.ts';
import type { DeskState } from './desk-state.ts';
import { type PieceAtDesk, toInput } from './gauging-desk.ts';
import { StateWord } from './last-read.tsx';
import type { ReadingSeen } from './merged-readings.ts';
import { placeWords, readingText } from './place-words.ts';
import { SideMark, sideOf } from './side-mark.tsx';

const words = text.gaugingDesk.table;

interface Open {
  readonly what: 'correct' | 'take out';
  readonly held: RowHeld<'gauging'>;
}

interface ReadingTableProps {
  readonly desk: Pick<DeskState, 'code' | 'kit'>;
  readonly at: PieceAtDesk;
}

/** All readings of a piece with their limits; each can be corrected or taken out, with a reason. */
export function ReadingTable({ desk, at }: ReadingTableProps) {
  const [open, setOpen] = useState<Open | null>(null);
  const { code, kit } = desk;
  const what = open === null ? '' : `${at.piece}, ${placeWords(toInput(open.held.body))}`;
  if (at.readings.length === 0) return <p className="soft">{words.none}</p>;
  return (
    <>
      <ReadingRows at={at} onOpen={setOpen} />
      {open?.what === 'correct' ? (
        <Correction
          book={code}
          kind="gauging"
          held={open.held}
          what={what}
          asked={[
            { column: 'value_mm', label: words.value, unit: 'mm' },
            {
              column: 'instrument',
              label: words.head.instrument,
              choices: [...kit.known].map((value) => ({ value, label: value })),
            },
          ]}
          onDone={() => setOpen(null)}
        />
      ) : null}
      {open?.what === 'take out' ? (
        <Withdrawal book={code} kind="gauging" held={open.held} what={what} onDone={() => setOpen(null)} />
      ) : null}
    </>
  );
}

interface RowsProps {
  readonly at: PieceAtDesk;
  readonly onOpen: (open: Open) => void;
}

const ReadingRows = memo(function ReadingRows({ at, onOpen }: RowsProps) {
  const { head } = words;
  return (
    <div className="pad-scroll">
      <table className="leaf gauging-table">
        <caption className="for-ears">{words.caption}</caption>
        <thead>
          <tr>
            <th scope="col">{head.place}</th>
            <th scope="col" className="num">
              {head.value}
            </th>
            <th scope="col">{head.side}</th>
            <th scope="col">{head.limit}</th>
            <th scope="col">{head.instrument}</th>
            <th scope="col">{head.by}</th>
            <th scope="col">{head.state}</th>
            <th scope="col">{head.change}</th>
          </tr>
        </thead>
        <tbody>
          {at.readings.map((seen) => (
            <ReadingRow key={seen.id} seen={seen} at={at} onOpen={onOpen} />
          ))}
        </tbody>
      </table>
    </div>
  );
});

function ReadingRow({ seen, at, onOpen }: RowsProps & { readonly seen: ReadingSeen }) {
  const { row, state, held } = seen;
  const side = sideOf(row, at);
  const place = placeWords(toInput(row));
  return (
    <tr>
      <th scope="row">{place}</th>
      <td className="num">
        {readingText(row.value_mm)}
        <span className="unit">mm</span>
      </td>
      <td>{side === null ? <span className="soft">{words.noLimit}</span> : <SideMark side={side.side} />}</td>
      <td>{side === null ? text.none : limitText(side.limit)}</td>
      <td>{row.instrument}</td>
      <td>{row.by}</td>
      <td>
        <StateWord state={state} />
      </td>
      <td className="gauging-change">
        {held === null ? null : (
          <>
            <button
              type="button"
              className="press press-small"
              aria-label={words.correctNamed(place)}
              onClick={() => onOpen({ what: 'correct', held })}
            >
              {words.correct}
            </button>
            <button
              type="button"
              className="press press-small"
              aria-label={words.takeOutNamed(place)}
              onClick={() => onOpen({ what: 'take out', held })}
            >
              {words.takeOut}
            </button>
          </>
        )}
      </td>
    </tr>
  );
}
