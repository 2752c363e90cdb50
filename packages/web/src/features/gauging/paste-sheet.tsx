import type { Row, SheetFault } from '@provinghouse/contract';
import { useMemo, useState } from 'react';
import { FormField } from '../../components/form-field.tsx';
import { SheetOver } from '../../components/sheet-over.tsx';
import { text } from '../../lib/text.ts';
import { type DeskState, entryOf } from './desk-state.ts';
import { type PieceAtDesk, toInput } from './gauging-desk.ts';
import { keepReadings } from './gauging-log.ts';
import { type PastedReadings, pastedReadings } from './pasted-readings.ts';
import { placeWords, readingText } from './place-words.ts';
import { SideMark, sideOf } from './side-mark.tsx';

const words = text.gaugingDesk.paste;

interface PasteSheetProps {
  readonly desk: DeskState;
  readonly at: PieceAtDesk;
  readonly start: string;
  readonly onClose: () => void;
}

/** A pasted table, looked at before it is kept: its faults, or its readings with what is asked about them. */
export function PasteSheet({ desk, at, start, onClose }: PasteSheetProps) {
  const [pasted, setPasted] = useState(start);
  const [read_at] = useState(() => new Date().toISOString());
  const { pieces, readings, kit, person, code } = desk;
  const [instrument, by] = [kit.chosen ?? '', person ?? ''];
  const found = useMemo(
    () =>
      pasted.trim() === ''
        ? null
        : pastedReadings(pasted, { pieces, readings, known: kit.known, piece: at.piece, instrument, by, read_at }),
    [pasted, pieces, readings, kit.known, at.piece, instrument, by, read_at],
  );
  const keep = () => {
    if (found === null || found.rows.length === 0) return;
    const said = [...found.questions.values()].flatMap((questions) => questions.map((question) => question.words));
    keepReadings({ book: code, request: entryOf(found.rows, desk), words: said.slice(0, 1) });
    onClose();
  };
  return (
    <SheetOver title={words.title} onClose={onClose}>
      <p>{words.how}</p>
      <p className="soft small">{words.into(at.piece, instrument)}</p>
      {found === null ? (
        <FormField label={words.field}>
          {({ id }) => (
            <textarea id={id} rows={8} value={pasted} onChange={(event) => setPasted(event.currentTarget.value)} />
          )}
        </FormField>
      ) : (
        <Found found={found} pieces={pieces} />
      )}
      <p className="form-keys">
        {found === null || found.rows.length === 0 ? null : (
          <button type="button" className="press press-main" onClick={keep}>
            {words.keep(found.rows.length)}
          </button>
        )}
        {found === null ? null : (
          <button type="button" className="press" onClick={() => setPasted('')}>
            {words.again}
          </button>
        )}
        <button type="button" className="press" onClick={onClose}>
          {text.entry.form.cancel}
        </button>
      </p>
    </SheetOver>
  );
}

function Found({ found, pieces }: { readonly found: PastedReadings; readonly pieces: readonly PieceAtDesk[] }) {
  const { faults, rows, table } = found;
  return (
    <>
      {table.notes.length === 0 ? null : (
        <>
          <h3>{words.notes}</h3>
          <ul className="gauging-questions">
            {table.notes.map((note) => (
              <li key={note}>{note}</li>
            ))}
          </ul>
        </>
      )}
      {faults.length > 0 ? <Faults faults={faults} /> : <FoundRows rows={rows} found={found} pieces={pieces} />}
    </>
  );
}

function Faults({ faults }: { readonly faults: readonly SheetFault[] }) {
  return (
    <div role="alert">
      <h3 className="form-fault">{words.faults(faults.length)}</h3>
      <table className="leaf">
        <thead>
          <tr>
            <th scope="col">{words.row}</th>
            <th scope="col">{words.column}</th>
            <th scope="col">{words.fault}</th>
          </tr>
        </thead>
        <tbody>
          {faults.map(({ row, column, fault }, at) => (
            // biome-ignore lint/suspicious/noArrayIndexKey: the list is read anew as a whole
            <tr key={at}>
              <td>{row ?? words.whole}</td>
              <td>{column ?? text.none}</td>
              <td>{fault}</td>
            </tr>
          ))}
        </tbody>
      </table>
    </div>
  );
}

interface FoundRowsProps {
  readonly rows: readonly Row<'gauging'>[];
  readonly found: PastedReadings;
  readonly pieces: readonly PieceAtDesk[];
}

function FoundRows({ rows, found, pieces }: FoundRowsProps) {
  const { head } = text.gaugingDesk.table;
  return (
    <div className="pad-scroll">
      <table className="leaf">
        <caption>{words.found(rows.length)}</caption>
        <thead>
          <tr>
            <th scope="col">{head.place}</th>
            <th scope="col" className="num">
              {head.value}
            </th>
            <th scope="col">{head.side}</th>
            <th scope="col">{words.question}</th>
          </tr>
        </thead>
        <tbody>
          {rows.map((row) => {
            const piece = pieces.find((one) => one.piece === row.piece);
            const side = piece === undefined ? null : sideOf(row, piece);
            return (
              <tr key={`${row.piece} ${placeWords(toInput(row))}`}>
                <th scope="row">
                  {row.piece}, {placeWords(toInput(row))}
                </th>
                <td className="num">{readingText(row.value_mm)}</td>
                <td>{side === null ? text.none : <SideMark side={side.side} />}</td>
                <td>
                  {(found.questions.get(row) ?? []).map((question) => (
                    <span key={question.code} className="line">
                      {question.words}
                    </span>
                  ))}
                </td>
              </tr>
            );
          })}
        </tbody>
      </table>
    </div>
  );
}
