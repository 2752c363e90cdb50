import type { PieceFinding } from '@provinghouse/contract';
import { Figure } from '../../components/figure.tsx';
import { text } from '../../lib/text.ts';

type Reading = PieceFinding['gaugingReadings'][number];

/** Every reading of every instrument, folded away until somebody asks. */
export function GaugingReadings({ readings }: { readonly readings: readonly Reading[] }) {
  const { readingsHead: head } = text.piece;
  return (
    <details className="fold">
      <summary>{text.piece.allReadings(readings.length)}</summary>
      <table className="leaf">
        <thead>
          <tr>
            <th scope="col">{head.link}</th>
            <th scope="col">{head.position}</th>
            <th scope="col">{head.quantity}</th>
            <th scope="col">{head.direction}</th>
            <th scope="col" className="num">
              {head.value}
            </th>
            <th scope="col">{head.instrument}</th>
            <th scope="col">{head.by}</th>
          </tr>
        </thead>
        <tbody>
          {readings.map((reading) => (
            <ReadingRow
              key={`${reading.link} ${reading.position} ${reading.quantity} ${reading.direction} ${reading.repeat}`}
              reading={reading}
            />
          ))}
        </tbody>
      </table>
    </details>
  );
}

function ReadingRow({ reading }: { readonly reading: Reading }) {
  const names: Readonly<Record<string, string>> = text.gaugingQuantity;
  return (
    <tr>
      <td>{reading.link ?? text.piece.wholePiece}</td>
      <td>{reading.position}</td>
      <td>{names[reading.quantity] ?? reading.quantity}</td>
      <td>{reading.direction}</td>
      <td className="num">
        <Figure value={reading.value_mm} unit="mm" />
      </td>
      <td>{reading.instrument}</td>
      <td>{reading.by}</td>
    </tr>
  );
}
