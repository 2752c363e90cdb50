import { text } from '../../lib/text.ts';
import type { DeskState } from './desk-state.ts';
import { toInput } from './gauging-desk.ts';
import { type LogEntry, letGo, sendAgain } from './gauging-log.ts';
import { isSamePlace } from './gauging-progress.ts';
import { placeWords, readingText } from './place-words.ts';

const words = text.gaugingDesk.refused;

/** Readings that the record refused, with its reason and what can be done; nothing of them is kept. */
export function RefusedReadings({ desk }: { readonly desk: DeskState }) {
  const refused = desk.log.filter(({ state }) => state === 'refused');
  if (refused.length === 0) return null;
  return (
    <section className="gauging-refused" aria-label={words.title(refused.length)} role="alert">
      <h2>{words.title(refused.length)}</h2>
      <ul>
        {refused.map((entry) => (
          <RefusedOne key={entry.key} entry={entry} desk={desk} />
        ))}
      </ul>
    </section>
  );
}

function RefusedOne({ entry, desk }: { readonly entry: LogEntry; readonly desk: DeskState }) {
  const [row] = entry.rows;
  if (row === undefined) return null;
  const isTaken = entry.fault?.fault === 'store/already-there' && entry.rows.length === 1;
  const asRepeat = () => {
    const repeats = desk.readings
      .filter((seen) => seen.row.piece === row.piece && isSamePlace(toInput(seen.row), toInput(row)))
      .map((seen) => seen.row.repeat);
    const rows = { ...entry.request.rows, gauging: [{ ...row, repeat: 1 + Math.max(row.repeat, ...repeats) }] };
    sendAgain(entry, { rows });
  };
  const override = desk.kit.isOpen ? desk.kit.reason : null;
  return (
    <li>
      <p>
        <strong>
          {row.piece}, {entry.rows.length === 1 ? placeWords(toInput(row)) : text.gaugingDesk.pasted(entry.rows.length)}
          {entry.rows.length === 1 ? `: ${readingText(row.value_mm)} mm` : ''}
        </strong>
        <span className="line">
          {entry.what === 'taken back' ? words.notTaken : ''}
          {entry.fault?.detail}
        </span>
      </p>
      <p className="gauging-refused-keys">
        {entry.what === 'taken back' ? null : isTaken ? (
          <button type="button" className="press" onClick={asRepeat}>
            {words.asRepeat}
          </button>
        ) : (
          <button
            type="button"
            className="press"
            onClick={() => sendAgain(entry, override === null ? {} : { override })}
          >
            {words.again}
          </button>
        )}
        <button type="button" className="press" onClick={() => letGo(entry.key)}>
          {words.letGo}
        </button>
      </p>
    </li>
  );
}
