import type { TraceReading } from '@provinghouse/core';
import { Figure } from '../../components/figure.tsx';
import { listedEvents } from '../../components/trace/trace-mark.ts';
import { text } from '../../lib/text.ts';

/** What happened on the way up, numbered as on the figure; the spikes that were left out follow. */
export function EventTable({ reading }: { readonly reading: TraceReading }) {
  const events = listedEvents(reading);
  if (events.length === 0 && reading.spikes.length === 0) return null;
  const { eventHead: head } = text.trace;
  return (
    <table className="leaf events">
      <caption>{text.trace.events}</caption>
      <thead>
        <tr>
          <th scope="col">{head.number}</th>
          <th scope="col">{head.kind}</th>
          <th scope="col" className="num">
            {head.at}
          </th>
          <th scope="col" className="num">
            {head.force}
          </th>
          <th scope="col" className="num">
            {head.drop}
          </th>
        </tr>
      </thead>
      <tbody>
        {events.map((event, index) => (
          <EventRow key={`${event.kind} ${event.time_s}`} mark={String(index + 1)} name={nameOf(event)} event={event} />
        ))}
        {reading.spikes.map((spike) => (
          <EventRow
            key={`spike ${spike.time_s}`}
            mark="×"
            name={text.trace.spike}
            event={{ ...spike, drop_kN: null }}
          />
        ))}
      </tbody>
    </table>
  );
}

interface EventRowProps {
  readonly mark: string;
  readonly name: string;
  readonly event: { readonly time_s: number; readonly force_kN: number; readonly drop_kN: number | null };
}

function EventRow({ mark, name, event }: EventRowProps) {
  return (
    <tr>
      <td>{mark}</td>
      <th scope="row">{name}</th>
      <td className="num">
        <Figure value={event.time_s} unit="s" />
      </td>
      <td className="num">
        <Figure value={event.force_kN} unit="kN" />
      </td>
      <td className="num">{event.drop_kN === null ? '' : <Figure value={event.drop_kN} unit="kN" />}</td>
    </tr>
  );
}

function nameOf(event: TraceReading['events'][number]): string {
  const kind = text.trace.kind[event.kind];
  if (event.regained === null) return kind;
  return `${kind}, ${event.regained ? text.trace.regained : text.trace.notRegained}`;
}
