import { Figure } from '../../components/figure.tsx';
import { lastMove } from '../../lib/samples/account.ts';
import { massPerMetre } from '../../lib/samples/against-claim.ts';
import { text } from '../../lib/text.ts';
import { AlertMark } from './alert-list.tsx';
import type { Fates, SampleSeen } from './use-bench.ts';

const words = text.samples.list;

interface SampleListProps {
  readonly samples: readonly SampleSeen[];
  readonly fates: Fates;
  readonly chosen: SampleSeen | null;
  readonly onChoose: (sample: string) => void;
}

/** Every sample with where it is now and what was cut from it. */
export function SampleList({ samples, fates, chosen, onChoose }: SampleListProps) {
  const { head } = words;
  return (
    <section className="pad-scroll" aria-label={words.caption}>
      <table className="leaf sample-list">
        <caption className="for-ears">{words.caption}</caption>
        <thead>
          <tr>
            <th scope="col">{head.sample}</th>
            <th scope="col">{head.received}</th>
            <th scope="col" className="num">
              {head.length}
            </th>
            <th scope="col" className="num">
              {head.mass}
            </th>
            <th scope="col">{head.where}</th>
            <th scope="col">{head.pieces}</th>
            <th scope="col">{head.standing}</th>
          </tr>
        </thead>
        <tbody>
          {samples.map((seen) => (
            <SampleRow key={seen.held.id} seen={seen} fates={fates} isChosen={seen === chosen} onChoose={onChoose} />
          ))}
        </tbody>
      </table>
    </section>
  );
}

interface SampleRowProps {
  readonly seen: SampleSeen;
  readonly fates: Fates;
  readonly isChosen: boolean;
  readonly onChoose: (sample: string) => void;
}

function SampleRow({ seen, fates, isChosen, onChoose }: SampleRowProps) {
  const { held, moves, pieces, alerts } = seen;
  const { received_on, length_m, mass_kg } = held.body;
  const last = lastMove(moves.map(({ body }) => body));
  const pulled = pieces.filter(({ id }) => fates.pulls.has(id)).length;
  return (
    <tr className={isChosen ? 'sample-chosen' : undefined}>
      <th scope="row">
        <button
          type="button"
          className="sample-open"
          aria-current={isChosen ? 'true' : undefined}
          onClick={() => onChoose(held.id)}
        >
          {held.id}
        </button>
        <span className="line soft small">{held.body.product}</span>
      </th>
      <td className="figure">{received_on}</td>
      <td className="num">
        <Figure value={length_m} unit="m" />
      </td>
      <td className="num">
        <Figure value={massPerMetre(length_m, mass_kg)} unit="kg/m" />
      </td>
      <td>
        {last === null ? <span className="soft">{words.nowhere}</span> : last.place}
        {last === null ? null : (
          <span className="line soft small">
            {words.since(last.moved_at.slice(0, 10))}
            {last.due_back_on === null ? '' : `, ${words.due(last.due_back_on)}`}
          </span>
        )}
      </td>
      <td>
        {pieces.length === 0 ? <span className="soft">{words.noPieces}</span> : words.pieces(pieces.length, pulled)}
      </td>
      <td>
        <Standing alerts={alerts} />
      </td>
    </tr>
  );
}

function Standing({ alerts }: Pick<SampleSeen, 'alerts'>) {
  if (alerts.length === 0) return words.inPlace;
  const names = [...new Set(alerts.map(({ kind }) => (kind === 'overdue' ? words.overdue : words.unaccounted)))];
  return (
    <span className="sample-alarm">
      <AlertMark /> {names.join(', ')}
    </span>
  );
}
