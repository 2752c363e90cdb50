import type { TraceReading } from '@provinghouse/core';
import { Figure, Spread } from '../../components/figure.tsx';
import { Opens } from '../../components/opens.tsx';
import { text } from '../../lib/text.ts';
import { type ReadingRow, readingRows } from './reading-rows.ts';

/** What the trace says, number by number: the figure in words. Each opens to its method. */
export function ReadingTable({ reading }: { readonly reading: TraceReading }) {
  return (
    <div>
      <table className="leaf reading">
        <caption>{text.piece.reading}</caption>
        <tbody>
          {readingRows(reading).map((row) => (
            <Row key={row.name} row={row} reading={reading} />
          ))}
        </tbody>
      </table>
      <Notes reading={reading} />
    </div>
  );
}

function Row({ row, reading }: { readonly row: ReadingRow; readonly reading: TraceReading }) {
  return (
    <tr>
      <th scope="row">{row.name}</th>
      <td>
        {row.value === null ? (
          <Figure value={null} unit={row.unit} />
        ) : (
          <Opens title={row.name} content={<Method row={row} reading={reading} />}>
            {row.isSpread ? <Spread value={row.value} unit={row.unit} /> : <Figure {...row} withSpread={false} />}
          </Opens>
        )}
      </td>
    </tr>
  );
}

function Method({ row, reading }: { readonly row: ReadingRow; readonly reading: TraceReading }) {
  const columns = row.from.map((signal) => ({ signal, column: reading.columns[signal] }));
  return (
    <>
      <p>{row.method}</p>
      {columns.map(({ signal, column }) =>
        column === null ? null : (
          <p key={signal} className="soft">
            {text.readingFrom(text.signal[signal], column.name, column.unit)} {column.because}
          </p>
        ),
      )}
    </>
  );
}

function Notes({ reading }: { readonly reading: TraceReading }) {
  if (reading.notes.length === 0) return null;
  return (
    <ul className="reading-notes sentences soft">
      {reading.notes.map((note) => (
        <li key={note}>{note}</li>
      ))}
    </ul>
  );
}
