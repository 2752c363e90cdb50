import type { SampleAlert } from '../../lib/samples/account.ts';
import { text } from '../../lib/text.ts';
import type { SampleSeen } from './use-bench.ts';

const words = text.samples.alert;

interface AlertListProps {
  readonly samples: readonly SampleSeen[];
  readonly onChoose: (sample: string) => void;
}

/** Samples that are overdue or not accounted for, with what to do. Many that nothing is said of are told in one line. */
export function AlertList({ samples, onChoose }: AlertListProps) {
  const silent = samples.filter(({ alerts }) => alerts.some(({ kind }) => kind === 'noMove'));
  const isGathered = silent.length > 2;
  return (
    <ul className="sample-alerts">
      {isGathered ? <Gathered samples={silent} onChoose={onChoose} /> : null}
      {samples.flatMap(({ held, alerts }) =>
        alerts
          .filter(({ kind }) => kind !== 'noMove' || !isGathered)
          .map((alert) => (
            <li key={`${held.id} ${alert.kind}`}>
              <AlertMark />
              <span>
                <strong>{held.id}</strong> {alertText(alert)}. <span className="soft">{words.cure[alert.kind]}</span>
              </span>
              <button type="button" className="press press-small" onClick={() => onChoose(held.id)}>
                {words.see(held.id)}
              </button>
            </li>
          )),
      )}
    </ul>
  );
}

function Gathered({ samples, onChoose }: AlertListProps) {
  return (
    <li>
      <AlertMark />
      <span>
        <strong>{words.many(samples.length)}</strong> {words.noMoves}.{' '}
        <span className="soft">{words.cure.noMoves}</span>
        <span className="sample-alert-codes">
          {samples.map(({ held }) => (
            <button key={held.id} type="button" className="sample-open" onClick={() => onChoose(held.id)}>
              {held.id}
            </button>
          ))}
        </span>
      </span>
    </li>
  );
}

export function alertText(alert: SampleAlert): string {
  switch (alert.kind) {
    case 'overdue':
      return words.overdue(alert.days, alert.due);
    case 'noMove':
      return words.noMove;
    case 'tooLong':
      return words.tooLong(alert.cut_m.toFixed(2), String(alert.received_m));
  }
}

/** A warning triangle: shape and words, never a colour alone. */
export function AlertMark() {
  return (
    <svg className="alert-mark" viewBox="0 0 12 12" aria-hidden="true">
      <path d="M6 1 11.4 11H.6Z" fill="none" stroke="currentColor" strokeWidth="1.4" strokeLinejoin="round" />
      <path d="M6 4.6v3.2M6 9v.9" stroke="currentColor" strokeWidth="1.4" />
    </svg>
  );
}
