import { text } from '../../lib/text.ts';
import type { DeskState } from './desk-state.ts';
import { toInput } from './gauging-desk.ts';
import { gaugingId, type ReadingSeen } from './merged-readings.ts';
import { placeWords, readingText } from './place-words.ts';

const words = text.gaugingDesk.last;
const shown = 5;

/** The last five readings, newest first, each with what was asked about it and whether the record has it. */
export function LastRead({ desk }: { readonly desk: DeskState }) {
  const last = newest(desk.readings);
  const said = new Map(desk.log.flatMap((entry) => entry.rows.map((row) => [gaugingId(row), entry.words] as const)));
  return (
    <section className="gauging-last" aria-label={words.label}>
      {last.length === 0 ? <p className="soft small">{words.none}</p> : null}
      <ol>
        {last.map(({ id, row, state }) => (
          <li key={`${id} ${row.read_at}`}>
            <span className="gauging-last-value">{readingText(row.value_mm)}</span> <StateWord state={state} />
            <span className="line soft small">
              {row.piece}, {placeWords(toInput(row))}
            </span>
            {(said.get(id) ?? []).map((line) => (
              <span key={line} className="gauging-last-said">
                {line}
              </span>
            ))}
          </li>
        ))}
      </ol>
    </section>
  );
}

/** Whether the ledger has it. */
export function StateWord({ state }: { readonly state: ReadingSeen['state'] }) {
  return (
    <span className={state === 'kept' ? 'gauging-kept' : 'gauging-waiting'}>
      <svg viewBox="0 0 10 10" aria-hidden="true">
        {state === 'kept' ? (
          <path d="M1 5.5 4 8.5 9 1.5" fill="none" stroke="currentColor" strokeWidth="1.8" />
        ) : (
          <path d="M1 5h8M6 2l3 3-3 3" fill="none" stroke="currentColor" strokeWidth="1.4" />
        )}
      </svg>
      {words.state[state]}
    </span>
  );
}

function newest(readings: readonly ReadingSeen[]): readonly ReadingSeen[] {
  return readings
    .filter(({ row }) => row.read_at !== null)
    .toSorted((a, b) => ((a.row.read_at ?? '') < (b.row.read_at ?? '') ? 1 : -1))
    .slice(0, shown);
}
